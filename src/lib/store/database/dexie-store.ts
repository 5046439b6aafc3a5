import { Dexie, type EntityTable, type Table } from 'dexie';
import { versionOf } from './glance';
import { letGoPictures } from './let-go-pictures';
import { addTo, changeRecord, compactTo, type Tables } from './additions';
import {
	docOfJob,
	tracedIn,
	type Everything,
	type StoredJob,
	type StoredRevision,
	type StoredStep,
	type StoredThing,
	type StoredUpdate,
} from './records';
import { type Addition, NewerStore, type Store } from './store';

/*
 * The documents lie in this one database as rows of updates, beside the plain records, and not in a
 * database each as the library's own adapter has it: so a document, its record and its steps are
 * written in one transaction, whole or not at all; a full disk is met in one place; and the list of
 * jobs is one question instead of hundreds of databases to open.
 */

/** The version this code writes; Dexie tells the browser ten times that. */
const VERSION_OF_STORE = 2;

type Database = Dexie & {
	jobs: EntityTable<StoredJob, 'id'>;
	things: EntityTable<StoredThing, 'key'>;
	updates: EntityTable<StoredUpdate, 'n'>;
	steps: Table<StoredStep, [string, number]>;
	revisions: EntityTable<StoredRevision, 'n'>;
};

/** Numbered and never changed once released; tests/store/old holds a database of each version. */
function withVersions(db: Database): Database {
	db.version(1).stores({ jobs: 'id, changed', things: 'key' });
	// Nothing is moved: a record of version 1 becomes a document when its job is next opened, and
	// lies there as it was until then.
	db.version(2).stores({
		updates: '++n, [doc+n]',
		steps: '[owner+n]',
		revisions: '++n, job',
	});
	return db;
}

/** Opens the database when it is first asked something. */
export function openDexieStore(name: string): Store {
	const db = withVersions(new Dexie(name) as Database);
	/** Dexie opens a newer database without a word, and would change what it does not know. */
	const ready = async (): Promise<Database> => {
		if (db.isOpen()) return db;
		if ((await versionOf(name)) >= (VERSION_OF_STORE + 1) * 10) throw new NewerStore();
		await db.open();
		return db;
	};
	return { ...jobsOf(ready), ...documentsOf(ready), ...allOf(ready), ...connectionOf(db) };
}

type Ready = () => Promise<Database>;

/** The rows of one document after this update. */
const rowsOf = (db: Database, doc: string, after: number) =>
	db.updates.where('[doc+n]').between([doc, after], [doc, Dexie.maxKey], false);

function tablesOf(db: Database): Tables {
	const { jobs, things, updates, steps } = db;
	return {
		...{ jobs, things, updates, steps },
		after: (doc, n) => Promise.resolve(rowsOf(db, doc, n).toArray()),
		lastOf: async (doc) => (await rowsOf(db, doc, 0).last())?.n ?? 0,
		together: (work) => Promise.resolve(db.transaction('rw', jobs, things, updates, steps, work)),
	};
}

/** All of them, one by one: an index would leave out a torn record. */
const recordsIn = async (db: Database): Promise<StoredJob[]> => db.jobs.toArray();

function jobsOf(ready: Ready) {
	return {
		jobs: async () =>
			(await recordsIn(await ready()))
				.filter(({ thrown }) => thrown === undefined)
				.sort((a, b) => (b.changed || 0) - (a.changed || 0)),
		thrownJobs: async () =>
			(await recordsIn(await ready()))
				.filter(({ thrown }) => thrown !== undefined)
				.sort((a, b) => (b.thrown ?? 0) - (a.thrown ?? 0)),
		job: async (id: string) => (await ready()).jobs.get(id),
		putJob: async (job: StoredJob) => void (await (await ready()).jobs.put(job)),
		changeJob: async (id: string, change: (job: StoredJob) => StoredJob | null) =>
			changeRecord(tablesOf(await ready()), id, change),
		eraseJob: async (id: string) => erase(await ready(), id),
		thing: async (key: string) => (await (await ready()).things.get(key))?.value,
		setThing: async (key: string, value: unknown) =>
			void (await (await ready()).things.put({ key, value })),
	} satisfies Partial<Store>;
}

function documentsOf(ready: Ready) {
	return {
		updatesAfter: async (doc: string, n: number) => rowsOf(await ready(), doc, n).toArray(),
		lastUpdates: async () => {
			// The index alone: what the updates hold is not fetched.
			const keys = await (await ready()).updates.orderBy('[doc+n]').keys();
			return new Map(keys as unknown as [doc: string, n: number][]);
		},
		append: async (addition: Addition) => addTo(tablesOf(await ready()), addition),
		compact: async (doc: string, seen: number, whole: Uint8Array) =>
			compactTo(tablesOf(await ready()), doc, seen, whole),
		steps: async (owner: string) =>
			(await ready()).steps
				.where('[owner+n]')
				.between([owner, Dexie.minKey], [owner, Dexie.maxKey])
				.toArray(),
		revisions: async (job: string) =>
			(await (await ready()).revisions.where('job').equals(job).toArray()).reverse(),
		addRevision: async (revision: Omit<StoredRevision, 'n'>, most: number) =>
			keepRevisionIn(await ready(), revision, most),
	} satisfies Partial<Store>;
}

async function keepRevisionIn(
	db: Database,
	revision: Omit<StoredRevision, 'n'>,
	most: number,
): Promise<void> {
	await db.transaction('rw', db.revisions, async () => {
		await db.revisions.add(revision);
		const kept = await db.revisions.where('job').equals(revision.job).primaryKeys();
		await db.revisions.bulkDelete(kept.slice(0, Math.max(0, kept.length - most)));
	});
}

async function erase(db: Database, id: string): Promise<void> {
	const { jobs, things, updates, steps, revisions } = db;
	await db.transaction('rw', jobs, things, updates, steps, revisions, async () => {
		await jobs.delete(id);
		await things.where('key').startsWith(tracedIn(id)).delete();
		await rowsOf(db, docOfJob(id), 0).delete();
		await steps.filter(({ owner }) => owner.startsWith(`${docOfJob(id)} `)).delete();
		await revisions.where('job').equals(id).delete();
	});
}

function allOf(ready: Ready) {
	return {
		letGoPictures: async () => {
			const db = await ready();
			const { jobs, updates, steps, revisions } = db;
			return db.transaction('rw', jobs, updates, steps, revisions, () => letGoPictures(db));
		},
		everything: async () => {
			const db = await ready();
			return db.transaction('r', db.tables, async () => ({
				jobs: await db.jobs.toArray(),
				things: await db.things.toArray(),
				updates: await db.updates.toArray(),
				steps: await db.steps.toArray(),
				revisions: await db.revisions.toArray(),
			}));
		},
		putEverything: async (all: Everything, way: 'beside' | 'replace') => {
			const db = await ready();
			await db.transaction('rw', db.tables, async () => {
				if (way === 'replace') for (const table of db.tables) await table.clear();
				await db.jobs.bulkPut([...all.jobs]);
				await db.things.bulkPut([...all.things]);
				await db.updates.bulkAdd(all.updates.map(({ n: _, ...row }) => row as StoredUpdate));
				await db.steps.bulkPut([...all.steps]);
				await db.revisions.bulkAdd(all.revisions.map(({ n: _, ...row }) => row as StoredRevision));
			});
		},
	} satisfies Partial<Store>;
}

function connectionOf(db: Database) {
	return {
		onClosed: (tell: () => void) => void db.on('close', tell),
		close: () => db.close(),
	} satisfies Partial<Store>;
}
