import type { Store, StoredJob } from '../../../store';
import type { DeskOpening } from './desk-opening';
import type { LeftJob } from '../saving';

/**
 * What opens where a page left words behind. They go into their job where that has not been changed
 * since. Words older than the record never win over it: they become a job of their own.
 */
export async function leftOpening(store: Store, left: LeftJob): Promise<DeskOpening> {
	const { id, file, sharesRack, changed } = left.job;
	const record = await store.job(id);
	if (!record) return { id, file: file as DeskOpening['file'], sharesRack, left };
	const kept = { id, sharesRack: record.sharesRack, record };
	const shown = record.file as DeskOpening['file'];
	if (changed >= record.changed) return { ...kept, file: shown, left };
	if (await isKept(store, left, record)) return { ...kept, file: shown };
	const name = asLeftBehind(left.job.name);
	await store.putJob({
		...left.job,
		id: `${id}-left-${changed}`,
		name,
		file: { ...(file as object), name },
		sharesRack: false,
	});
	const notice = `A page was closed before all was kept, and this job has been changed since. What was left behind is a job of its own: “${name}”.`;
	return { ...kept, file: shown, notice };
}

export const asLeftBehind = (name: string): string =>
	`${name || 'Job without a name'} (as left behind)`;

/** Has the job got all that was left, though it was told late? */
async function isKept(store: Store, left: LeftJob, record: StoredJob): Promise<boolean> {
	if (left.isEarly || !left.updates.job)
		return JSON.stringify(record.file) === JSON.stringify(left.job.file);
	const { holdsAlready } = await import('../../../store/hand/holds-already');
	return holdsAlready(store, left.job.id, left.updates.job);
}
