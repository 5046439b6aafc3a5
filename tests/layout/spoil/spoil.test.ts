import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { materialsOf } from '../../../src/lib/estimate/after-work/against';
import { bookCut, pinSheet } from '../../../src/lib/layout/boards/booking';
import { pullBooking } from '../../../src/lib/layout/rolls/pull-booking';
import { markSpoiled, type SpoiledAt, spoilRefusal } from '../../../src/lib/layout/spoil/mark';
import { type Plan, plan, planAgain, withSpoiled } from '../../../src/lib/plan';
import { recordOf } from '../../../src/lib/record';

const QUICK = { effort: 100 };

const job = (
	parts: JobFile['parts'],
	more: Partial<NonNullable<JobFile['stock']>> = {},
): JobFile => ({
	number: '7',
	shop: { keep: { length: 100, width: 100 } },
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [
			{ id: 's', material: 'ply', length: 1000, width: 600, price: 40, factoryEdges: false },
		],
		...more,
	},
	parts,
});
const A = { id: 'A', material: 'ply', length: 500, width: 300 };

/** All sheets of a board cut, one after the other. */
async function cutAll(file: JobFile): Promise<JobFile> {
	let now = file;
	for (;;) {
		const made = await plan(now, QUICK);
		const index = made.boards[0]?.sources.findIndex((s) => !s.cut) ?? -1;
		if (index < 0) return now;
		now = bookCut(now, made.job, made.boards, { material: 'ply', index });
	}
}

/** Where a part lies that is cut and sound, in the plan. */
function onCut(of: Plan, id: string, nth = 0): SpoiledAt {
	const [boards] = of.boards;
	const all = (boards?.answer.layouts ?? []).flatMap((l, index) =>
		boards?.sources[index]?.cut
			? l.placed.flatMap((p, place) => (p.id === id ? [{ index, place }] : []))
			: [],
	);
	const sound = all.filter(({ index, place }) => !boards?.sources[index]?.spoiled.includes(place));
	const at = sound[nth];
	if (!at || !boards) throw new Error(`${id} is on no sheet that is cut`);
	return { of: 'board', material: boards.material, ...at };
}

/** Sound pieces laid of each part. */
function sound({ boards }: Plan): Record<string, number> {
	const counts: Record<string, number> = {};
	for (const { answer, sources } of boards)
		for (const [i, { placed }] of answer.layouts.entries())
			for (const [at, { id }] of placed.entries())
				if (!sources[i]?.spoiled.includes(at)) counts[id] = (counts[id] ?? 0) + 1;
	return counts;
}

async function spoiled(file: JobFile, id: string, by?: string, nth = 0) {
	const before = await plan(file, QUICK);
	const at = onCut(before, id, nth);
	const ways = await planAgain(before, file, at, QUICK);
	const way = by === undefined ? ways[0] : ways.find((w) => w.by === by);
	if (!way) throw new Error(`no way by ${by}`);
	const after = withSpoiled(file, before, at, way);
	return { before, ways, way, after, made: await plan(after, QUICK) };
}

