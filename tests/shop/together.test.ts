import 'fake-indexeddb/auto';
import { expect, test, vi } from 'vitest';
import { SPEECH } from '../../src/lib/store/sharing/words';
import { throwForAll } from '../../src/lib/store/sharing/shared-trash';
import { putBack, throwAway } from '../../src/lib/store/keepsake/trash';
import { docOfJob } from '../../src/lib/store/database/records';
import { secret, shop, until } from './each-shop';
import { linkFor, type Device } from './shop';

const joined = (device: Device) =>
	until(() => expect(device.sharing.link.state.kind).toBe('joined'));

test('what one device types the other has, and the other way round', async () => {
	const desk = await shop.device(secret);
	const saw = await shop.device(secret);
	const one = await desk.open('j');
	one.change((file) => ({ ...file, name: 'Camper' }), 'name', null);
	await until(async () => expect(await saw.store.job('j')).toMatchObject({ name: 'Camper' }));
	const two = await saw.open('j');
	two.change((file) => ({ ...file, notes: 'measured' }), 'notes', null);
	await until(() => expect(one.file).toMatchObject({ name: 'Camper', notes: 'measured' }));
	one.change((file) => ({ ...file, name: 'Camper 2' }), 'name', null);
	await until(() => expect(two.file).toEqual(one.file));
	// each takes back its own
	two.undo();
	await until(() => expect(one.file).not.toHaveProperty('notes'));
	expect(one.file.name).toBe('Camper 2');
});

test('the rack of the shop is one, and begins the same for everybody', async () => {
	const desk = await shop.device(secret);
	const saw = await shop.device(secret);
	const one = await desk.open('j');
	const two = await saw.open('k');
	expect(one.file.shop).toEqual({ name: 'Ours' });
	one.change((file) => ({ ...file, shop: { ...file.shop, name: 'Theirs' } }), 'name', null);
	await until(() => expect(two.file.shop).toEqual({ name: 'Theirs' }));
	expect(await saw.store.thing('rack')).toMatchObject({ stock: { materials: [{ id: 'ply' }] } });
});

test('hours without the network are merged on return, of both', async () => {
	const desk = await shop.device(secret);
	const saw = await shop.device(secret);
	const one = await desk.open('j');
	await until(async () => expect(await saw.store.job('j')).toBeDefined());
	const two = await saw.open('j');
	await shop.stop();
	await until(() => expect(desk.sharing.link.state.kind).toBe('away'));
	one.change((file) => ({ ...file, name: 'Desk' }), 'name', null);
	two.change((file) => ({ ...file, notes: 'Saw' }), 'notes', null);
	await saw.open('Of an odd name', { name: 'Odd' }); // stays on its device, and harms nobody
	await saw.open('made-away', { name: 'Made away' }); // is let go of before the shop is back
	await saw.open('j');
	await shop.start();
	await until(() => expect(one.file).toMatchObject({ name: 'Desk', notes: 'Saw' }));
	await until(async () => expect(await desk.store.job('made-away')).toBeDefined());
});

test('a device that comes anew has every job, and asks for nothing it has', async () => {
	const desk = await shop.device(secret);
	for (let n = 0; n < 12; n++) {
		const hand = await desk.open(`job-${n}`, { name: `Job ${n}` });
		hand.change((file) => ({ ...file, notes: `n${n}` }), 'notes', null);
	}
	await until(() => expect(desk.sharing.link.behind).toEqual([]));
	const saw = await shop.device(secret, 'saw');
	await until(async () => expect(await saw.store.jobs()).toHaveLength(12));
	const jobs = await saw.store.jobs();
	expect(new Set(jobs.map(({ name }) => name)).size).toBe(12);
	expect(jobs[0]!.file).toMatchObject({ shop: { name: 'Ours' } });
	await saw.sharing.carrier.idle();
	saw.close();
	const again = await shop.device(secret, 'saw');
	const borrowed = vi.spyOn(again.shelf, 'borrow');
	await joined(again);
	await again.sharing.carrier.idle();
	expect(borrowed).not.toHaveBeenCalled();
});

