import { test as prop } from '@fast-check/vitest';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countedUses, sundryBooking } from '../../src/lib/estimate/after-work/sundry-booking';
import type { JobFile } from '../../src/lib/job/job';
import { bookingOf } from '../../src/lib/layout/boards/booking';
import { bookedIn } from '../../src/lib/layout/booked';
import { pullBooking } from '../../src/lib/layout/rolls/pull-booking';
import { nth } from '../../src/lib/measure/lists';
import { toMm } from '../../src/lib/measure/length';
import { auditRoll, auditSheets } from '../../src/lib/nest';
import { plan, type Plan } from '../../src/lib/plan';
import { recordOf } from '../../src/lib/record';
import { planTogether } from '../../src/lib/together';
import { boardsTogetherPay, sideBySide } from '../../src/lib/together/choose';
import { runs } from '../depth';
import { sample } from '../plan/samples';

/* Several jobs in one go: what must hold whatever they are, and what is worked out by hand. */

const RACK = {
	materials: [
		{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 },
		{ id: 'mdf', name: 'MDF', nominal: 12, measured: 12 },
	],
	sheets: [
		{ id: 'full', material: 'ply', length: 1000, width: 600, price: 30 },
		{ id: 'mdf-full', material: 'mdf', length: 1000, width: 600, price: 12 },
	],
	cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 3 }],
	rolls: [{ id: 'felt-roll', cloth: 'felt', width: 1000, usable: 1000, price: 10, step: 250 }],
	sundries: [{ id: 'glue', name: 'Adhesive', kind: 'contact-adhesive', pack: 4, price: 9 }],
} as const;
const SAW = { id: 'saw', name: 'Saw', kerf: 0.01, trim: 0 };

function jobOf(number: string, more: object = {}): JobFile {
	return {
		...{ name: `Job ${number}`, number, shop: { saws: [SAW] }, stock: RACK },
		...more,
	} as unknown as JobFile;
}

const part = (id: string, length: number, width: number, count = 1, material = 'ply') => ({
	...{ id, material, length, width, count, grain: 'any' as const },
});

async function together(files: readonly JobFile[], effort = 40): Promise<Plan> {
	const made = await planTogether(files, { effort });
	if ('refused' in made) throw new Error(made.refused.map((p) => p.what).join('\n'));
	return made.plan;
}

const covered = (number: string, more: object = {}): JobFile =>
	jobOf(number, {
		panels: [
			{
				...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'felt' },
				opening: { kind: 'rectangle', length: 400, width: 300 },
			},
		],
		...more,
	});

const halves = (number: string) => jobOf(number, { parts: [part('A', 1000, 290)] });

