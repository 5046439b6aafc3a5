import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { openDexieStore } from '../../../src/lib/store/database/dexie-store';
import type { Store } from '../../../src/lib/store/database/store';
import { openJob } from '../../../src/lib/store/hand/open-job';
import { backup, readBackup } from '../../../src/lib/store/keepsake/backup';
import { restore } from '../../../src/lib/store/keepsake/restore';
import {
	fileOfRevision,
	keepHourlyRevision,
	keepRevision,
	revisions,
} from '../../../src/lib/store/keepsake/revisions';
import { emptyTrash, putBack, throwAway } from '../../../src/lib/store/keepsake/trash';
import { Shelf } from '../../../src/lib/store/keeping/shelf';

let [store, other]: Store[] = [];
let count = 0;
beforeEach(() => {
	store = openDexieStore(`keepsake-${count++}`);
	other = openDexieStore(`keepsake-${count++}`);
});
afterEach(() => [store, other].forEach((each) => each!.close()));

async function opened(on: Store, id: string, file?: JobFile, sharesRack = false) {
	const shelf = new Shelf(on, { writer: 'me', channel: `keepsake ${count}` });
	const record = await on.job(id);
	const opening = record
		? { id, file: record.file as JobFile, sharesRack: record.sharesRack, record }
		: { id, file: file!, sharesRack };
	return { shelf, hand: await openJob(shelf, opening, () => false) };
}

/** Two jobs, one on the shop's rack and edited, one thrown away, one revision, an open mark. */
async function filled(on: Store): Promise<void> {
	const first = {
		name: 'First',
		stock: { offcuts: [{ id: 'R1' }] },
		shop: {},
	} as unknown as JobFile;
	for (const [id, file, shares] of [
		['a', first, true],
		['b', { name: 'Second', notes: '\ud800 \u0000' }, false],
		['c', { name: 'Third' }, false],
	] as const) {
		const { shelf, hand } = await opened(on, id, file, shares);
		hand.change((f) => ({ ...f, number: `${id}7` }), 'number', null);
		hand.change((f) => ({ ...f, customer: `${id}8` }), 'customer', null);
		hand.undo();
		await shelf.settled();
		shelf.close();
	}
	await throwAway(on, 'c', 5000);
	await keepRevision(on, 'a', { why: 'asked for', at: 1000 });
}
const numbered = ({ updates, revisions, ...rest }: Awaited<ReturnType<Store['everything']>>) => ({
	...rest,
	updates: updates.map(({ n: _, ...row }) => row),
	revisions: revisions.map(({ n: _, ...row }) => row),
});
async function read(text: string) {
	const file = readBackup(text);
	if ('refused' in file) throw new Error(file.refused);
	return file.everything;
}

describe('a backup', () => {
	it('put back after all is wiped gives back everything, and what can be undone', async () => {
		await filled(store!);
		const before = await store!.everything();
		expect([before.jobs.length, before.updates.length > 3, before.steps.length]).toEqual([
			3,
			true,
			6,
		]);
		const text = await backup(store!, 9000);
		await filled(other!);
		await other!.putJob({ ...before.jobs[0]!, id: 'gone', name: 'Not in the backup' });
		await restore(other!, await read(text), 'replace', () => 'new');
		expect(numbered(await other!.everything())).toEqual(numbered(before));
		const { hand, shelf } = await opened(other!, 'a');
		expect(hand.file).toMatchObject({
			name: 'First',
			number: 'a7',
			stock: { offcuts: [{ id: 'R1' }] },
		});
		expect([hand.undoes, hand.redoes]).toEqual(['number', 'customer']);
		hand.undo();
		expect(hand.file.number).toBeUndefined();
		await shelf.settled();
		shelf.close();
		expect(
			numbered(JSON.parse(JSON.stringify(await read(await backup(store!, 1))))).jobs,
		).toHaveLength(3);
	});

	it('put beside what there is takes nothing away, and doubles nothing', async () => {
		await filled(store!);
		const text = await backup(store!, 9000);
		const start = await store!.everything();
		await restore(store!, await read(text), 'beside', () => 'new');
		// all is there already
		expect(numbered(await store!.everything())).toEqual(numbered(start));
		const { hand, shelf } = await opened(store!, 'b');
		hand.change((f) => ({ ...f, name: 'Second, changed' }), 'name', null);
		await shelf.settled();
		shelf.close();
		await restore(store!, await read(text), 'beside', () => 'new');
		const names = (await store!.jobs()).map(({ id, name }) => [id, name]);
		expect(names).toEqual(
			expect.arrayContaining([
				['b', 'Second, changed'],
				['new', 'Second'],
			]),
		);
		expect(names).toHaveLength(3);
		const again = await opened(store!, 'new');
		expect(again.hand.undoes).toBe('number');
		again.hand.undo();
		expect(again.hand.file).toEqual({ name: 'Second', notes: '\ud800 \u0000' });
		await again.shelf.settled();
		again.shelf.close();
	});

	it("leaves the shop's rack as it is: jobs of another rack bring theirs along", async () => {
		await filled(store!);
		const text = await backup(store!, 1);
		const own = {
			name: 'Here',
			stock: { offcuts: [{ id: 'MINE' }] },
			shop: {},
		} as unknown as JobFile;
		const here = await opened(other!, 'here', own, true);
		await here.shelf.settled();
		here.shelf.close();
		await restore(other!, await read(text), 'beside', () => 'new');
		expect(await other!.thing('rack')).toMatchObject({ stock: { offcuts: [{ id: 'MINE' }] } });
		const came = await opened(other!, 'a');
		expect(came.hand.sharesRack).toBe(false);
		expect(came.hand.file).toMatchObject({ number: 'a7', stock: { offcuts: [{ id: 'R1' }] } });
		await came.shelf.settled();
		came.shelf.close();
	});

	it('that is none, torn or newer is refused in words, and changes nothing', () => {
		for (const text of [
			'',
			'[]',
			'null',
			'{"format":"x"}',
			'{"format":"kerf-and-nap backup","version":1}',
		])
			expect(readBackup(text), text).toHaveProperty('refused');
		expect(readBackup('{"format":"kerf-and-nap backup","version":2}')).toEqual({
			refused: expect.stringContaining('newer') as unknown,
		});
	});
});

