import 'fake-indexeddb/auto';
import { fc } from '@fast-check/vitest';
import { afterEach, expect, test, vi } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { bookingOf } from '../../src/lib/layout/boards/booking';
import { plan, type Plan } from '../../src/lib/plan';
import { tickCut } from '../../src/lib/ui/state/bench-work';
import type { JobInHand } from '../../src/lib/store/hand/job-in-hand';
import { runs } from '../depth';
import { type Device, TestShop } from './shop';

/*
 * Three devices of one shop, a real server between them: each edits the job, the rack and the bench
 * in its own way, moves and takes back, is away for hours, and has a clock of its own. In the end
 * all three show the same.
 */

const OPENED: JobFile = {
	name: 'Start',
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, owned: 2 }],
	},
	parts: [{ id: 'P1', material: 'ply', length: 700, width: 400, count: 2 }],
};

type Part = NonNullable<JobFile['parts']>[number];
type Edit = (file: JobFile, n: number, made: Plan) => JobFile;

const parts = (file: JobFile): Part[] => [...(file.parts ?? [])];

/** Each kind of edit of a job, its rack and the bench. */
const EDITS: Readonly<Record<string, Edit>> = {
	name: (file, n) => ({ ...file, name: `Name ${n}` }),
	notes: ({ notes, ...file }, n) => (notes === undefined ? { ...file, notes: `n${n}` } : file),
	figure: (file, n) => ({
		...file,
		parts: parts(file).map((part, i) => (i === n % 3 ? { ...part, length: 300 + n } : part)),
	}),
	add: (file, n) => ({
		...file,
		parts: [...parts(file), { id: `N${n}`, material: 'ply', length: 200, width: 100 + n }],
	}),
	remove: (file, n) => ({ ...file, parts: parts(file).filter((_, i) => i !== n % 4 || i === 0) }),
	move: (file, n) => {
		const list = parts(file);
		const [taken] = list.splice(n % Math.max(1, list.length), 1);
		if (taken) list.splice((n * 7) % (list.length + 1), 0, taken);
		return { ...file, parts: list };
	},
	// A point list is one value, a box a thing that holds things.
	box: (file, n) => ({
		...file,
		boxes: [
			{ ...file.boxes?.[0], id: 'b', name: `Box ${n}` } as NonNullable<JobFile['boxes']>[number],
		],
	}),
	rack: (file, n) => ({
		...file,
		stock: {
			...file.stock,
			sheets: (file.stock?.sheets ?? []).map((sheet) => ({ ...sheet, price: n, owned: n % 4 })),
		},
	}),
	offcut: (file, n) => ({
		...file,
		stock: {
			...file.stock,
			offcuts: [
				...(file.stock?.offcuts ?? []),
				{ id: `O${n}`, material: 'ply', length: 300, width: 200 },
			],
		},
	}),
	settings: (file, n) => ({ ...file, shop: { ...file.shop, name: `Shop ${n}` } }),
	tick: (file, n, made) => tickCut(file, made, made.boards[0]!, n % 2, 1 + (n % 3)),
};
const KINDS = [...Object.keys(EDITS), 'book', 'undo', 'redo', 'away', 'back', 'breathe'];

const deed = fc.record({
	who: fc.nat({ max: 2 }),
	kind: fc.constantFrom(...KINDS),
	n: fc.nat({ max: 40 }),
});
/** Clocks of the three, milliseconds beside the true one. */
const clocks = fc.array(fc.integer({ min: -7_200_000, max: 7_200_000 }), {
	...{ minLength: 3, maxLength: 3 },
});

/** Some thirty shops of three devices on a busy machine, milliseconds. */
const PATIENCE = 900_000;

let shop: TestShop | null = null;
afterEach(async () => {
	vi.restoreAllMocks();
	await shop?.close();
	shop = null;
});

/** Fields by their names: which of them was written first says nothing. */
const inOrder = (_: string, value: unknown): unknown =>
	value !== null && typeof value === 'object' && !Array.isArray(value)
		? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
		: value;

const until = (look: () => unknown): Promise<unknown> =>
	vi.waitFor(look, { timeout: 30_000, interval: 5 });

/** Does one thing at one device, by its own clock. */
function does(hand: JobInHand, { kind, n }: { kind: string; n: number }, made: Plan): void {
	const edit = EDITS[kind];
	if (edit) hand.change((file) => edit(file, n, made), kind, null);
	else if (kind === 'undo') hand.undo();
	else if (kind === 'redo') hand.redo();
	else if (kind === 'book') {
		const which = { material: 'ply', index: n % 2 };
		hand.book((file) => bookingOf(file, made.job, made.boards, which), 'book');
	}
}

async function together(
	seeds: { deeds: readonly { who: number; kind: string; n: number }[]; skew: readonly number[] },
	made: Plan,
): Promise<Record<string, number>> {
	shop = new TestShop();
	await shop.start();
	const secret = await shop.owner();
	const devices: Device[] = [];
	for (let n = 0; n < 3; n++) devices.push(await shop.device(secret));
	const first = await devices[0]!.open('j', OPENED);
	first.change((file) => ({ ...file, name: 'Begun', stock: OPENED.stock! }), 'begin', null);
	await until(async () => {
		for (const { store } of devices) expect(await store.job('j')).toMatchObject({ name: 'Begun' });
	});
	const hands = [first, await devices[1]!.open('j'), await devices[2]!.open('j')];
	await until(() =>
		expect(devices.map(({ sharing }) => sharing.link.behind)).toEqual([[], [], []]),
	);
	const met: Record<string, number> = {};
	for (const { who, kind, n } of seeds.deeds) {
		met[kind] = (met[kind] ?? 0) + 1;
		if (kind === 'away') devices[who]!.away();
		else if (kind === 'back') devices[who]!.back();
		else if (kind === 'breathe') await new Promise((done) => setTimeout(done, n));
		else {
			const clock = vi.spyOn(Date, 'now');
			clock.mockImplementation(() => new Date().getTime() + (seeds.skew[who] ?? 0));
			try {
				does(hands[who]!, { kind, n }, made);
			} finally {
				clock.mockRestore();
			}
		}
	}
	for (const device of devices) device.back();
	await until(() => {
		for (const { sharing } of devices) {
			expect(sharing.link.state.kind).toBe('joined');
			expect(sharing.link.behind).toEqual([]);
		}
		const shown = hands.map(({ file }) => JSON.stringify(file, inOrder));
		expect(new Set(shown).size, shown.join('\n')).toBe(1);
	});
	expect(hands.map(({ lost }) => lost)).toEqual([hands[0]!.lost, hands[0]!.lost, hands[0]!.lost]);
	for (const sheet of hands[0]!.file.stock?.sheets ?? [])
		expect(sheet.owned).toBeGreaterThanOrEqual(0);
	await shop.close();
	shop = null;
	return met;
}

test(
	'three devices that do whatever they do show the same in the end',
	async () => {
		const made = await plan(OPENED, { effort: 200 });
		const met = new Map<string, number>();
		const deeds = fc.array(deed, { minLength: 12, maxLength: 40 });
		await fc.assert(
			fc.asyncProperty(deeds, clocks, async (list, skew) => {
				const counts = await together({ deeds: list, skew }, made);
				for (const [kind, n] of Object.entries(counts)) met.set(kind, (met.get(kind) ?? 0) + n);
			}),
			{ numRuns: runs(60), endOnFailure: true },
		);
		// 30 runs of 12 deeds at the least: one of 17 kinds is missed by all with chance below
		// 1e-9.
		expect([...met.keys()].sort()).toEqual([...KINDS].sort());
	},
	PATIENCE,
);
