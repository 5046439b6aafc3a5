import 'fake-indexeddb/auto';
import { Dexie } from 'dexie';
import { afterEach, expect, test } from 'vitest';
import { openStore } from '../../../src/lib/store/database/open-store';
import type { Store } from '../../../src/lib/store/database/store';
import { openJob } from '../../../src/lib/store/hand/open-job';
import { Shelf } from '../../../src/lib/store/keeping/shelf';
import type { JobFile } from '../../../src/lib/job/job';

/* A document one of whose updates was never kept: what was done after it hangs on that. */

const opened: { close(): void }[] = [];
afterEach(() => opened.splice(0).forEach((each) => each.close()));

const FILE = {
	name: 'Camper',
	notes: '',
	stock: { materials: [], sheets: [{ id: 's', name: 'Rack 1' }] },
} as unknown as JobFile;

/** A page that opens the job anew, of what the store has. */
async function page(name: string, sharesRack: boolean) {
	const store = openStore(name);
	const shelf = new Shelf(store, { writer: 'w', channel: `${name} ${Math.random()}` });
	opened.unshift(store, shelf);
	const record = await store.job('j');
	const file = (record?.file as JobFile | undefined) ?? FILE;
	const opening = { id: 'j', file, sharesRack, ...(record ? { record } : {}) };
	const hand = await openJob(shelf, opening, () => false);
	await shelf.settled();
	return { store, shelf, hand };
}

const done = ({ store, shelf }: { store: Store; shelf: Shelf }): void => {
	shelf.close();
	store.close();
};

/** Takes one update out of what was kept of a document. */
async function lose(name: string, doc: string, nth: number): Promise<void> {
	const db = await new Dexie(name).open();
	const rows = (await db.table('updates').toArray()) as { n: number; doc: string }[];
	const row = rows.filter((one) => one.doc === doc)[nth];
	if (!row) throw new Error(`no update ${nth} of ${doc}`);
	await db.table('updates').delete(row.n);
	db.close();
}

test('a job is as it was shown last, and what is done then stays', async () => {
	const first = await page('gap-job', false);
	first.hand.change((file) => ({ ...file, name: 'Camper, left side' }), 'name', null);
	await first.shelf.settled();
	first.hand.change((file) => ({ ...file, notes: 'measured' }), 'notes', null);
	await first.shelf.settled();
	done(first);
	await lose('gap-job', 'job j', 1);
	const second = await page('gap-job', false);
	expect(second.hand.file).toMatchObject({ name: 'Camper, left side', notes: 'measured' });
	second.hand.change((file) => ({ ...file, notes: 'measured twice' }), 'notes', null);
	await second.shelf.settled();
	done(second);
	const third = await page('gap-job', false);
	expect(third.hand.file).toMatchObject({ name: 'Camper, left side', notes: 'measured twice' });
	expect(third.hand.file.stock).toEqual(FILE.stock);
});

test("so is the shop's rack", async () => {
	const first = await page('gap-rack', true);
	const sheets = (name: string) => (file: JobFile) =>
		({ ...file, stock: { materials: [], sheets: [{ id: 's', name }] } }) as unknown as JobFile;
	first.hand.change(sheets('Rack 2'), 'stock', null);
	await first.shelf.settled();
	first.hand.change((file) => ({ ...sheets('Rack 3')(file), notes: 'n' }), 'stock', null);
	await first.shelf.settled();
	done(first);
	await lose('gap-rack', 'shop', 1);
	const second = await page('gap-rack', true);
	expect(second.hand.file.stock).toMatchObject({ sheets: [{ id: 's', name: 'Rack 3' }] });
});

test('what never came, coming late, takes nothing back', async () => {
	const first = await page('gap-late', false);
	first.hand.change((file) => ({ ...file, name: 'Camper, left side' }), 'name', null);
	await first.shelf.settled();
	first.hand.change((file) => ({ ...file, notes: 'measured' }), 'notes', null);
	await first.shelf.settled();
	const rows = await first.store.updatesAfter('job j', 0);
	done(first);
	await lose('gap-late', 'job j', 1);
	const second = await page('gap-late', false);
	second.hand.change((file) => ({ ...file, name: 'Camper, both sides' }), 'name', null);
	second.shelf.keeper('job j').takeIn(rows[1]!.bytes);
	second.hand.change((file) => file, '', null);
	expect(second.hand.file.notes).toBe('measured');
	await second.shelf.settled();
	expect(second.shelf.keeper('job j').doc.hasGap).toBe(false);
});
