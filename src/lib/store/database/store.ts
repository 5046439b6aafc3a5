import type {
	Everything,
	FoundJob,
	StoredJob,
	StoredRevision,
	StoredStep,
	StoredUpdate,
} from './records';

/**
 * The browser's database. Every call may reject, or never answer: private windows, full disks and
 * other tabs are the caller's to tell.
 */
export interface Store {
	/** Jobs in use, the last changed first. */
	jobs(): Promise<StoredJob[]>;
	/** Jobs thrown away, the last one first. */
	thrownJobs(): Promise<StoredJob[]>;
	job(id: string): Promise<StoredJob | undefined>;
	/** Puts a plain record in, as of a job that has no document yet. */
	putJob(job: StoredJob): Promise<void>;
	/** Writes what `change` makes of the record, if there is one and it makes anything. */
	changeJob(id: string, change: (job: StoredJob) => StoredJob | null): Promise<void>;
	/** The record and all that belongs to it, for good. */
	eraseJob(id: string): Promise<void>;

	thing(key: string): Promise<unknown>;
	setThing(key: string, value: unknown): Promise<void>;

	/** What was written of a document after update `n`, in order. */
	updatesAfter(doc: string, n: number): Promise<StoredUpdate[]>;
	/** The number of the last update of each document. */
	lastUpdates(): Promise<ReadonlyMap<string, number>>;
	/** Adds to a document, all or nothing. The number of the last update it then has. */
	append(addition: Addition): Promise<number>;
	/**
	 * One update in place of all up to `seen`, as long as nobody has written since. The number of
	 * the last update the document then has.
	 */
	compact(doc: string, seen: number, whole: Uint8Array): Promise<number>;

	steps(owner: string): Promise<StoredStep[]>;

	revisions(job: string): Promise<StoredRevision[]>;
	addRevision(revision: Omit<StoredRevision, 'n'>, most: number): Promise<void>;

	/**
	 * Lets go of the pictures that no job names, whether thrown away or not, no step that can be
	 * taken back or done again, and no revision. How many they were.
	 */
	letGoPictures(): Promise<number>;

	everything(): Promise<Everything>;
	/** Puts all this in, in place of what there is or beside it. All or nothing. */
	putEverything(all: Everything, way: 'beside' | 'replace'): Promise<void>;

	/** Told when the database was closed or deleted under the page, or is about to be. */
	onClosed(tell: () => void): void;
	close(): void;
}

/** What is added to a document, and the plain data that goes with it. */
export interface Addition {
	readonly doc: string;
	/** The last update known here, 0 for none. */
	readonly seen: number;
	/** Takes in what others have written since. */
	take(updates: readonly StoredUpdate[]): void;
	/**
	 * What the store has not got, asked after `take`; null for nothing.
	 *
	 * @param lost the store has lost the document: all of it is wanted
	 */
	unkept(lost: boolean): Uint8Array | null;
	/** The plain data beside the document, asked after `take`. */
	beside(): Beside;
}

export interface Beside {
	readonly job?: FoundJob;
	readonly things?: Readonly<Record<string, unknown>>;
	/** Steps by their number; null takes one out. */
	readonly steps?: { readonly owner: string; readonly by: ReadonlyMap<number, StoredStep | null> };
}

/** The browser gives no database at all. */
export class NoStore extends Error {
	override readonly name = 'NoStore';
	constructor() {
		super('This browser gives no database.');
	}
}

/** The database was written by a planner newer than this one. */
export class NewerStore extends Error {
	override readonly name = 'NewerStore';
	constructor() {
		super('A newer version of the planner has been here: reload the page.');
	}
}