test('a job thrown away is so on all devices, and back on all, whoever was away meanwhile', async () => {
	const desk = await shop.device(secret);
	const saw = await shop.device(secret);
	for (const id of ['j', 'k']) {
		const hand = await desk.open(id, { name: id });
		hand.change((file) => ({ ...file, notes: 'kept' }), 'notes', null);
		await until(async () =>
			expect(await saw.store.job(id)).toMatchObject({ file: { notes: 'kept' } }),
		);
	}
	const thrown = async (device: Device) => (await device.store.thrownJobs()).map(({ id }) => id);
	await throwAway(desk.store, 'j', 5);
	await throwForAll(desk.shelf, 'j', 5);
	desk.sharing.carrier.look();
	await until(async () => expect(await thrown(saw)).toEqual(['j']));
	expect((await saw.store.jobs()).map(({ id }) => id)).toEqual(['k']);
	expect(await saw.store.job('j')).toMatchObject({ thrown: 5, file: { notes: 'kept' } });
	await shop.stop();
	await until(() => expect(saw.sharing.link.state.kind).toBe('away'));
	await putBack(saw.store, 'j');
	await throwForAll(saw.shelf, 'j', null);
	await shop.start();
	await until(async () => expect(await thrown(desk)).toEqual([]));
	expect(await desk.store.job('j')).toMatchObject({ file: { notes: 'kept' } });
	// who comes anew finds it among the others
	const late = await shop.device(secret);
	await until(async () => expect(await late.store.jobs()).toHaveLength(2));
});

test('a job that could not be brought into step when it moved is so a little later', async () => {
	const desk = await shop.device(secret);
	const saw = await shop.device(secret);
	const updatesAfter = saw.store.updatesAfter.bind(saw.store);
	let refused = 0;
	saw.store.updatesAfter = (doc, n) =>
		doc === 'job j' && refused++ < 6
			? Promise.reject(new DOMException('busy', 'AbortError'))
			: updatesAfter(doc, n);
	(await desk.open('j', { name: 'Camper' })).change((f) => ({ ...f, notes: 'n' }), 'notes', null);
	await until(async () => expect(await saw.store.job('j')).toMatchObject({ file: { notes: 'n' } }));
	expect(refused).toBeGreaterThan(5);
});

test('who may only look is told all and changes nothing for others', async () => {
	const desk = await shop.device(secret);
	await joined(desk);
	const look = await shop.device(await linkFor(desk, 'look'));
	const one = await desk.open('j', { name: 'Ours' });
	await until(async () => expect(await look.store.job('j')).toBeDefined());
	const two = await look.open('j');
	expect(look.sharing.link.right).toBe('look');
	two.change((file) => ({ ...file, name: 'Mine' }), 'name', null);
	one.change((file) => ({ ...file, notes: 'told' }), 'notes', null);
	await until(() => expect(two.file).toMatchObject({ notes: 'told' }));
	expect(one.file.name).toBe('Ours');
	// nor by words a page of ours never says
	const { link } = look.sharing;
	const doc = look.shelf.keeper(docOfJob('j')).doc;
	link.say({ say: 'update', doc: docOfJob('j'), n: 1 }, doc.whole());
	link.say({ say: 'links' });
	await until(() => expect(link.state).toMatchObject({ kind: 'refused', why: 'words' }));
	expect(one.file.name).toBe('Ours');
});

test('a link that is withdrawn puts its devices out at once, and lets nobody in', async () => {
	const desk = await shop.device(secret);
	await joined(desk);
	const given = await linkFor(desk, 'work');
	const saw = await shop.device(given);
	await joined(saw);
	const { link } = desk.sharing;
	link.say({ say: 'withdraw', id: saw.sharing.link.link });
	await until(() => expect(saw.sharing.link.state).toMatchObject({ why: 'withdrawn' }));
	await expect(shop.device(given)).rejects.toThrow('withdrawn');
	link.say({ say: 'withdraw', id: link.link }); // the last by which all may be done stays
	await new Promise((done) => setTimeout(done, 50));
	expect(link.state.kind).toBe('joined');
});

test.each([
	['wrong', 'not the secret', 'secret'],
	['missing', '', 'secret'],
])('a %s secret is refused, and no document comes', async (_, given, why) => {
	await expect(shop.device(given)).rejects.toThrow(`refused: ${why}`);
});

test.each([
	['older', { words: SPEECH.words, job: 1 }],
	['older', { words: 0, job: 99 }],
	['newer', { words: SPEECH.words, job: 99 }],
	['newer', { words: SPEECH.words + 1, job: 2 }],
] as const)(
	'a device of another planner is told it is %s, and nothing is merged',
	async (why, speech) => {
		const { joinShop } = await import('../../src/lib/store/sharing/join-shop');
		const open = vi.fn();
		expect(await joinShop(shop.to(secret, { speech }), open)).toEqual({ refused: why });
		expect(open).not.toHaveBeenCalled();
	},
);
