import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { openDexieStore } from '../../../src/lib/store/database/dexie-store';
import { openStore } from '../../../src/lib/store/database/open-store';
import type { StoredJob } from '../../../src/lib/store/database/records';
import type { Store } from '../../../src/lib/store/database/store';
import type { Planner, Printer } from '../../../src/lib/ui/planning/planner';
import { Desk } from '../../../src/lib/ui/state/desk.svelte';
import { firstJob } from '../../../src/lib/ui/state/opening/first-job';
import { askForRoom } from '../../../src/lib/ui/state/saving/ask-for-room';
import { leaveWords, takeWords } from '../../../src/lib/ui/state/saving/last-words';
import { leaveWriterMark, takeWriterMark } from '../../../src/lib/ui/state/saving/writer-mark';

const planner: Planner = {
	plan: () => Promise.resolve(null),
	search: () => Promise.resolve(null),
	options: () => Promise.resolve(null),
	savings: () => Promise.resolve(null),
	stop: () => undefined,
};
const printer: Printer = {
	outputFiles: () => Promise.resolve([]),
	shownPages: () => ({ of: 0, pages: [] }),
};
const HOUR = 3_600_000;

/** A storage as browsers have it, as far as it is used. */
function storage(): Storage {
	const kept = new Map<string, string>();
	return {
		getItem: (key: string) => kept.get(key) ?? null,
		setItem: (key: string, text: string) => void kept.set(key, text),
		removeItem: (key: string) => void kept.delete(key),
	} as Storage;
}

let count = 0;
let store: Store;
const desks: Desk[] = [];
beforeEach(() => (store = openDexieStore(`start-${count++}`)));
afterEach(() => {
	for (const desk of desks.splice(0)) desk.close();
	store.close();
	vi.unstubAllGlobals();
});
function deskOn(on: Store, writer: string): Desk {
	const desk = new Desk(on, planner, printer, writer);
	desks.push(desk);
	return desk;
}
async function kept(file: JobFile, id = 'j'): Promise<StoredJob> {
	const desk = deskOn(store, 'before');
	await desk.open({ id, file, sharesRack: false });
	await desk.settled();
	return (await store.job(id))!;
}

describe('words left behind', () => {
	it('an hour old do not win over a newer record: they become a job of their own', async () => {
		const record = await kept({ name: 'Newer', notes: 'typed since' });
		const shelf = storage();
		const old = {
			...record,
			file: { name: 'Old words' },
			name: 'Old words',
			changed: record.changed - HOUR,
		};
		// as pages before documents left them
		shelf.setItem('kerf-and-nap unkept', JSON.stringify(old));
		const opening = await firstJob(store, takeWords(shelf));
		expect(opening).toMatchObject({ id: 'j', file: { name: 'Newer', notes: 'typed since' } });
		expect(opening.notice).toContain('Old words (as left behind)');
		const desk = deskOn(store, 'after');
		await desk.open(opening);
		await desk.settled();
		expect(desk.file).toEqual({ name: 'Newer', notes: 'typed since' });
		const jobs = await store.jobs();
		expect(jobs.map(({ name }) => name).sort()).toEqual(['Newer', 'Old words (as left behind)']);
	});

	it('that the store has got after all are no job of their own', async () => {
		const desk = deskOn(store, 'w');
		await desk.open({ id: 'j', file: { name: 'A' }, sharesRack: false });
		await desk.settled();
		desk.type(['name'], 'Ab', 'Name');
		const left = desk.unkept()!; // the page goes; the write under way ends all the same
		await desk.settled();
		const late = { ...left, job: { ...left.job, changed: left.job.changed - 5 } };
		const opening = await firstJob(store, late);
		expect(opening.notice).toBeUndefined();
		expect(opening.file).toMatchObject({ name: 'Ab' });
		expect(await store.jobs()).toHaveLength(1);
	});

	it.each([false, true])(
		'go into their job, whatever was typed elsewhere (early: %s)',
		async (early) => {
			await kept({ name: 'A', notes: 'n' });
			const { append } = store;
			const typing = deskOn(store, 'typing');
			await typing.openStored('j');
			if (!early) await typing.settled();
			store.append = () => Promise.reject(new Error('full'));
			typing.type(['name'], 'Half a wor', 'Name');
			const shelf = storage();
			if (!early) await typing.settled();
			leaveWords(typing.unkept(), shelf);
			typing.close();
			store.append = append;
			const left = takeWords(shelf)!;
			expect(left.isEarly).toBe(early);
			const desk = deskOn(store, 'next');
			await desk.open(await firstJob(store, left));
			expect(desk.file.name).toBe('Half a wor');
			await desk.settled();
			expect(desk.file).toEqual({ name: 'Half a wor', notes: 'n' });
			expect((await store.job('j'))?.name).toBe('Half a wor');
			expect(takeWords(shelf)).toBeNull();
		},
	);

	it('of a job that is in no store open as that job', async () => {
		const typing = deskOn(store, 'typing');
		store.append = () => Promise.reject(new Error('full'));
		await typing.open({ id: 'n', file: { name: 'New' }, sharesRack: false });
		typing.type(['name'], 'New one', 'Name');
		await typing.settled();
		const shelf = storage();
		leaveWords(typing.unkept(), shelf);
		typing.close();
		const next = openDexieStore(`start-${count - 1}`);
		const desk = deskOn(next, 'next');
		await desk.open(await firstJob(next, takeWords(shelf)));
		await desk.settled();
		expect(desk.file).toEqual({ name: 'New one' });
		expect((await next.job('n'))?.name).toBe('New one');
		desk.close();
		next.close();
	});
});

