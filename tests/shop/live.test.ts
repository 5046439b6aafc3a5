import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import type { PlaceOpen, Present } from '../../src/lib/store/sharing/words';
import { placeTold, Presence, saidTold, type Someone } from '../../src/shop/presence';
import { presentWords } from '../../src/lib/ui/present/present-words';
import { secret, shop, until } from './each-shop';
import { linkFor } from './shop';

const at = (page: string, more: Partial<PlaceOpen> = {}): PlaceOpen => ({
	...{ doc: 'job j', page, cutting: null, ...more },
});

/** A device that has joined, and whoever it was last told of. */
async function watching(given: string, name: string) {
	const device = await shop.device(given, name);
	const { link } = device.sharing;
	const seen: { present: readonly Present[] } = { present: [] };
	link.onPresent = (devices) => (seen.present = devices);
	await until(() => expect(link.state.kind).toBe('joined'));
	return { device, link, seen };
}

test('who has a job open is told who else has, and what is in the saw, cut by cut', async () => {
	const desk = await watching(secret, 'Desk');
	const saw = await watching(secret, 'Saw');
	const other = await watching(secret, 'Other');
	desk.link.standsAt(at('Boards'));
	other.link.standsAt(at('Build', { doc: 'job k' }));
	saw.link.standsAt(at('bench', { cutting: { sheet: 's', n: 2, done: 0, of: 3 } }));
	await until(() =>
		expect(desk.seen.present).toEqual([
			{ device: 'Saw', page: 'bench', cutting: { sheet: 's', n: 2, done: 0, of: 3 } },
		]),
	);
	await until(() => expect(saw.seen.present).toMatchObject([{ device: 'Desk', page: 'Boards' }]));
	for (const done of [1, 2, 3]) {
		saw.link.standsAt(at('bench', { cutting: { sheet: 's', n: 2, done, of: 3 } }));
		await until(() => expect(desk.seen.present).toMatchObject([{ cutting: { done } }]));
	}
	expect(other.seen.present).toEqual([]);
	saw.link.standsAt(at('bench', { doc: 'job k' }));
	await until(() => expect(desk.seen.present).toEqual([]));
	await until(() => expect(other.seen.present).toMatchObject([{ device: 'Saw' }]));
	saw.device.close();
	await until(() => expect(other.seen.present).toEqual([]));
});

test('it is told again after the server was away, and meanwhile nobody is said to be there', async () => {
	const desk = await watching(secret, 'Desk');
	const saw = await watching(secret, 'Saw');
	for (const { link } of [desk, saw]) link.standsAt(at('Build'));
	await until(() => expect(desk.seen.present).toHaveLength(1));
	await shop.stop();
	await until(() => expect(desk.seen.present).toEqual([]));
	await shop.start();
	await until(() => expect(desk.seen.present).toMatchObject([{ device: 'Saw' }]));
});

test('it is nowhere on the disk, and who may only look is told and seen too', async () => {
	const desk = await watching(secret, 'Desk');
	const look = await watching(await linkFor(desk.device, 'look'), 'Customer of the day');
	for (const { link } of [desk, look]) link.standsAt(at('Build'));
	await until(() => expect(desk.seen.present).toMatchObject([{ device: 'Customer of the day' }]));
	await until(() => expect(look.seen.present).toMatchObject([{ device: 'Desk' }]));
	const { readdirSync, readFileSync } = await import('node:fs');
	const all = readdirSync(shop.folder, { recursive: true, withFileTypes: true })
		.filter((entry) => entry.isFile())
		.map((entry) => readFileSync(`${entry.parentPath}/${entry.name}`, 'latin1'));
	expect(all.length).toBeGreaterThan(2);
	expect(all.join('')).not.toContain('Customer of the day');
});

test('a place that is none is no place', () => {
	expect(placeTold(null)).toBeNull();
	expect(placeTold(at('x'.repeat(500)))?.page).toHaveLength(40);
	const cutting = { sheet: 's', n: 1, done: 0, of: 2 };
	expect(placeTold(at('bench', { cutting }))).toEqual(at('bench', { cutting }));
	for (const wrong of [
		...[undefined, 7, 'job j', {}, { ...at('x'), doc: '../etc' }, { ...at('x'), page: 5 }],
		...[
			{ ...cutting, n: 'one' },
			{ ...cutting, sheet: 's'.repeat(301) },
			{ ...cutting, of: 1.5 },
		].map((wrongCutting) => ({ ...at('x'), cutting: wrongCutting })),
	])
		expect(() => placeTold(wrong), JSON.stringify(wrong)).toThrow(TypeError);
});

test('many are not named one by one', () => {
	const one = (device: string): Present => ({ device, page: 'Build', cutting: null });
	expect(presentWords([])).toBe('');
	expect(
		presentWords([{ ...one('Saw'), cutting: { sheet: 's', n: 2, done: 4, of: 12 } }, one('')]),
	).toBe(
		'This job is open too at Saw (sheet 2: 4 of 12 cuts made); a device without a name (Build).',
	);
	const words = presentWords(Array.from({ length: 20 }, (_, n) => one(`D${n}`)));
	expect(words).toContain('D4');
	expect(words).not.toContain('D5');
	expect(words).toContain('15 more');
});

describe('what another server says', () => {
	const saw: Present = { device: 'Saw', page: 'bench', cutting: null };
	const said = (doc: string, ...devices: readonly Present[]) => [doc, devices] as const;

	/** Somebody here who has the job open, and whoever they were last told of. */
	function someone() {
		const presence = new Presence();
		const told: { present: readonly Present[] } = { present: [] };
		const one: Someone = { device: 'Desk', tellPresent: (_, all) => void (told.present = all) };
		presence.put(one, at('Boards'));
		const is = (...names: readonly string[]) =>
			until(() => expect(told.present.map(({ device }) => device)).toEqual(names));
		return { presence, is };
	}

	test('stands until it says otherwise', async () => {
		const { presence, is } = someone();
		presence.hear('b', { docs: [said('job j', saw), said('job k')], whole: false });
		await is('Saw');
		presence.hear('c', { docs: [said('job j', { ...saw, device: 'Phone' })], whole: false });
		await is('Saw', 'Phone');
		presence.hear('b', { docs: [said('job k', saw)], whole: false });
		presence.hear('c', { docs: [said('job j')], whole: false });
		await is('Saw');
		presence.hear('b', { docs: [said('job k', saw)], whole: true });
		await is();
		presence.close();
	});

	test('of one that has gone is forgotten', async () => {
		const { presence, is } = someone();
		presence.hear('b', { docs: [said('job j', saw)], whole: false });
		await is('Saw');
		for (let beats = 0; beats < 2; beats++) presence.beat();
		presence.hear('b', { docs: [], whole: false });
		for (let beats = 0; beats < 2; beats++) presence.beat();
		await is('Saw');
		presence.beat();
		await is();
		presence.close();
	});

	test.each([
		null,
		{},
		{ docs: [['x', []]] },
		{ docs: [['job j', [null]]] },
		{ docs: [['job j', [{}]]] },
	])('%j is nothing a server says', (told) => expect(() => saidTold(told)).toThrow(TypeError));
});
