import type { StoredJob } from '../../../store';

/*
 * A page that is closed in the middle of a word cannot wait for the database. What is not kept yet
 * is put down at once in the browser's small synchronous storage, and taken up by the next page
 * that opens.
 */

/** Of each database its own: a job of one is none of another. */
const keyOf = (database: string): string => `kerf-and-nap unkept${database && ` ${database}`}`;

/** A job as a closing page leaves it behind: plain, and what its documents have not got. */
export interface LeftJob {
	readonly job: StoredJob;
	readonly updates: { readonly job: Uint8Array | null; readonly shop: Uint8Array | null };
	/** Is there more in the file than in the documents and the updates? They had not come yet. */
	readonly isEarly: boolean;
}

/** As it lies in the storage: a record as pages without documents left it, and what came since. */
interface Words extends Partial<StoredJob> {
	readonly updates?: { readonly job?: unknown; readonly shop?: unknown };
	readonly isEarly?: boolean;
}

/** @param storage none where the browser refuses it */
export function leaveWords(left: LeftJob | null, storage: Storage | null, database = ''): void {
	if (!left) return;
	const { job, updates, isEarly } = left;
	const texts = { job: asText(updates.job), shop: asText(updates.shop) };
	try {
		storage?.setItem(keyOf(database), JSON.stringify({ ...job, updates: texts, isEarly }));
	} catch {
		// Too large, or refused: the database has all but the last letters.
	}
}

/** The job left behind, once; null when there is none that can be read. */
export function takeWords(storage: Storage | null, database = ''): LeftJob | null {
	try {
		const text = storage?.getItem(keyOf(database)) ?? null;
		storage?.removeItem(keyOf(database));
		return text === null ? null : read(JSON.parse(text) as Words | null);
	} catch {
		return null;
	}
}

function read(words: Words | null): LeftJob | null {
	if (typeof words?.id !== 'string' || typeof words.file !== 'object' || !words.file) return null;
	if (Array.isArray(words.file)) return null;
	const { id, file, updates } = words;
	const name = typeof words.name === 'string' ? words.name : '';
	const changed = Number.isFinite(words.changed) ? Number(words.changed) : 0;
	return {
		job: { id, name, file, changed, sharesRack: words.sharesRack === true },
		updates: { job: asBytes(updates?.job), shop: asBytes(updates?.shop) },
		isEarly: words.isEarly !== false,
	};
}

function asText(bytes: Uint8Array | null): string | null {
	if (!bytes) return null;
	return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}

function asBytes(text: unknown): Uint8Array | null {
	if (typeof text !== 'string') return null;
	return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}
