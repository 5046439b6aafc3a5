import type { FoundJob, StoredJob, StoredStep, StoredThing, StoredUpdate } from './records';
import type { Addition, Beside } from './store';

/** What the database is to those who write documents into it, by the library's own words. */
export interface Tables {
	readonly jobs: Rows<StoredJob, string>;
	readonly things: Rows<StoredThing, string>;
	readonly updates: Rows<StoredUpdate, number>;
	readonly steps: Rows<StoredStep, [string, number]>;
	/** One document's updates after `n`, in order. */
	after(doc: string, n: number): Promise<StoredUpdate[]>;
	lastOf(doc: string): Promise<number>;
	/** All or nothing. */
	together<T>(work: () => Promise<T>): Promise<T>;
}

interface Rows<T, Key> {
	get(key: Key): PromiseLike<T | undefined>;
	put(row: T): PromiseLike<unknown>;
	delete(key: Key): PromiseLike<void>;
	add(row: T): PromiseLike<Key>;
	bulkDelete(keys: Key[]): PromiseLike<void>;
}

/** Adds to a document what it has not got, with the plain data beside it. */
export async function addTo(db: Tables, addition: Addition): Promise<number> {
	const { doc, seen } = addition;
	return db.together(async () => {
		const last = await db.lastOf(doc);
		// What was seen is gone: the database is another, or somebody made one update of many. Then
		// later edits may hang on some that only this window has.
		const lost = seen > 0 && (await db.updates.get(seen)) === undefined;
		addition.take(await db.after(doc, lost ? 0 : seen));
		const bytes = addition.unkept(lost);
		const n = bytes === null ? last : await db.updates.add({ doc, bytes } as StoredUpdate);
		await putBeside(db, addition.beside());
		return n;
	});
}

async function putBeside(db: Tables, { job, things, steps }: Beside): Promise<void> {
	if (job) await db.jobs.put(newerOf(await db.jobs.get(job.id), job));
	for (const [key, value] of Object.entries(things ?? {})) await db.things.put({ key, value });
	for (const [n, step] of steps?.by ?? []) {
		if (step) await db.steps.put(step);
		else if (steps) await db.steps.delete([steps.owner, n]);
	}
}

/**
 * Whoever writes the record has merged all there is; when it was changed last is the latest.
 * Whether it is thrown away stays as it was, unless its document says; so do its archive and
 * picture.
 */
function newerOf(there: StoredJob | undefined, { thrown, ...job }: FoundJob): StoredJob {
	const at = thrown === undefined ? there?.thrown : (thrown ?? undefined);
	const { archived, picture } = there ?? {};
	return {
		...job,
		...(at === undefined ? {} : { thrown: at }),
		...(archived === undefined ? {} : { archived }),
		...(picture === undefined ? {} : { picture }),
		changed: Math.max(job.changed, there?.changed || 0),
	};
}

export async function compactTo(
	db: Tables,
	doc: string,
	seen: number,
	whole: Uint8Array,
): Promise<number> {
	return db.together(async () => {
		if ((await db.lastOf(doc)) !== seen) return seen;
		const old = (await db.after(doc, 0)).map(({ n }) => n);
		await db.updates.bulkDelete(old);
		return db.updates.add({ doc, bytes: whole } as StoredUpdate);
	});
}

export async function changeRecord(
	db: Tables,
	id: string,
	change: (job: StoredJob) => StoredJob | null,
): Promise<void> {
	await db.together(async () => {
		const job = await db.jobs.get(id);
		const changed = job ? change(job) : null;
		if (changed) await db.jobs.put(changed);
	});
}
