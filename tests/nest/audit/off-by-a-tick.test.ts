import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { nestRouter } from '../../../src/lib/nest/router/router';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import type { Cut, SawProblem, SheetLayout, SheetsAnswer } from '../../../src/lib/nest/types';
import { runs } from '../../depth';
import { finish, piece, problems, sawProblem, sheet } from '../saw/samples';

/*
 * A layout that may be cut is right to the tick: whatever figure of it is one tick more or less,
 * and whatever is called by another name, the auditor must say so.
 */

type Step = readonly (string | number)[];

/** Places of all figures of a layout that the saw or the marking out goes by. */
function figures(layout: SheetLayout): Step[] {
	const sides = ['x', 'y', 'length', 'width'] as const;
	const placed = layout.placed.flatMap((_, i) => sides.map((side) => ['placed', i, side]));
	const offcuts = layout.offcuts.flatMap((_, i) => sides.map((side) => ['offcuts', i, side]));
	const cuts = layout.cuts.flatMap((cut, i) => [
		['cuts', i, 'n'],
		...sides.map((side) => ['cuts', i, 'region', side]),
		...(cut.kind === 'slant' ? [] : ['fence', 'at'].map((figure) => ['cuts', i, figure])),
		...cut.gives.flatMap((give, k) =>
			give.kind === 'nothing' || (cut.kind === 'slant' && give.kind === 'waste')
				? []
				: sides.map((side) => ['cuts', i, 'gives', k, 'rect', side]),
		),
		...cut.gives.flatMap((give, k) =>
			give.kind === 'strip' ? [['cuts', i, 'gives', k, 'nextCut']] : [],
		),
	]);
	return [['length'], ['width'], ...placed, ...offcuts, ...cuts];
}

/** The same with one figure changed. */
function changed<T>(tree: T, [step, ...rest]: Step, by: number): T {
	if (step === undefined) return ((tree as number) + by) as T;
	if (Array.isArray(tree))
		return tree.map((one, i) => (i === step ? changed<unknown>(one, rest, by) : one)) as T;
	const record = tree as Record<string, unknown>;
	return { ...record, [step]: changed(record[step], rest, by) } as T;
}

const NAMES = ['piece', 'strip', 'offcut', 'waste', 'nothing'] as const;

/** The layout with one side of one cut called by each other name. */
const renamed = (layout: SheetLayout): SheetLayout[] =>
	layout.cuts.flatMap((cut, i) =>
		cut.gives.flatMap((give, k) =>
			NAMES.filter((name) => name !== give.kind).map((kind) => {
				const gives = cut.gives.map((one, j) => (j === k ? { ...one, kind } : one));
				const cuts = layout.cuts.map((one, j) => (j === i ? { ...one, gives } : one));
				return { ...layout, cuts } as unknown as SheetLayout;
			}),
		),
	);

function withLayout(answer: SheetsAnswer, at: number, layout: SheetLayout): SheetsAnswer {
	return { ...answer, layouts: answer.layouts.map((one, i) => (i === at ? layout : one)) };
}

const said = (problem: SawProblem, answer: SheetsAnswer) =>
	auditSheets(problem, answer).map(({ what }) => what);

law.prop([problems(true), fc.integer({ min: 1, max: 9 })], { numRuns: runs(60) })(
	'one tick more or less, anywhere in a saw layout, is found',
	(problem, seed) => {
		const answer = finish(nestSaw(problem, { seed, effort: 60 }));
		expect(said(problem, answer)).toEqual([]);
		const unseen = answer.layouts.slice(0, 1).flatMap((layout, at) => {
			const passes = (wrong: SheetLayout): boolean =>
				said(problem, withLayout(answer, at, wrong)).length === 0;
			return [
				...figures(layout).filter((place) =>
					[-1, 1].some((by) => passes(changed(layout, place, by))),
				),
				...renamed(layout).filter(passes),
			];
		});
		expect(unseen).toEqual([]);
	},
);

