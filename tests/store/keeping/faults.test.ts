import 'fake-indexeddb/auto';
import { fc, test } from '@fast-check/vitest';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { openDexieStore } from '../../../src/lib/store/database/dexie-store';
import { docOfJob } from '../../../src/lib/store/database/records';
import type { Store } from '../../../src/lib/store/database/store';
import { openJob } from '../../../src/lib/store/hand/open-job';
import type { JobInHand } from '../../../src/lib/store/hand/job-in-hand';
import { Shelf } from '../../../src/lib/store/keeping/shelf';
import { runs } from '../../depth';
import { faulty, FAULTS, type Fault } from './faulty-store';

const WAITS = { answer: 30, first: 1, most: 2 };
let count = 0;

interface Window {
	readonly shelf: Shelf;
	readonly hand: JobInHand;
}

/** A window on the job, as a reload opens it: by the record, if there is one. */
async function windowOn(
	store: Store,
	sound: Store,
	channel: string,
	writer: string,
): Promise<Window> {
	const shelf = new Shelf(store, { writer, waits: WAITS, channel });
	const record = await sound.job('j');
	const base = { id: 'j', file: (record?.file ?? START) as JobFile, sharesRack: true };
	const hand = await openJob(shelf, record ? { ...base, record } : base, () => false);
	return { shelf, hand };
}
const START = {
	name: 'Start',
	parts: [{ id: 'P' }],
	stock: { offcuts: [] },
	shop: {},
} as unknown as JobFile;

/** Waits until the window has nothing in memory only. */
async function kept(shelf: Shelf): Promise<void> {
	await vi.waitFor(() => expect(shelf.unsaved()).toEqual([]), { timeout: 20_000, interval: 5 });
}

afterEach(() => void vi.restoreAllMocks());

describe('whatever the store does', () => {
	const step = fc.record({
		what: fc.constantFrom('name', 'rack', 'part', 'undo', 'redo', 'wait', 'look'),
		text: fc.stringMatching(/^[a-z]{1,3}$/),
	});

	/** A second try to fetch that is never answered, while a write brings the document along. */
	const LATE_LOAD: [{ what: 'rack'; text: string }[], Fault[]] = [
		[
			{ what: 'rack', text: 'ue' },
			{ what: 'rack', text: 'o' },
		],
		['silent', 'none', 'torn', 'silent', 'late', 'late', 'none', 'silent', 'torn'],
	];

	test.prop(
		[
			fc.array(step, { minLength: 1, maxLength: 14 }),
			fc.array(fc.constantFrom(...FAULTS), { minLength: 1, maxLength: 25 }),
		],
		{ numRuns: runs(120), examples: [LATE_LOAD] },
	)(
		'once there is room, everything typed is in it, and can be taken back',
		async (steps, faults) => {
			const sound = openDexieStore(`faults-${count}`);
			const channel = `faults ${count++}`;
			const row = [...faults];
			const store = faulty(sound, () => row.shift() ?? 'none');
			const { shelf, hand } = await windowOn(store, sound, channel, 'me');
			// the plain model: what one window did, as whole files
			let [past, now, future]: [unknown[], unknown, unknown[]] = [[], START, []];
			for (const { what, text } of steps) {
				if (what === 'wait') await new Promise((done) => setTimeout(done, 3));
				else if (what === 'look') await shelf.catchUp();
				else if (what === 'undo') {
					hand.undo();
					if (past.length > 0)
						[past, now, future] = [past.slice(0, -1), past.at(-1), [now, ...future]];
				} else if (what === 'redo') {
					hand.redo();
					if (future.length > 0) [past, now, future] = [[...past, now], future[0], future.slice(1)];
				} else {
					const make = edit(what, text);
					const after = make(now as JobFile);
					hand.change(make, what, null);
					[past, now, future] = [[...past, now], after, []];
				}
				expect(plain(hand.file)).toEqual(plain(now));
				if (shelf.saving(docOfJob('j')) === 'saved' && shelf.saving('shop') === 'saved')
					// never 'kept' when not
					expect(plain((await sound.job('j'))?.file)).toEqual(plain(now));
			}
			await kept(shelf);
			shelf.close();
			const later = await windowOn(sound, sound, channel, 'me');
			expect(plain(later.hand.file)).toEqual(plain(now));
			for (let n = past.length; n > 0; n--) later.hand.undo();
			expect(plain(later.hand.file)).toEqual(plain(START));
			expect(later.hand.undoes).toBeNull();
			await kept(later.shelf);
			later.shelf.close();
			sound.close();
		},
	);
});

function edit(what: string, text: string): (file: JobFile) => JobFile {
	if (what === 'name') return (file) => ({ ...file, name: text, notes: `${text}!` });
	if (what === 'rack')
		return (file) => ({ ...file, stock: { ...file.stock, offcuts: [{ id: text }] } }) as JobFile;
	return (file) => ({ ...file, parts: [...(file.parts ?? []), { id: text }] }) as JobFile;
}
/** Without the version, which a shop's rack is kept with. */
const plain = (file: unknown): unknown => JSON.parse(JSON.stringify(file));