describe('worked by hand', () => {
	test('runs of two jobs are cut from one length, and each bears its part', async () => {
		const sundries = [{ id: 'ring', name: 'Feed cable', kind: 'cable', pack: 5, price: 12 }];
		const ends = { one: { extra: 0 }, other: { extra: 0 }, slack: 0 };
		const wired = (number: string, length: number): JobFile =>
			jobOf(number, {
				stock: { ...RACK, sundries },
				runs: [{ id: 'W1', name: 'Feed', from: 'ring', stretches: [{ length }], ...ends }],
			});
		const made = await together([wired('1', 3000), wired('2', 1500)]);
		expect(made.runs.map((r) => r.label)).toEqual(['1 W1', '2 W1']);
		expect(made.reels[0]?.lengths.map((l) => l.runs)).toEqual([['1 W1', '2 W1']]);
		expect(made.order.lines).toMatchObject([{ buy: 1, total: 12_00, need: { number: 4.5 } }]);
		expect(made.together?.jobs.map((j) => j.ordered)).toEqual([8_00, 4_00]);
		expect(made.together?.apart.ordered).toBe(24_00);
	});

	test('two jobs of half a sheet each take one sheet, and each bears half of it', async () => {
		const { together: t, order, boards } = await together([halves('1'), halves('2')]);
		expect(boards[0]?.answer.layouts).toHaveLength(1);
		expect(order.total).toBe(30_00);
		expect(t?.boards).toEqual([
			{ id: 'ply', name: 'Plywood', jobs: ['1', '2'], way: 'together', sheets: 1, apart: 2 },
		]);
		expect(t?.jobs.map((j) => j.ordered)).toEqual([15_00, 15_00]);
		expect([t?.now.ordered, t?.apart.ordered]).toEqual([30_00, 60_00]);
	});

	test('what is on the rack is taken once, by the first that needs it', async () => {
		const sheets = [{ ...RACK.sheets[0], owned: 1 }];
		const whole = (number: string) =>
			jobOf(number, { stock: { ...RACK, sheets }, parts: [part('A', 1000, 600)] });
		const { order, boards, together: t } = await together([whole('1'), whole('2')]);
		expect(boards[0]?.sources.map((s) => s.kind).sort()).toEqual(['buy', 'owned']);
		expect(order.total).toBe(30_00);
		expect(t?.apart.ordered).toBe(30_00);
	});

	test('a lower count in one rack is what is planned with, and is told', async () => {
		const owning = (number: string, owned: number) =>
			jobOf(number, {
				stock: { ...RACK, sheets: [{ ...RACK.sheets[0], owned }] },
				parts: [part('A', 1000, 600)],
			});
		const made = await together([owning('1', 2), owning('2', 1)]);
		expect(made.boards[0]?.sources.map((s) => s.kind).sort()).toEqual(['buy', 'owned']);
		expect(made.problems.map((p) => p.what).join()).toContain('do not agree on how much of full');
	});

	test('cloth pulled and sundries used by one job are neither taken nor ordered again', async () => {
		const rest = ({ order }: Plan): unknown =>
			Object.fromEntries(
				order.lines
					.filter((l) => l.group !== 'sheets')
					.map((l) => [l.id, Math.round(1000 * l.need.number)]),
			);
		const alone = await plan(covered('2'), { effort: 40 });
		const first = await plan(covered('1'), { effort: 40 });
		const [{ cloth, rolls } = { cloth: '', rolls: [] }] = first.cloths;
		const at = { cloth, layout: nth(rolls, 0), lot: '' };
		const pulled = bookedIn(pullBooking(covered('1'), first.job, at)!);
		const done = bookedIn(sundryBooking(pulled, countedUses(first.order.lines))!);
		const both = await together([{ ...done, stock: covered('1').stock }, covered('2')]);
		expect(rest(both)).toEqual(rest(alone));
		// What is done is no reason to bear a share of what the other takes.
		expect(both.together?.jobs.map((j) => j.clothArea > 0)).toEqual([false, true]);
		const own = bookedIn(
			bookingOf(done, first.job, first.boards, { material: 'ply', index: 0 }, first.parts)!,
		);
		const all = await together([{ ...own, stock: covered('1').stock }, covered('2')]);
		expect(all.together?.jobs.map((j) => j.ordered)).toEqual([0, all.order.total]);
		expect(both.together?.now.pull).toBe(nth(nth(alone.cloths, 0).rolls, 0).pull);
		expect(both.problems.filter((p) => p.kind !== 'note')).toEqual(
			(await together([covered('1'), covered('2')])).problems.filter((p) => p.kind !== 'note'),
		);
	});

	test('what one job used more than it takes is not there for the other', async () => {
		const alone = await plan(covered('2'), { effort: 40 });
		const used = [{ sundry: 'glue', name: 'Adhesive', packs: 5, bought: 5, counted: 5 }];
		const both = await together([{ ...covered('1'), used }, covered('2')]);
		const glue = (of: Plan) => of.order.lines.find((l) => l.id === 'glue')?.need.number;
		expect(glue(alone)).toBeGreaterThan(0);
		expect(glue(both)).toBeCloseTo(glue(alone)!, 9);
	});

	/** What each takes of a sundry and bears of it: need in its unit, packs to buy, cents each. */
	const ofGlue = async (files: readonly JobFile[], mark = 'glue') => {
		const made = await together(files);
		const line = made.order.lines.find((l) => l.id === mark);
		const rest = made.order.lines.filter((l) => l !== line).map((l) => l.total);
		return {
			...{ need: line?.need.number ?? 0, buy: line?.buy ?? 0, rest: total(rest) },
			each: made.together?.jobs.map((j) => j.ordered),
		};
	};
	const usedUp = (packs: number, sundry = 'glue') => [
		{ sundry, name: 'It', packs, bought: packs, counted: packs },
	];

	test('of packs typed for a job only those left are ordered, for that job alone', async () => {
		// Two packs of screws each; the first has used one, the second none: three of 5.00.
		const screws = { id: 'glue', name: 'Screws', kind: 'other', pack: 100, price: 5, use: 2 };
		const stock = { ...RACK, sundries: [screws] };
		const typed = (number: string, more: object = {}) => jobOf(number, { stock, ...more });
		const [some, all] = [usedUp(1), usedUp(2)];
		const both = await ofGlue([typed('1', { used: some }), typed('2')]);
		expect(both).toEqual({ need: 3, buy: 3, rest: 0, each: [5_00, 10_00] });
		const none = await ofGlue([typed('1', { used: all }), typed('2')]);
		expect(none).toEqual({ need: 2, buy: 2, rest: 0, each: [0, 10_00] });
	});

	test('a pack typed for one job is not eaten by the runs another has cut', async () => {
		// The first has cut its 15 m, three packs of 5 m; the second asks for one pack beside.
		const cable = { id: 'ring', name: 'Feed cable', kind: 'cable', pack: 5, price: 12 };
		const ends = { one: { extra: 0 }, other: { extra: 0 }, slack: 0 };
		const run = (id: string, length: number) => ({
			...{ id, name: id, from: 'ring', stretches: [{ length }], ...ends },
		});
		const wired = (number: string, use: number, more: object = {}): JobFile => {
			const sundries = [{ ...cable, lengths: 'cut', use }];
			return jobOf(number, { stock: { ...RACK, sundries }, ...more });
		};
		const cut = { runs: [run('W1', 5000), run('W2', 10_000)], used: usedUp(3, 'ring') };
		expect(await ofGlue([wired('1', 0, cut), wired('2', 1)], 'ring')).toEqual({
			...{ need: 5, buy: 1, rest: 0, each: [0, 12_00] },
		});
		// Used for a run that was changed since: all of the first's is ordered and borne again.
		const other = { ...cut, used: usedUp(1.3, 'ring') };
		expect(await ofGlue([wired('1', 0, other), wired('2', 1)], 'ring')).toEqual({
			...{ need: 20, buy: 4, rest: 0, each: [36_00, 12_00] },
		});
	});

	test('a part laid by hand lies where it was laid, and the other job beside it', async () => {
		const place = { material: 'ply', sheet: 'buy/full', part: 'part.A', x: 0, y: 305 };
		const held = { ...halves('1'), byHand: [place] };
		const at = (made: Plan) =>
			made.boards[0]?.answer.layouts.map((l) =>
				Object.fromEntries(l.placed.map((p) => [p.id, toMm(p.y)])),
			);
		const made = await together([held, halves('2')]);
		expect(at(made)).toEqual([{ '1.part.A': 305, '2.part.A': 0 }]);
		expect(made.problems.filter((p) => p.path.includes('byHand'))).toEqual([]);
		// Each on a sheet of its own: their hands knew nothing of each other.
		const both = await together([held, { ...halves('2'), byHand: [place] }]);
		expect(at(both)).toEqual([{ '1.part.A': 305 }, { '2.part.A': 305 }]);
		expect(both.problems.filter((p) => p.path.includes('byHand'))).toEqual([]);
	});

	test('a place by hand that no longer holds is told once, of its job', async () => {
		const place = { material: 'ply', sheet: 'buy/full', part: 'part.A', x: 0, y: 900 };
		const made = await together([halves('1'), { ...halves('2'), byHand: [place] }]);
		const said = made.problems.filter((p) => p.path.includes('byHand'));
		expect(said.map((p) => p.path)).toEqual([['2', 'byHand', 0]]);
	});

	test('marks begin with the number; a letter where two have the same one', async () => {
		const labels = async (a: string, b: string) =>
			(await together([halves(a), halves(b)])).parts.map((p) => p.label);
		expect(await labels('0142', '0151')).toEqual(['0142 A', '0151 A']);
		expect(await labels('7', '7')).toEqual(['A A', 'B A']);
		expect(await labels('', 'A')).toEqual(['B A', 'A A']);
	});
});