law.prop([problems(true)], { numRuns: runs(100) })(
	'what an answer claims is held to',
	(problem) => {
		const answer = finish(nestSaw(problem, { seed: 1, effort: 60 }));
		const { bound, cost, layouts, unplaced } = answer;
		expect(said(problem, { ...answer, cost: cost + 1 })).not.toEqual([]);
		const claims = (more: Partial<SheetsAnswer>) => said(problem, { ...answer, ...more });
		if (unplaced.length === 0) {
			const above = /bound lies above/;
			expect(claims({ bound: { ...bound, cost: cost + 1 } }).join()).toMatch(above);
			expect(claims({ bound: { ...bound, sheets: layouts.length + 1 } }).join()).toMatch(above);
			expect(claims({ bound: { cost, sheets: layouts.length }, proven: true })).toEqual([]);
		}
		const proven = claims({ bound: { sheets: 0, cost: cost - 1 }, proven: true });
		expect(proven).toContain('The bound does not meet the answer.');
	},
);

/** 100 x 60, kerf 2: a rip at 40 leaves 40 and 18; the lower strip is crosscut, then ripped. */
const three = sawProblem(
	[sheet('S', 100, 60)],
	[piece('a', 100, 18), piece('b', 58, 40), piece('c', 40, 19, 2)],
	{ kerf: ticks(2) },
);
const answer = finish(nestSaw(three, { seed: 1, effort: 500 }));
const told = (more: Partial<SawProblem>) => said({ ...three, ...more }, answer);

describe('limits of the saw', () => {
	test('the layout needs three stages: it is refused with two', () => {
		expect(answer.layouts).toHaveLength(1);
		expect(answer.unplaced).toEqual([]);
		expect(told({ stages: 3 })).toEqual([]);
		expect(told({ stages: 2 }).join()).toMatch(/Stage 3; the limit is 2/);
		expect(told({ stages: 1 }).join()).toMatch(/Stage 2; the limit is 1/);
	});

	const fences = answer.layouts.flatMap(({ cuts }) => cuts.map((cut: Cut) => Number(cut.fence)));
	test('the farthest and the nearest setting may be reached, and no more', () => {
		const [far, near] = [Math.max(...fences), Math.min(...fences)];
		expect(told({ fenceLimit: ticks(far), narrowestRip: ticks(near) })).toEqual([]);
		expect(told({ fenceLimit: ticks(far - 1) }).join()).toMatch(/cannot be set that far/);
		expect(told({ narrowestRip: ticks(near + 1) }).join()).toMatch(/too narrow to be held/);
	});
});

