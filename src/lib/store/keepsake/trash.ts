import type { Store, StoredJob } from '../database';

/*
 * A job thrown away keeps its record, its document and its steps; it is only not shown among the
 * others. A window that still has it open writes on into it, and nothing of that is lost either.
 */

/**
 * Throws a job away: `thrownJobs` of the store lists it from then on, `jobs` no more.
 *
 * @param at milliseconds since 1970
 */
export async function throwAway(store: Store, id: string, at: number): Promise<void> {
	await store.changeJob(id, (job) => ({ ...job, thrown: at }));
}

/** Puts a job that was thrown away back among the others, as it was. */
export async function putBack(store: Store, id: string): Promise<void> {
	await store.changeJob(id, ({ thrown: _, ...job }) => job);
}

/**
 * Puts a job away: it is listed apart from those that are worked at, and is as it was otherwise.
 *
 * @param at milliseconds since 1970
 */
export async function archive(store: Store, id: string, at: number): Promise<void> {
	await store.changeJob(id, (job) => ({ ...job, archived: at }));
}

/** Brings a job that was put away back among those that are worked at. */
export async function bringBack(store: Store, id: string): Promise<void> {
	await store.changeJob(id, ({ archived: _, ...job }) => job);
}

/**
 * Erases the jobs thrown away before this moment, for good: record, document, steps and revisions,
 * and every picture that nothing names any more. The names of the jobs that are gone.
 *
 * @param before milliseconds since 1970; all of them when absent
 */
export async function emptyTrash(store: Store, before = Infinity): Promise<string[]> {
	const gone: StoredJob[] = (await store.thrownJobs()).filter(
		({ thrown = Infinity }) => thrown < before,
	);
	for (const { id } of gone) await store.eraseJob(id);
	await store.letGoPictures();
	return gone.map(({ name }) => name);
}