describe('what differs', () => {
	const kept = async (more: object) => {
		const other = jobOf('2', { parts: [part('A', 1000, 290)], stock: { ...RACK, ...more } });
		return together([halves('1'), other]);
	};

	test.each([
		[
			'measured otherwise',
			{ materials: [{ ...RACK.materials[0], measured: 17.6 }] },
			'measured thickness 17.6 mm, not 18 mm',
		],
		['dearer', { sheets: [{ ...RACK.sheets[0], price: 33 }] }, 'price EUR 33.00, not EUR 30.00'],
		[
			'of another size',
			{ sheets: [{ ...RACK.sheets[0], width: 610 }] },
			'width 610 mm, not 600 mm',
		],
	])('a board %s is kept apart under a name of its own, and told', async (_, more, said) => {
		const made = await kept(more);
		expect(made.boards.map((b) => b.material)).toEqual(['ply', 'ply-2']);
		expect(made.job.stock.materials.map((m) => m.name)).toEqual(['Plywood', 'Plywood (2)']);
		expect(made.boards.every((b) => b.answer.layouts.length === 1)).toBe(true);
		const told = made.problems.find((p) => p.what.includes('kept apart'));
		expect(told?.what).toContain(said);
		expect(told?.kind).toBe('check');
	});

	test('two boards of one name are told apart by name', async () => {
		const more = {
			materials: [{ ...RACK.materials[0], id: 'other', measured: 17 }],
			sheets: [{ ...RACK.sheets[0], id: 's2', material: 'other' }],
		};
		const other = jobOf('2', {
			...{ parts: [part('A', 1000, 290, 1, 'other')], stock: { ...RACK, ...more } },
		});
		const made = await together([halves('1'), other]);
		expect(made.job.stock.materials.map((m) => m.name)).toEqual(['Plywood', 'Plywood (2)']);
	});

	test.each([
		['the currency', { currency: 'USD' }],
		['the ruler', { ruler: { unit: 'in' } }],
		['the kerf', { saws: [{ ...SAW, kerf: 3 }] }],
		['the trim cut', { saws: [{ ...SAW, trim: 5 }] }],
		['the saw', { saws: [{ ...SAW, name: 'Another' }] }],
		['the fence limit of the saw', { saws: [{ ...SAW, fenceLimit: 900 }] }],
		['its packet', { saws: [{ ...SAW, packet: 40 }] }],
		['the way sheets are cut', { method: 'router' }],
		['the price of an hour', { labour: { hour: 50 } }],
		['the spare on sundries', { spare: 3 }],
	])('jobs that differ in %s are refused, and told where', async (what, shop) => {
		const other = jobOf('2', { shop: { saws: [SAW], ...shop }, parts: [part('A', 100, 100)] });
		const made = await planTogether([halves('1'), other], { effort: 5 });
		const said = 'refused' in made ? made.refused.map((p) => p.what) : [];
		expect(said.join()).toContain(`Job 2 differs from job 1 in ${what}:`);
	});

	test('one job, or none, is no several', async () => {
		for (const files of [[], [halves('1')]])
			expect('refused' in (await planTogether(files))).toBe(true);
	});

	test('adhesives of two makes are ordered each for its own job', async () => {
		const panel = {
			...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'felt' },
			opening: { kind: 'rectangle', length: 300, width: 200 },
		};
		const sundries = [{ ...RACK.sundries[0], id: 'other', name: 'Other', price: 7 }];
		const files = [
			jobOf('1', { panels: [panel] }),
			jobOf('2', { panels: [panel], stock: { ...RACK, sundries } }),
		];
		const { order } = await together(files);
		const bought = order.lines.filter((l) => l.group === 'sundries');
		expect(bought.map((l) => [l.what, l.total])).toEqual([
			['Adhesive', 9_00],
			['Other', 7_00],
		]);
	});
});