describe('stock and counts', () => {
	const problem = sawProblem([sheet('S', 50, 50, { price: 4, count: 2 })], [piece('a', 50, 50, 2)]);
	const good = finish(nestSaw(problem, { seed: 1, effort: 50 }));
	const layout = (at: number, more: Partial<SheetLayout>) =>
		said(problem, withLayout(good, at, { ...good.layouts[at]!, ...more })).join();

	test('two sheets that hold a piece each, uncut', () => {
		expect(said(problem, good)).toEqual([]);
		expect(good.layouts.map(({ cuts }) => cuts)).toEqual([[], []]);
		expect(good.cost).toBe(8);
	});

	test('no more than there are, none twice, none unknown', () => {
		const one = { ...problem, sheets: [{ ...problem.sheets[0]!, count: 1 }] };
		expect(said(one, good)).toEqual(['More than the 1 in the stock are used.']);
		expect(layout(1, { copy: good.layouts[0]!.copy })).toMatch(/is used twice/);
		expect(layout(1, { sheet: 'T' })).toMatch(/no such sheet/);
	});

	test('a copy laid twice, one past the count, one below nothing', () => {
		const copy = (n: number) =>
			layout(0, { placed: good.layouts[0]!.placed.map((p) => ({ ...p, copy: n })) });
		const other = good.layouts[1]!.placed[0]!.copy;
		expect(copy(other)).toMatch(/laid twice/);
		expect(copy(2)).toMatch(/no copy 2/);
		expect(copy(-1)).toMatch(/no copy -1/);
	});

	test('what is left out is told with its reason, as often as it is', () => {
		const first = { ...good, layouts: good.layouts.slice(0, 1), cost: 4, proven: false };
		const bound = { sheets: 0, cost: 0 };
		const left = (count: number, why: string) =>
			said(problem, { ...first, bound, unplaced: [{ id: 'a', count, why }] });
		expect(left(1, 'No room.')).toEqual([]);
		expect(left(1, '')).toEqual(['It is left out without a reason.']);
		expect(left(2, 'No room.')).toEqual(['2 asked for, 1 laid, 2 left out.']);
		const twice = [1, 1].map((count) => ({ id: 'a', count, why: 'No room.' }));
		const none = { ...first, layouts: [], cost: 0, bound, unplaced: twice };
		expect(said(problem, none)).toEqual([]);
	});

	test('each fault of a sheet names the sheet', () => {
		const close = good.layouts[0]!.placed.map((p) => ({ ...p, x: ticks(1) }));
		const both = [...close, { ...close[0]!, copy: 1 }];
		const wrong = withLayout(good, 0, { ...good.layouts[0]!, placed: both });
		const apart = auditSheets(problem, wrong).filter(({ what }) => /one kerf apart/.test(what));
		expect(apart.map(({ where }) => where)).toEqual(['sheet S, copy 0']);
	});
});

test('the router keeps its bit between pieces, to the tick', () => {
	const pieces = [piece('a', 20, 20, 2, { turns: 'none' })];
	const keep = { length: ticks(1), width: ticks(1) };
	const problem = { bit: ticks(4), sheets: [sheet('S', 44, 20)], pieces, useHoles: true, keep };
	const good = finish(nestRouter(problem, { seed: 1, effort: 50 }));
	expect(auditSheets(problem, good)).toEqual([]);
	expect(good.layouts).toHaveLength(1);
	const wide = auditSheets({ ...problem, bit: ticks(5) }, good);
	expect(wide.map(({ what }) => what).join()).toMatch(/one kerf apart/);
	expect(wide.map(({ where }) => where)).toEqual(['sheet S, copy 0']);
});

describe('the trim of a factory edge', () => {
	const trim = { left: ticks(3), right: ticks(4), bottom: ticks(5), top: ticks(6) };
	const keep = { length: ticks(1), width: ticks(1) };
	const told = (x: number, y: number) => {
		const pieces = [piece('a', 20, 30)];
		const problem = {
			...{ bit: ticks(0), sheets: [sheet('S', 100, 80, { trim })], pieces, useHoles: true, keep },
		};
		const placed = [{ id: 'a', copy: 0, x, y, length: 20, width: 30, turn: 0 as const }];
		const layout = { sheet: 'S', copy: 0, length: ticks(100), width: ticks(80), placed };
		const layouts = [{ ...layout, cuts: [], offcuts: [] }];
		const bound = { sheets: 0, cost: 0 };
		const answer = { layouts, unplaced: [], cost: 1, bound, proven: false, effort: 0 };
		return auditSheets(problem, answer).map(({ what }) => what);
	};

	test.each([
		['left', 3, 20, -1, 0],
		['right', 100 - 4 - 20, 20, 1, 0],
		['bottom', 40, 5, 0, -1],
		['top', 40, 80 - 6 - 30, 0, 1],
	])('%s: a piece may reach it and go no tick into it', (_, x, y, dx, dy) => {
		expect(told(x, y)).toEqual([]);
		expect(told(x + dx, y + dy)).toEqual(['a (copy 0): it leaves the sheet or its trim.']);
	});
});