describe('several windows, with clocks that differ', () => {
	const move = fc.record({
		who: fc.nat(2),
		what: fc.constantFrom('own', 'own', 'shared', 'rack', 'wait', 'crash', 'delete'),
		n: fc.nat(99),
	});

	test.prop(
		[
			fc.array(move, { minLength: 2, maxLength: 18 }),
			fc.array(fc.constantFrom<Fault>('none', 'none', 'refused', 'torn', 'late'), {
				maxLength: 20,
			}),
			fc.array(fc.integer({ min: -4e6, max: 4e6 }), { minLength: 3, maxLength: 3 }),
		],
		{ numRuns: runs(80) },
	)('nobody overwrites what another did', async (moves, faults, skews) => {
		const name = `windows-${count++}`;
		const sound = openDexieStore(name);
		const row = [...faults];
		const store = faulty(sound, () => row.shift() ?? 'none');
		const clock = vi.spyOn(Date, 'now');
		const start = await windowOn(sound, sound, name, 'start');
		await kept(start.shelf);
		start.shelf.close();
		const windows: Window[] = [];
		for (const who of [0, 1, 2]) windows.push(await windowOn(store, sound, name, `w${who}`));
		/**
		 * What each window wrote into fields of its own since it was last kept whole, the last one
		 * last.
		 */
		const own = [0, 1, 2].map((): unknown[] => [undefined]);
		const shared = new Set<unknown>(['Start']);
		const rack = [0, 1, 2].map((): unknown[] => [undefined]);
		for (const { who, what, n } of moves) {
			clock.mockReturnValue(1.8e12 + skews[who]!);
			const { hand, shelf } = windows[who]!;
			const write = (make: (file: JobFile) => JobFile): void => void hand.change(make, what, null);
			if (what === 'own') {
				write((file) => ({ ...file, [`own${who}`]: n }));
				own[who]!.push(n);
			} else if (what === 'shared') {
				write((file) => ({ ...file, name: `n${n}` }));
				shared.add(`n${n}`);
			} else if (what === 'rack') {
				write((file) => ({ ...file, stock: { ...file.stock, [`own${who}`]: n } }));
				rack[who]!.push(n);
			} else if (what === 'wait') {
				await new Promise((done) => setTimeout(done, n / 10));
			} else if (what === 'crash') {
				const isKept = shelf.unsaved().length === 0;
				shelf.close();
				windows[who] = await windowOn(store, sound, name, `w${who}`);
				if (isKept) for (const list of [own, rack]) list[who] = list[who]!.slice(-1);
			}
		}
		for (const { shelf } of windows) await kept(shelf);
		for (const { shelf } of windows) await shelf.catchUp();
		const files = windows.map(({ hand }) => plain(hand.file) as Record<string, unknown>);
		expect(files[1]).toEqual(files[0]);
		expect(files[2]).toEqual(files[0]);
		// the record's own rack is what it was when the job was last written; the shop's stands by
		// itself
		const record = plain((await sound.job('j'))?.file) as object;
		const { stock, shop } = (await sound.thing('rack')) as Record<string, unknown>;
		expect({ ...record, stock, shop }).toEqual(files[0]);
		for (const who of [0, 1, 2]) {
			expect(own[who]).toContain(files[0]![`own${who}`]);
			expect(rack[who]).toContain((files[0]!['stock'] as Record<string, unknown>)[`own${who}`]);
			if (!moves.some((m) => m.who === who && m.what === 'crash')) {
				expect(files[0]![`own${who}`]).toBe(own[who]!.at(-1));
				expect((files[0]!['stock'] as Record<string, unknown>)[`own${who}`]).toBe(
					rack[who]!.at(-1),
				);
			}
		}
		expect([...shared]).toContain(files[0]!['name']);
		for (const { shelf } of windows) shelf.close();
		sound.close();
	});
});

describe('a database that is gone', () => {
	it('is written anew from what is in memory, the mark of the open job too', async () => {
		const name = `gone-${count++}`;
		const store = openDexieStore(name);
		const { shelf, hand } = await windowOn(store, store, name, 'me');
		hand.change((file) => ({ ...file, name: 'Typed' }), 'name', null);
		await kept(shelf);
		await new Promise((resolve, reject) => {
			const request = indexedDB.deleteDatabase(name);
			request.onsuccess = resolve;
			request.onerror = reject;
		});
		await vi.waitFor(async () => expect(await store.thing('open')).toBe('j'), 5000);
		expect(plain((await store.job('j'))?.file)).toEqual(plain(hand.file));
		hand.change((file) => ({ ...file, number: '8' }), 'number', null);
		await kept(shelf);
		const later = await windowOn(store, store, name, 'other');
		expect(later.hand.file).toMatchObject({ name: 'Typed', number: '8', stock: { offcuts: [] } });
		for (const each of [shelf, later.shelf, store]) each.close();
	});
});

describe('a document that has grown', () => {
	it('is made small again, and loses nothing, with two windows at it', async () => {
		const name = `grown-${count++}`;
		const store = openDexieStore(name);
		const one = await windowOn(store, store, name, 'one');
		const two = await windowOn(store, store, name, 'two');
		for (let n = 0; n < 230; n++) {
			const { hand, shelf } = n % 2 === 0 ? one : two;
			hand.change((file) => ({ ...file, [n % 2 === 0 ? 'a' : 'b']: n }), 'n', 'n');
			await kept(shelf);
		}
		await vi.waitFor(async () =>
			expect((await store.updatesAfter(docOfJob('j'), 0)).length).toBeLessThan(150),
		);
		for (const { shelf } of [one, two]) await shelf.catchUp();
		const later = await windowOn(store, store, name, 'three');
		for (const { hand } of [one, two, later]) expect(hand.file).toMatchObject({ a: 228, b: 229 });
		for (const each of [one.shelf, two.shelf, later.shelf, store]) each.close();
	});
});