const sizes = fc.integer({ min: 2, max: 60 }).map((n) => n * 10);
const parts = fc.array(
	fc.record({
		length: sizes,
		width: sizes,
		count: fc.integer({ min: 1, max: 3 }),
		mdf: fc.boolean(),
	}),
	{ maxLength: 4 },
);
const jobs = fc.array(
	fc.record({ parts, owned: fc.nat(2), offcuts: fc.nat(2), panel: fc.boolean(), packs: fc.nat(2) }),
	{ minLength: 2, maxLength: 4 },
);

const filesOf = (drawn: typeof jobs extends fc.Arbitrary<infer T> ? T : never): JobFile[] =>
	drawn.map((job, n) =>
		jobOf(String(n + 1), {
			parts: job.parts.map((p, i) =>
				part(`A${i}`, p.length, p.width, p.count, p.mdf ? 'mdf' : 'ply'),
			),
			panels: job.panel
				? [
						{
							...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'felt' },
							opening: { kind: 'rectangle', length: 300, width: 200 },
						},
					]
				: [],
			stock: {
				...RACK,
				sheets: [{ ...RACK.sheets[0], owned: job.owned, least: 2 }, RACK.sheets[1]],
				offcuts:
					job.offcuts > 0
						? [{ id: 'R1', material: 'ply', length: 600, width: 300, count: job.offcuts }]
						: [],
				rolls: [...RACK.rolls, { id: 'rest', cloth: 'felt', width: 900, usable: 900, left: 400 }],
				sundries: [{ ...RACK.sundries[0], use: job.packs, owned: 0.5 }],
			},
		}),
	);

const total = (amounts: readonly number[]): number => amounts.reduce((a, b) => a + b, 0);