describe('the trash', () => {
	it('holds what was thrown away as it was, until it is put back or emptied', async () => {
		await filled(store!);
		expect((await store!.jobs()).map(({ id }) => id).sort()).toEqual(['a', 'b']);
		expect((await store!.thrownJobs()).map(({ id, thrown }) => [id, thrown])).toEqual([
			['c', 5000],
		]);
		await putBack(store!, 'c');
		expect(await store!.thrownJobs()).toEqual([]);
		const { hand, shelf } = await opened(store!, 'c');
		expect(hand.file).toEqual({ name: 'Third', number: 'c7' });
		await throwAway(store!, 'c', 7000);
		hand.change((f) => ({ ...f, name: 'Third on' }), 'name', null);
		await shelf.settled();
		shelf.close();
		expect((await store!.thrownJobs())[0]?.name).toBe('Third on'); // still open in a window
		expect(await emptyTrash(store!, 7000)).toEqual([]);
		expect(await emptyTrash(store!)).toEqual(['Third on']);
		const all = await store!.everything();
		expect(JSON.stringify([all.jobs, all.steps, all.updates.map(({ doc }) => doc)])).not.toContain(
			'job c',
		);
		expect(all.jobs.map(({ id }) => id).sort()).toEqual(['a', 'b']);
		await throwAway(store!, 'nobody', 1); // no job, no record
		expect((await store!.everything()).jobs).toHaveLength(2);
	});
});

describe('revisions', () => {
	it('are kept when asked for, and hourly at most without, none twice', async () => {
		await filled(store!);
		const at = 1000 + 3_600_000;
		expect(await keepHourlyRevision(store!, 'a', { why: 'editing', at: at - 1 })).toBe(false);
		expect(await keepHourlyRevision(store!, 'a', { why: 'editing', at, file: { name: 'x' } })).toBe(
			true,
		);
		await keepRevision(store!, 'a', { why: 'the same again', at: at + 1, file: { name: 'x' } });
		const lines = await revisions(store!, 'a');
		expect(lines.map(({ at, why }) => [at, why])).toEqual([
			[at, 'editing'],
			[1000, 'asked for'],
		]);
		expect(await fileOfRevision(store!, lines[0]!)).toEqual({ name: 'x' });
		expect(await fileOfRevision(store!, lines[1]!)).toMatchObject({ name: 'First', number: 'a7' });
		await keepRevision(store!, 'nobody', { why: 'none', at });
		expect(await revisions(store!, 'nobody')).toEqual([]);
	});

	it('are small, and the oldest go when there are many', async () => {
		const file = { parts: Array.from({ length: 400 }, (_, i) => ({ id: `P${i}`, length: 600 })) };
		for (let n = 0; n < 103; n++)
			await keepRevision(store!, 'a', { why: `${n}`, at: n, file: { ...file, n } });
		const kept = await store!.revisions('a');
		expect(kept).toHaveLength(100);
		expect(kept.at(-1)?.why).toBe('3');
		expect(kept[0]!.packed.length).toBeLessThan(JSON.stringify(file).length / 5);
	});
});
