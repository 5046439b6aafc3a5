import type { RegisterEdit } from '../document';

/**
 * A job as plain data, beside its document: what the start shows, what the list of jobs tells, and
 * what is left to read when all else fails. The file is exactly as it was typed, right or wrong.
 */
export interface StoredJob {
	readonly id: string;
	readonly name: string;
	readonly file: unknown;
	/** When it was last changed, milliseconds since 1970. */
	readonly changed: number;
	/** Does it draw on the shop's rack, or does it carry one of its own? */
	readonly sharesRack: boolean;
	/** Made from the document; absent in records that a planner without documents wrote. */
	readonly merged?: true;
	/** When it was thrown away, milliseconds since 1970; absent in jobs that are in use. */
	readonly thrown?: number;
	/** When it was put away, milliseconds since 1970; absent in jobs that are worked at. */
	readonly archived?: number;
	/** Its small drawing as the list of jobs shows it, kept so that no list plans anything. */
	readonly picture?: unknown;
}

/** A record as its document gives it: null where that says that the job is in use. */
export type FoundJob = Omit<StoredJob, 'thrown'> & { readonly thrown?: number | null };

/** Single things: the shop's rack and settings, the job last open. */
export interface StoredThing {
	readonly key: string;
	readonly value: unknown;
}

/** What one writer added to a document in one go. */
export interface StoredUpdate {
	/** Rises with each update of any document. */
	readonly n: number;
	readonly doc: string;
	readonly bytes: Uint8Array;
}

/** A step that can be taken back: its edits by the document they were made in. */
export interface StoredStep {
	/** Whose: the job and the window. */
	readonly owner: string;
	readonly n: number;
	/** In words, for 'Undo: …'. */
	readonly what: string;
	/** What it was to; the letters of one field are one step. */
	readonly run: string | null;
	readonly edits: readonly (readonly [doc: string, edits: readonly RegisterEdit[]])[];
	/** Taken back, and can be done again. */
	readonly undone: boolean;
}

/** A job as it stood at a moment, packed. */
export interface StoredRevision {
	readonly n: number;
	readonly job: string;
	/** Milliseconds since 1970. */
	readonly at: number;
	readonly why: string;
	/** Pictures that the file names, by their hash; absent for none. */
	readonly pictures?: readonly string[];
	/** JSON of the file, gzip. */
	readonly packed: Uint8Array;
}

/** Everything a backup takes along. */
export interface Everything {
	readonly jobs: readonly StoredJob[];
	readonly things: readonly StoredThing[];
	readonly updates: readonly StoredUpdate[];
	readonly steps: readonly StoredStep[];
	readonly revisions: readonly StoredRevision[];
}

/** The document of a job. */
export const docOfJob = (id: string): string => `job ${id}`;
/** What the keys of the pictures begin with that outlines of this job were traced from. */
export const tracedIn = (id: string): string => `picture ${id} `;
/** The document of a picture, by the hash of its bytes. */
export const docOfPicture = (hash: string): string => `picture ${hash}`;
/** The hash in the name of a picture's document; null for any other document. */
export const hashIn = (doc: string): string | null =>
	/^picture ([0-9a-f]{64})$/.exec(doc)?.[1] ?? null;
/** The document of the rack and the settings of the shop. */
export const SHOP_DOC = 'shop';