/** Copies of each piece on all layouts, by its id. */
function laidIn(plan: Plan): Map<string, number> {
	const placed = [
		...plan.boards.flatMap((b) => b.answer.layouts.flatMap((l) => l.placed)),
		...plan.cloths.flatMap((c) => c.rolls.flatMap((r) => r.answer.placed)),
	];
	const laid = new Map<string, number>();
	for (const { id } of placed) laid.set(id, (laid.get(id) ?? 0) + 1);
	const left = [
		...plan.boards.map((b) => b.answer.unplaced),
		...plan.cloths.map((c) => c.unplaced),
	];
	for (const { id, count } of left.flat()) laid.set(id, (laid.get(id) ?? 0) + count);
	return laid;
}

prop.prop([jobs], { numRuns: runs(60) })(
	'together never costs more, every piece is laid once, the auditor passes, shares add up',
	async (drawn) => {
		const made = await together(filesOf(drawn), 5);
		const t = made.together!;
		expect(t.now.ordered).toBeLessThanOrEqual(t.apart.ordered);
		const cost = (of: typeof t.now) => of.ordered + of.fromRack + of.labour;
		// Amounts of each job's labour are rounded by themselves.
		expect(cost(t.now)).toBeLessThanOrEqual(cost(t.apart) + 6 * drawn.length);
		const wanted = new Map([...made.parts, ...made.blanks].map((p) => [p.id, p.count]));
		expect(laidIn(made)).toEqual(wanted);
		for (const b of made.boards) {
			expect(auditSheets(b.problem, b.answer)).toEqual([]);
			expect(b.faults).toEqual([]);
		}
		for (const r of made.cloths.flatMap((c) => c.rolls))
			expect(auditRoll(r.problem, r.answer)).toEqual([]);
		expect(total(t.jobs.map((j) => j.ordered))).toBe(made.order.total);
		expect(total(t.jobs.map((j) => j.fromRack))).toBe(made.quote.fromRack);
		expect(total(t.jobs.map((j) => j.labour))).toBe(made.quote.labourCost);
		expect(() => recordOf(made)).not.toThrow();
		// Nothing is taken that is not there: the lowest count of all that know the line.
		const least = (of: (job: (typeof drawn)[number]) => number) =>
			Math.min(...drawn.map(of).filter((n) => n > 0), 9);
		const taken = (kind: string, id: string) =>
			made.boards.flatMap((b) => b.sources).filter((s) => s.kind === kind && s.id === id).length;
		expect(taken('owned', 'full')).toBeLessThanOrEqual(Math.min(...drawn.map((j) => j.owned)));
		expect(taken('offcut', 'R1')).toBeLessThanOrEqual(least((j) => j.offcuts));
	},
);

test('three sample jobs that share one rack: figures as they are told', async () => {
	const files = ['box-slanted-sealed', 'box-stepped-arch', 'box-slotted-l-vent'];
	const { together: t } = await together(
		files.map((name) => sample(`${name}.json`)),
		1000,
	);
	expect(t?.jobs.map((j) => j.tag)).toEqual(['0151', '0153', '0152']);
	expect(t?.now.sheets).toBeLessThan(t?.apart.sheets ?? 0);
	expect(t?.now.minutes).toBeLessThan(t?.apart.minutes ?? 0);
});

test('a sheet that two racks tell of differently lies on the rack once all the same', async () => {
	const owning = (number: string, price: number) =>
		jobOf(number, {
			stock: { ...RACK, sheets: [{ ...RACK.sheets[0], price, owned: 1 }] },
			parts: [part('A', 1000, 600)],
		});
	const made = await together([owning('1', 30), owning('2', 33)]);
	expect(made.boards.map((b) => b.sources.map((s) => s.kind))).toEqual([['owned'], ['buy']]);
	expect(made.order.total).toBe(33_00);
});

test('a layout for all that is dearer, or leaves something over, is not taken', async () => {
	const { job, boards } = await together([halves('1'), halves('2')]);
	const one = boards[0]!;
	const layout = one.answer.layouts[0]!;
	const two = {
		...one,
		answer: { ...one.answer, layouts: [layout, layout] },
		sources: [one.sources[0]!, one.sources[0]!],
	};
	expect(boardsTogetherPay(job, one, two)).toBe(true);
	expect(boardsTogetherPay(job, two, one)).toBe(false);
	const unplaced = [{ id: '1.part.A', count: 1, why: 'No room.' }];
	const short = { ...one, answer: { ...one.answer, unplaced } };
	expect(boardsTogetherPay(job, short, two)).toBe(false);
	const both = sideBySide(one, [
		{ ...one, answer: { ...one.answer, layouts: [layout] } },
		{ ...one, answer: { ...one.answer, layouts: [], cost: 0 }, sources: [] },
	]);
	expect(both.faults).toEqual([]);
	expect(sideBySide(one, [one, one]).faults.length).toBeGreaterThan(0);
});
