import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import { openStore } from '../../src/lib/store/database/open-store';
import { openJob } from '../../src/lib/store/hand/open-job';
import { Shelf } from '../../src/lib/store/keeping/shelf';

it('works', async () => {
	const store = openStore('first');
	const shelf = new Shelf(store, { writer: 'w1' });
	const hand = await openJob(
		shelf,
		{ id: 'a', file: { name: 'A' }, sharesRack: false },
		() => false,
	);
	hand.change((f) => ({ ...f, name: 'B' }), 'name', 'name');
	hand.change((f) => ({ ...f, name: 'BB' }), 'name', 'name');
	expect(hand.file.name).toBe('BB');
	await shelf.settled();
	console.log(await store.everything());
	const shelf2 = new Shelf(openStore('first'), { writer: 'w2' });
	const record = (await store.job('a'))!;
	const hand2 = await openJob(
		shelf2,
		{ ...record, file: record.file as never, record },
		() => false,
	);
	expect(hand2.file).toEqual({ name: 'BB' });
	hand2.change((f) => ({ ...f, number: '7' }), 'number', null);
	await shelf2.settled();
	await new Promise((r) => setTimeout(r, 50));
	expect(hand.file).toEqual({ name: 'BB', number: '7' });
	hand.undo();
	expect(hand.file).toEqual({ name: 'A', number: '7' });
	await shelf.settled();
	await new Promise((r) => setTimeout(r, 50));
	expect(hand2.file).toEqual({ name: 'A', number: '7' });
	shelf.close();
	shelf2.close();
});
