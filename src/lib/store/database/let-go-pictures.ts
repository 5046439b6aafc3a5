import { picturesNamed } from '../../job';
import { hashIn, type StoredJob, type StoredRevision, type StoredStep } from './records';

/** The rows that say what is named, and the documents. All of one transaction. */
interface Rows {
	readonly jobs: Each<StoredJob>;
	readonly steps: Each<StoredStep>;
	readonly revisions: Each<StoredRevision>;
	readonly updates: {
		orderBy(index: string): { keys(): PromiseLike<unknown[]> };
		bulkDelete(keys: number[]): PromiseLike<void>;
	};
}

interface Each<T> {
	toCollection(): { each(see: (row: T) => void): PromiseLike<void> };
}

const HASH = /[0-9a-f]{64}/g;

/**
 * Lets go of the pictures nothing names. A step holds texts of the document: whatever looks like a
 * hash in one is taken for a picture it may bring back.
 */
export async function letGoPictures({ jobs, steps, revisions, updates }: Rows): Promise<number> {
	const named = new Set<string>();
	const see = (hashes: readonly string[]): void => hashes.forEach((hash) => named.add(hash));
	await jobs.toCollection().each(({ file }) => see(picturesNamed(file)));
	await steps.toCollection().each(({ edits }) => see(JSON.stringify(edits).match(HASH) ?? []));
	await revisions.toCollection().each(({ pictures = [] }) => see(pictures));
	const keys = (await updates.orderBy('[doc+n]').keys()) as [doc: string, n: number][];
	const unnamed = keys.filter(([doc]) => {
		const hash = hashIn(doc);
		return hash !== null && !named.has(hash);
	});
	await updates.bulkDelete(unnamed.map(([, n]) => n));
	return new Set(unnamed.map(([doc]) => doc)).size;
}
