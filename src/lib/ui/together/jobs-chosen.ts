import type { JobFile } from '../../job';
import { type Store, withRack } from '../../store';

/** A job to be planned with others, or the mark of one that is not to be found. */
export type JobChosen = { readonly file: JobFile } | { readonly missing: string };

/**
 * The files of jobs kept here, each with the rack it draws on, in the order they were chosen; one
 * that is gone or thrown away is told by its mark.
 */
export async function jobsChosen(
	store: Pick<Store, 'job' | 'thing'>,
	ids: readonly string[],
): Promise<readonly JobChosen[]> {
	const rack = await store.thing('rack');
	const found: JobChosen[] = [];
	for (const id of new Set(ids)) {
		const job = await store.job(id);
		const file = job?.file;
		if (!job || job.thrown !== undefined || typeof file !== 'object' || file === null)
			found.push({ missing: id });
		else found.push({ file: job.sharesRack ? withRack(file, rack) : file });
	}
	return found;
}