describe('the start opens', () => {
	const sample = 'Camper van, rear bench';

	it('the job open last, torn ones apart, which stay as they are', async () => {
		await kept({ name: 'Last' });
		expect((await firstJob(store, null)).file.name).toBe('Last');
		for (const file of [null, 7, 'x', [1]]) {
			await store.putJob({ id: 'j', name: 'Torn', file, changed: 1, sharesRack: false });
			const opening = await firstJob(store, null);
			expect(opening.file.name).toBe(sample);
			expect(opening.notice).toContain('“Torn”, cannot be read');
			expect((await store.job('j'))?.file).toEqual(file);
			expect(await deskOn(store, 'w').openStored('j')).toBe(false);
		}
	});

	it('a sample where the database is refused, newer or absent, and says so', async () => {
		store.thing = () => Promise.reject(new DOMException('no', 'SecurityError'));
		const refused = await firstJob(store, null);
		expect(refused).toMatchObject({ standsIn: true, file: { name: sample } });
		expect(refused.notice).toContain('cannot be read');
		vi.stubGlobal('indexedDB', undefined);
		const absent = await firstJob(openStore('absent'), null);
		expect(absent).toMatchObject({ standsIn: true, file: { name: sample } });
		const desk = deskOn(openStore('absent'), 'w');
		await desk.open(absent);
		desk.type(['name'], 'In memory', 'Name');
		await vi.waitFor(() => expect(desk.saver.state).toBe('failed'), 8000);
		expect(desk.file.name).toBe('In memory');
		expect(desk.isUnsaved).toBe(true);
	});

	it('a sample where the database is slow; what is done is kept when it comes, beside the rest', async () => {
		await kept({ name: 'Kept before' });
		await store.setThing('open', 'j');
		let answer: () => void = () => undefined;
		const answers = new Promise<void>((resolve) => (answer = resolve));
		const slow = { ...store };
		for (const call of ['thing', 'job', 'jobs', 'updatesAfter', 'append', 'steps'] as const) {
			const sound = store[call] as (...args: unknown[]) => Promise<unknown>;
			Object.assign(slow, { [call]: (...args: unknown[]) => answers.then(() => sound(...args)) });
		}
		const opening = await firstJob(slow, null, 20);
		expect(opening.notice).toContain('has not answered yet');
		const desk = deskOn(slow, 'w');
		await desk.open(opening);
		await new Promise((done) => setTimeout(done, 50));
		desk.type(['name'], 'Meanwhile', 'Name');
		expect(desk.file.name).toBe('Meanwhile');
		answer();
		await desk.settled();
		expect((await store.jobs()).map(({ name }) => name).sort()).toEqual([
			'Kept before',
			'Meanwhile',
		]);
	});

	it('a job on words a page left, where the database does not answer', async () => {
		const left = {
			job: { id: 'j', name: 'Left', file: { name: 'Left' }, changed: 1, sharesRack: false },
			updates: { job: null, shop: null },
			isEarly: true,
		};
		store.job = () => new Promise(() => undefined);
		const opening = await firstJob(store, left, 20);
		expect(opening.file).toEqual({ name: 'Left (as left behind)' });
		expect(opening.id).not.toBe('j'); // the job they were part of may be newer
	});

	it('where the small storages are refused', () => {
		vi.stubGlobal('localStorage', undefined);
		const throws = new Proxy({} as Storage, {
			get: () => {
				throw new Error('refused');
			},
		});
		expect(takeWords(null)).toBeNull();
		expect(takeWords(throws)).toBeNull();
		expect(() => leaveWords(null, null)).not.toThrow();
		expect(takeWriterMark()).not.toBe('');
		expect(() => leaveWriterMark('w')).not.toThrow();
	});
});

