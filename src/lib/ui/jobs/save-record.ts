import { type Store, type StoredJob, withRack } from '../../store';
import type { JobFile } from '../../job';
import { saveJob, saveRaw } from '../files';
import { isTorn } from './record-words';

/** Hands out the job of a record as a file, with the rack it draws on; a torn record as it lies. */
export async function saveRecord(job: StoredJob, store: Pick<Store, 'thing'>): Promise<void> {
	if (isTorn(job)) return saveRaw(job, `job ${job.id}`);
	const rack = job.sharesRack ? await store.thing('rack').catch(() => null) : null;
	saveJob(withRack(job.file as JobFile, rack));
}