describe('one sheet, one part, spoiled', () => {
	it('is cut again from the offcut of its own sheet, and nothing is bought', async () => {
		const file = await cutAll(job([A]));
		expect(file.stock?.offcuts?.map((o) => o.id)).not.toEqual([]);
		const { ways, way, made } = await spoiled(file, 'part.A');
		expect(ways.map((w) => w.by)).toContain('buy');
		expect(way.by).toBe('offcut');
		expect(sound(made)).toEqual({ 'part.A': 1 });
		expect(made.order.total).toBe(0);
		expect(made.boards[0]?.sources.map((s) => [s.kind, s.cut])).toEqual([
			['buy', true],
			['offcut', false],
		]);
		expect(made.problems.filter((p) => p.kind !== 'note')).toEqual([]);
		// The sheet that is cut lies as it did.
		expect(made.boards[0]?.answer.layouts[0]).toEqual(
			(await plan(file, QUICK)).boards[0]?.answer.layouts[0],
		);
	});

	it('is what was said: each way is the plan of the file it makes', async () => {
		const file = await cutAll(job([A]));
		const before = await plan(file, QUICK);
		const at = onCut(before, 'part.A');
		for (const way of await planAgain(before, file, at, QUICK))
			expect(recordOf(await plan(withSpoiled(file, before, at, way), QUICK))).toEqual(
				recordOf(way.plan),
			);
	});

	it('takes a new sheet where nothing else is left, and the quote stays', async () => {
		const whole = { ...A, length: 1000, width: 600 };
		const file = await cutAll(job([whole]));
		const before = await plan(file, QUICK);
		const { way, made } = await spoiled(file, 'part.A');
		expect(way.by).toBe('buy');
		expect(made.order.total).toBe(4000);
		expect(made.order.lines[0]?.for).toEqual(['A A, spoiled: cut again']);
		expect(made.quote.net).toBe(before.quote.net);
		const took = (of: Plan) => materialsOf(of).map((m) => [m.what, m.estimated, m.taken]);
		expect(took(before)).toEqual([['Plywood', 1, 1]]);
		expect(took(made)).toEqual([
			['Plywood', 1, 1],
			['Plywood: spoiled', 0, 1],
		]);
		expect(made.quote.spoil).toMatchObject({ pieces: 1, lost: 4000, material: 4000 });
		expect(made.quote.spoil.cost).toBe(
			made.quote.spoil.material + made.quote.spoil.labour + made.quote.spoil.overhead,
		);
	});

	it('is told where no sheet is left and none can be bought', async () => {
		const whole = { ...A, length: 1000, width: 600 };
		const only = { id: 's', material: 'ply', length: 1000, width: 600, owned: 1, buy: 0 };
		const file = await cutAll(job([whole], { sheets: [{ ...only, factoryEdges: false }] }));
		const { ways, made } = await spoiled(file, 'part.A');
		expect(ways.map((w) => w.by)).toEqual(['planned']);
		expect(made.problems.filter((p) => p.kind === 'stop').map((p) => p.what)).toEqual([
			expect.stringMatching(/^A is on no sheet\./),
		]);
	});

	it('twice is cut a third time', async () => {
		const once = await spoiled(await cutAll(job([A])), 'part.A');
		const again = await cutAll(once.after);
		const twice = await spoiled(again, 'part.A');
		expect(sound(twice.made)).toEqual({ 'part.A': 1 });
		expect(twice.made.quote.spoil.pieces).toBe(2);
		const copies = twice.made.boards[0]?.answer.layouts.flatMap((l) => l.placed.map((p) => p.copy));
		expect(copies).toEqual([0, 1, 2]);
	});

	it('is refused in words while its sheet may still be laid out anew', async () => {
		const file = job([A]);
		const made = await plan(file, QUICK);
		const at: SpoiledAt = { of: 'board', material: 'ply', index: 0, place: 0 };
		expect(spoilRefusal(made, at)).toMatch(/^Nothing of this sheet is cut yet/);
		expect(markSpoiled(file, made, at)).toBe(file);
		const cut = await cutAll(file);
		expect(spoilRefusal(await plan(cut, QUICK), at)).toBe('');
	});

	it('is no more than a remark once the part is taken from the design', async () => {
		const { after } = await spoiled(await cutAll(job([A])), 'part.A', 'planned');
		const B = { ...A, id: 'B' };
		const made = await plan({ ...after, parts: [B] }, QUICK);
		expect(sound(made)).toEqual({ 'part.B': 1 });
		expect(made.problems.filter((p) => p.kind === 'stop')).toEqual([]);
	});
});

describe('two equal parts', () => {
	it('are spoiled one after the other', async () => {
		const first = await spoiled(await cutAll(job([{ ...A, count: 2 }])), 'part.A');
		expect(sound(first.made)).toEqual({ 'part.A': 2 });
		const second = await spoiled(first.after, 'part.A');
		expect(sound(second.made)).toEqual({ 'part.A': 2 });
		expect(second.made.quote.spoil.pieces).toBe(2);
		const lies = second.made.boards.flatMap((b) => b.answer.layouts.flatMap((l) => l.placed));
		expect(new Set(lies.map((p) => p.copy)).size).toBe(lies.length);
	});
});