describe('a failed save', () => {
	it('of one job is not dropped when another is opened, and is written when there is room', async () => {
		const desk = deskOn(store, 'w');
		await desk.open({ id: 'a', file: { name: 'A' }, sharesRack: false });
		await desk.settled();
		const { append } = store;
		store.append = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
		desk.type(['name'], 'A typed', 'Name');
		await desk.settled();
		await desk.open({ id: 'b', file: { name: 'B' }, sharesRack: false });
		await desk.settled();
		expect(desk.saver.others).toEqual(['job a']);
		expect(desk.isUnsaved).toBe(true);
		store.append = append;
		await desk.lookAgain();
		await vi.waitFor(() => expect(desk.isUnsaved).toBe(false), 5000);
		expect((await store.job('a'))?.name).toBe('A typed');
		expect((await store.job('b'))?.name).toBe('B');
	});

	it('before the documents have come is not dropped either', async () => {
		await kept({ name: 'A' }, 'a');
		const { updatesAfter } = store;
		store.updatesAfter = () => Promise.reject(new Error('busy'));
		const desk = deskOn(store, 'w');
		await desk.openStored('a');
		desk.type(['name'], 'A typed', 'Name');
		await desk.open({ id: 'b', file: { name: 'B' }, sharesRack: false });
		store.updatesAfter = updatesAfter;
		await vi.waitFor(async () => expect((await store.job('a'))?.name).toBe('A typed'), 5000);
	});
});

describe('a merge', () => {
	it('is read and planned, and told in a sentence; undo and what can be undone outlive a reload', async () => {
		const desk = deskOn(store, 'one');
		await desk.open({ id: 'a', file: { name: 'A', parts: [] }, sharesRack: false });
		desk.type(['name'], 'Mine', 'Name');
		await desk.settled();
		const other = deskOn(store, 'two');
		await other.openStored('a');
		await other.settled();
		other.set(['notes'], 'theirs', 'notes');
		const follow = vi.spyOn(desk.watch, 'follow');
		await vi.waitFor(() => expect(desk.heard).toBe('Another window changed: the notes.'));
		expect(follow).toHaveBeenCalledWith(desk.file);
		expect(desk.file).toEqual({ name: 'Mine', notes: 'theirs', parts: [] });
		desk.close();
		const reloaded = deskOn(store, 'one');
		await reloaded.openStored('a');
		await reloaded.settled();
		expect(reloaded.undoes).toBe('Name');
		reloaded.undo();
		expect(reloaded.file).toEqual({ name: 'A', notes: 'theirs', parts: [] });
		expect(reloaded.redoes).toBe('Name');
		await reloaded.settled();
	});

	it('a backup in place of all is opened by every window', async () => {
		await kept({ name: 'As it was' }, 'a');
		const all = await store.everything();
		const [desk, other] = [deskOn(store, 'one'), deskOn(store, 'two')];
		for (const each of [desk, other]) {
			await each.openStored('a');
			await each.settled();
		}
		desk.type(['name'], 'Changed', 'Name');
		await desk.replaceAll(() => store.putEverything(all, 'replace'));
		await vi.waitFor(() => expect(other.file.name).toBe('As it was'));
		expect(desk.file.name).toBe('As it was');
		await desk.settled();
		other.type(['notes'], 'on', 'Notes');
		await other.settled();
		await vi.waitFor(() => expect(desk.file).toEqual({ name: 'As it was', notes: 'on' }));
	});
});

it('the browser is asked once to keep what is here, and the answer is noted', async () => {
	const persist = vi.fn(() => Promise.resolve(true));
	expect(await askForRoom(store, { persist })).toBe('kept');
	expect(await askForRoom(store, { persist })).toBe('kept');
	expect(persist).toHaveBeenCalledTimes(1);
	expect(await store.thing('persist')).toBe('kept');
});
