import { picturesNamed } from '../../job';
import type { Store, StoredRevision } from '../database';
import { packed, unpacked } from './packed';

/** Revisions of a job that are kept; the oldest go first. */
const MOST = 100;
/** Least time between two that are kept without being asked for, milliseconds. */
const HOUR = 3_600_000;

/** A revision as a list shows it. */
export type RevisionLine = Pick<StoredRevision, 'n' | 'job' | 'at' | 'why'>;

/**
 * Keeps a job as it stands. Does nothing when it stands as in the last revision, or is in no store.
 *
 * @param why in words, for the list: 'before the backup was put back'
 * @param at milliseconds since 1970
 * @param file the job's file; as the store has it when absent
 */
export async function keepRevision(
	store: Store,
	job: string,
	{ why, at, file }: { readonly why: string; readonly at: number; readonly file?: unknown },
): Promise<void> {
	const now = file === undefined ? (await store.job(job))?.file : file;
	if (now === undefined) return;
	const bytes = await packed(now);
	const [last] = await store.revisions(job);
	if (last && isSame(last.packed, bytes)) return;
	const pictures = picturesNamed(now);
	const named = pictures.length > 0 ? { pictures } : {};
	await store.addRevision({ job, at, why, packed: bytes, ...named }, MOST);
}

/** As `keepRevision`, unless one was kept within the hour. True when it was looked into. */
export async function keepHourlyRevision(
	store: Store,
	job: string,
	revision: { readonly why: string; readonly at: number; readonly file?: unknown },
): Promise<boolean> {
	const [last] = await store.revisions(job);
	if (last && Math.abs(revision.at - last.at) < HOUR) return false;
	await keepRevision(store, job, revision);
	return true;
}

/** The revisions of a job, the last one first, without what they hold. */
export async function revisions(store: Store, job: string): Promise<RevisionLine[]> {
	return (await store.revisions(job)).map(({ n, at, why }) => ({ n, job, at, why }));
}

/**
 * The file a revision holds, for a look, to be compared, or to be taken up again as one step of the
 * desk (`desk.alter(() => file, …)`), which merges and can be undone. Undefined where it is gone.
 */
export async function fileOfRevision(store: Store, { job, n }: RevisionLine): Promise<unknown> {
	const found = (await store.revisions(job)).find((revision) => revision.n === n);
	return found ? unpacked(found.packed) : undefined;
}

const isSame = (a: Uint8Array, b: Uint8Array): boolean =>
	a.length === b.length && a.every((byte, i) => byte === b[i]);