describe('a sheet that is in the saw', () => {
	const at = { of: 'board', material: 'ply', index: 0, place: 0 } as const;

	/** Two parts on one sheet, the first spoiled while the saw is in it, by the cheapest way. */
	async function halfway() {
		const file = job([A, { ...A, id: 'B' }]);
		const planned = await plan(file, QUICK);
		const begun = pinSheet(file, planned.job, planned.boards, at);
		const before = await plan(begun, QUICK);
		const ways = await planAgain(before, begun, at, QUICK);
		const after = withSpoiled(begun, before, at, ways[0]!);
		return { begun, before, ways, after, made: await plan(after, QUICK) };
	}

	it('stays as it lies, and what was spoiled is cut from elsewhere at what is said', async () => {
		const { before, ways, made } = await halfway();
		expect(spoilRefusal(before, at)).toBe('');
		expect(sound(made)).toEqual({ 'part.A': 1, 'part.B': 1 });
		const [boards] = made.boards;
		expect(boards?.answer.layouts[0]).toEqual(before.boards[0]?.answer.layouts[0]);
		expect(boards?.answer.layouts).toHaveLength(2);
		expect(boards?.sources[0]).toMatchObject({ pinned: true, cut: false, spoiled: [0] });
		// 1000 x 600 less two of 500 x 300 leaves room for a third, at no price.
		expect(ways[0]?.by).toBe('offcut');
		expect(made.order.total).toBe(before.order.total);
		expect(made.quote.spoil).toMatchObject({ pieces: 1, lost: 1000, material: 0 });
		expect(made.quote.net).toBe(before.quote.net);
		expect(made.problems.filter((p) => p.kind !== 'note')).toEqual([]);
	});

	it('keeps the mark when it is cut, and without it is as it was before', async () => {
		const { begun, after, made } = await halfway();
		const cut = bookCut(after, made.job, made.boards, at, made.parts);
		const then = await plan(cut, QUICK);
		expect(sound(then)).toEqual({ 'part.A': 1, 'part.B': 1 });
		expect(then.boards[0]?.sources[0]).toMatchObject({ cut: true, spoiled: [0] });
		expect(then.quote.spoil).toEqual(made.quote.spoil);
		const back = markSpoiled(after, made, at, { spoiled: false });
		const alone = { ...back, pinned: back.pinned?.slice(0, 1) };
		expect(recordOf(await plan(alone, QUICK))).toEqual(recordOf(await plan(begun, QUICK)));
	});
});

describe('a sheet still to be cut', () => {
	it('takes the part into its free room with no sheet more', async () => {
		const big = { id: 'B', material: 'ply', length: 1000, width: 600 };
		const small = { id: 'C', material: 'ply', length: 400, width: 300 };
		const two = job([big, small]);
		const made = await plan(two, QUICK);
		const index = made.boards[0]!.answer.layouts.findIndex((l) => l.placed[0]?.id === 'part.B');
		const half = bookCut(two, made.job, made.boards, { material: 'ply', index });
		const file = { ...half, parts: [big, small, { ...A, length: 300 }] };
		const one = await plan(file, QUICK);
		const cut = bookCut(file, one.job, one.boards, { material: 'ply', index: 1 });
		const late = { ...cut, parts: [...cut.parts!, { ...big, id: 'D', length: 600 }] };
		const stock = { ...late.stock, offcuts: [] };
		const { ways, made: after } = await spoiled({ ...late, stock }, 'part.C');
		const way = ways.find((w) => w.by === 'sheet');
		expect(way).toBeDefined();
		expect(way?.plan.order.total).toBe(4000);
		expect(after.order.total).toBe(4000);
		expect(after.quote.spoil.material).toBe(0);
	});
});

describe('a blank of cloth', () => {
	it('is pulled again from the roll, and once more where that was spoiled too', async () => {
		const base: JobFile = {
			stock: {
				cloths: [{ id: 'felt', name: 'Felt', kind: 'carpet', nap: 'none', loose: 3, pressed: 2 }],
				materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
				sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, price: 40 }],
				rolls: [{ id: 'r', cloth: 'felt', width: 1400, usable: 1380, price: 10, step: 100 }],
			},
			panels: [
				{
					...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'felt' },
					opening: { kind: 'rectangle', length: 400, width: 300 },
				},
			],
		};
		let file = base;
		for (const spoils of [1, 2]) {
			const open = await plan(file, QUICK);
			const rolls = open.cloths[0]!.rolls;
			const layout = rolls.find((r) => !r.pulled)!;
			file = pullBooking(file, open.job, { cloth: 'felt', layout, lot: '' })!.file;
			const before = await plan(file, QUICK);
			expect(before.order.lines.filter((l) => l.group === 'cloth')).toEqual([]);
			const at: SpoiledAt = { of: 'cloth', cloth: 'felt', index: spoils - 1, place: 0 };
			const [way] = await planAgain(before, file, at, QUICK);
			file = withSpoiled(file, before, at, way!);
			const after = await plan(file, QUICK);
			expect(after.cloths[0]?.rolls.filter((r) => !r.pulled)).toHaveLength(1);
			expect(after.order.lines.filter((l) => l.group === 'cloth')).toHaveLength(1);
			expect(after.quote.net).toBe(before.quote.net);
			expect(after.quote.spoil).toMatchObject({ pieces: spoils });
			expect(after.quote.spoil.material).toBeGreaterThan(0);
		}
	});
});
