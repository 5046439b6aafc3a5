import { type Store, type StoredJob, withRack } from '../../store';
import type { JobFile } from '../../job';
import { saveRaw } from '../files';
import { saveWithPictures } from '../photographs';
import { isTorn } from './record-words';

/**
 * Hands out the job of a record as a file, with the rack it draws on and its photographs; a torn
 * record as it lies. In words, what the file does not carry.
 */
export async function saveRecord(
	job: StoredJob,
	store: Pick<Store, 'thing' | 'updatesAfter'>,
): Promise<string> {
	if (isTorn(job)) {
		saveRaw(job, `job ${job.id}`);
		return '';
	}
	const rack = job.sharesRack ? await store.thing('rack').catch(() => null) : null;
	return saveWithPictures(withRack(job.file as JobFile, rack), store);
}
