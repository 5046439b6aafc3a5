import { Dexie, type EntityTable } from 'dexie';

/** A job as the browser keeps it: the file exactly as it was typed, right or wrong. */
export interface StoredJob {
	readonly id: string;
	readonly name: string;
	readonly file: unknown;
	/** When it was last changed, milliseconds since 1970. */
	readonly changed: number;
	/** Does it draw on the shop's rack, or does it carry one of its own? */
	readonly sharesRack: boolean;
}

/** Single things: the shop's rack and settings, the job last open. */
interface StoredThing {
	readonly key: string;
	readonly value: unknown;
}

export interface Store {
	jobs(): Promise<StoredJob[]>;
	job(id: string): Promise<StoredJob | undefined>;
	keep(job: StoredJob): Promise<void>;
	drop(id: string): Promise<void>;
	thing(key: string): Promise<unknown>;
	setThing(key: string, value: unknown): Promise<void>;
}

/**
 * The browser's database. Every call may reject: private windows and full disks are the caller's to
 * tell.
 */
export function openStore(name = 'kerf-and-nap'): Store {
	const db = new Dexie(name) as Dexie & {
		jobs: EntityTable<StoredJob, 'id'>;
		things: EntityTable<StoredThing, 'key'>;
	};
	db.version(1).stores({ jobs: 'id, changed', things: 'key' });
	return {
		jobs: () => db.jobs.orderBy('changed').reverse().toArray(),
		job: (id) => db.jobs.get(id),
		keep: async (job) => void (await db.jobs.put(job)),
		drop: (id) => db.jobs.delete(id),
		thing: async (key) => (await db.things.get(key))?.value,
		setThing: async (key, value) => void (await db.things.put({ key, value })),
	};
}
