import type { StoredJob } from '../../store';

/*
 * A page that is closed in the middle of a word cannot wait for the database. What is not kept yet
 * is put down at once in the browser's small synchronous storage, and taken up by the next page
 * that opens.
 */

const KEY = 'kerf-and-nap unkept';

export function leaveWords(job: StoredJob | null, storage: Storage): void {
	if (!job) return;
	try {
		storage.setItem(KEY, JSON.stringify(job));
	} catch {
		// Too large, or refused: the database has all but the last letters.
	}
}

/** The job left behind, once; null when there is none that can be read. */
export function takeWords(storage: Storage): StoredJob | null {
	const text = storage.getItem(KEY);
	if (text === null) return null;
	storage.removeItem(KEY);
	try {
		const job = JSON.parse(text) as Partial<StoredJob> | null;
		return typeof job?.id === 'string' && typeof job.file === 'object' ? (job as StoredJob) : null;
	} catch {
		return null;
	}
}
