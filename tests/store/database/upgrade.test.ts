import 'fake-indexeddb/auto';
import { afterEach, describe, expect, it } from 'vitest';
import { lifted } from '../../../src/lib/store/rack';
import { openStore } from '../../../src/lib/store/database/open-store';
import type { StoredJob } from '../../../src/lib/store/database/records';
import type { Store } from '../../../src/lib/store/database/store';
import { openJob } from '../../../src/lib/store/hand/open-job';
import { Shelf } from '../../../src/lib/store/keeping/shelf';
import type { JobFile } from '../../../src/lib/job/job';
import { FROZEN, makeOldDatabase } from '../old-database';

const opened: { close(): void }[] = [];
afterEach(() => opened.splice(0).forEach((each) => each.close()));

let count = 0;
async function old(): Promise<{ store: Store; name: string }> {
	const name = `old-${count++}`;
	await makeOldDatabase(name);
	const store = openStore(name);
	opened.push(store);
	return { store, name };
}
function shelfOn(store: Store, writer = 'w'): Shelf {
	const shelf = new Shelf(store, { writer, channel: `old ${Math.random()}` });
	opened.unshift(shelf);
	return shelf;
}
const rows = FROZEN.rows as Readonly<Record<string, readonly unknown[]>>;
const FIRST = rows['jobs']![0] as StoredJob;
async function taken(store: Store, id: string, writer = 'w') {
	const record = (await store.job(id))!;
	const shelf = shelfOn(store, writer);
	const { file, sharesRack } = record;
	const opening = { id, file: file as JobFile, sharesRack, record };
	return { shelf, hand: await openJob(shelf, opening, () => false) };
}

describe('a database of the version before documents', () => {
	it('is taken over with every record and the mark of the open job as they were', async () => {
		const { store } = await old();
		expect(await store.thing('open')).toBe(FIRST.id); // before the library is there
		await store.steps(''); // fetches it, and so the upgrade
		const all = await store.everything();
		expect(all.jobs).toEqual(expect.arrayContaining([...rows['jobs']!]));
		expect(all.jobs).toHaveLength(4);
		expect(all.things).toEqual(expect.arrayContaining([...rows['things']!]));
		expect(all.updates).toEqual([]);
	});

	it('lists every job, a torn one too, which can be had raw', async () => {
		const { store } = await old();
		expect((await store.jobs()).map(({ id }) => id)).toEqual([
			FIRST.id,
			'version-1-file',
			'torn',
			'half',
		]);
		expect(await store.job('torn')).toEqual(rows['jobs']![2]);
		expect(await store.job('half')).toEqual(rows['jobs']![3]);
	});

	it('opens its job on the rack of the shop, whole, wrong letters too', async () => {
		const { store } = await old();
		const { hand, shelf } = await taken(store, FIRST.id);
		const rack = (rows['things']![1] as { value: { stock: object; shop: object } }).value;
		expect(hand.file).toEqual({ ...(FIRST.file as object), stock: rack.stock, shop: rack.shop });
		expect(hand.sharesRack).toBe(true);
		await shelf.settled();
		expect(await store.job(FIRST.id)).toEqual({ ...FIRST, file: hand.file, merged: true });
		expect(await store.thing('rack')).toMatchObject(rack);
	});

	it('opened in two windows at once, and edited in both, is taken over once', async () => {
		const { store, name } = await old();
		const again = openStore(name);
		opened.push(again);
		const [one, two] = await Promise.all([
			taken(store, FIRST.id, '1'),
			taken(again, FIRST.id, '2'),
		]);
		one.hand.change((f) => ({ ...f, name: 'One' }), 'name', null);
		two.hand.change((f) => ({ ...f, number: 'Two' }), 'number', null);
		two.hand.change((f) => ({ ...f, stock: { ...f.stock, offcuts: [] } }), 'rack', null);
		await Promise.all([one.shelf.settled(), two.shelf.settled()]);
		await one.shelf.catchUp();
		await two.shelf.catchUp();
		expect(one.hand.file).toEqual(two.hand.file);
		expect(one.hand.file).toMatchObject({ name: 'One', number: 'Two' });
		expect(one.hand.file.parts).toHaveLength(2);
		expect(one.hand.file.stock?.materials).toHaveLength(1);
	});

	it('lifts a file of an old version, the same way in every window', async () => {
		const { store } = await old();
		const { hand } = await taken(store, 'version-1-file');
		const was = rows['jobs']![1] as StoredJob;
		expect(hand.file).toEqual(lifted(was.file as JobFile));
		expect(hand.file.version).toBe(2);
		expect(hand.undoes).toBeNull();
	});

	it('takes what an old window still writes as an edit, and keeps what it did not know', async () => {
		const { store } = await old();
		const { hand, shelf } = await taken(store, FIRST.id);
		hand.change((f) => ({ ...f, number: '7' }), 'number', null);
		await shelf.settled();
		const record = (await store.job(FIRST.id))!;
		const whole: Partial<StoredJob> = { ...record };
		delete (whole as { merged?: true }).merged;
		await store.putJob({
			...(whole as StoredJob),
			file: { ...(record.file as object), name: 'By the old one' },
		});
		const later = await taken(store, FIRST.id, 'later');
		expect(later.hand.file).toMatchObject({ name: 'By the old one', number: '7' });
	});

	it('is refused where a newer planner has been, and can still be looked at', async () => {
		const name = `newer-${count++}`;
		await makeOldDatabase(name, { ...FROZEN, version: 90 });
		const store = openStore(name);
		opened.push(store);
		expect(await store.job(FIRST.id)).toEqual(FIRST);
		await expect(store.jobs()).rejects.toThrow('newer version');
		await expect(store.setThing('open', 'x')).rejects.toThrow('newer version');
		expect((await indexedDB.databases()).find((db) => db.name === name)?.version).toBe(90);
	});
});
