import { describe, expect, it } from 'vitest';
import type { Rect } from '../../src/lib/geometry/outline';
import { ticks } from '../../src/lib/measure/length';
import { auditApart } from '../../src/lib/nest/audit/apart';
import { auditSheets } from '../../src/lib/nest/audit/audit';
import { areaBound, boundOf } from '../../src/lib/nest/saw/bound';
import { rounding } from '../../src/lib/nest/saw/dual-feasible';
import { isGuillotine } from './guillotine';
import { nestSaw } from '../../src/lib/nest/saw/saw';
import { sawModel } from '../../src/lib/nest/saw/model';
import type { Piece, SawProblem, SheetsAnswer } from '../../src/lib/nest/types';
import { finish, piece, sawProblem, sheet } from '../nest/saw/samples';

const solve = (problem: SawProblem): SheetsAnswer =>
	finish(nestSaw(problem, { seed: 1, effort: 3000 }));

interface Case {
	readonly name: string;
	readonly sheet: readonly [number, number];
	readonly pieces: readonly Piece[];
	readonly area: number;
	readonly bound: number;
	readonly best: number;
}

/*
 * S. P. Fekete, J. Schepers, "A general framework for bounds for higher-dimensional orthogonal
 * packing problems", Math. Methods of Oper. Res. 60 (2004), abstract seen; S. Martello, D. Vigo,
 * Management Science 44 (1998), bounds L0, L1, L2. The instances are small enough to be worked out
 * by hand, and were.
 */
const cases: readonly Case[] = [
	{
		name: 'four 6 x 7 on 10 x 10: one per sheet',
		sheet: [10, 10],
		pieces: [piece('a', 6, 7, 4)],
		area: 2,
		bound: 4,
		best: 4,
	},
	{
		name: 'five strips of 0.4',
		sheet: [10, 1],
		pieces: [piece('a', 4, 1, 5)],
		area: 2,
		bound: 3,
		best: 3,
	},
	{
		name: 'five 4 x 4 on 10 x 10',
		sheet: [10, 10],
		pieces: [piece('a', 4, 4, 5)],
		area: 1,
		bound: 2,
		best: 2,
	},
	{
		name: 'strips of 7, 7, 7, 4, 4 out of 10',
		sheet: [10, 1],
		pieces: [piece('a', 7, 1, 3), piece('b', 4, 1, 2)],
		area: 3,
		bound: 4,
		best: 4,
	},
	{
		name: 'six 25 in squares on 96 x 48 in: area says seven to a sheet, the saw gives three',
		sheet: [96, 48],
		pieces: [piece('a', 25, 25, 6)],
		area: 1,
		bound: 2,
		best: 2,
	},
	{
		name: 'four 3 x 2 on 5 x 5, turned freely: one sheet free, two by saw',
		sheet: [5, 5],
		pieces: [piece('a', 3, 2, 4, { turns: 'any' })],
		area: 1,
		bound: 1,
		best: 2,
	},
];

describe('published bounds', () => {
	it.each(cases)('$name', ({ sheet: [l, w], pieces, area, bound, best }) => {
		const problem = sawProblem([sheet('S', l, w)], pieces);
		const model = sawModel(problem);
		expect(areaBound(model).sheets).toBe(area);
		expect(boundOf(model).sheets).toBe(bound);
		const answer = solve(problem);
		expect(auditSheets(problem, answer)).toEqual([]);
		expect(answer.layouts).toHaveLength(best);
		// by the bound where it reaches, else because no layout that a saw can cut takes fewer
		expect(answer.proven).toBe(true);
		expect(answer.bound.sheets).toBe(best);
	});

	it('weighs 25 of 96 as a third', () => {
		// the third rounding function, worked through: floor(4 x 25 / 96) / 3
		expect(rounding(96, 3)(25)).toBeCloseTo(1 / 3, 12);
		expect(rounding(48, 1)(25)).toBe(1);
	});
});

describe('the guillotine problem of Christofides and Whitlock', () => {
	// N. Christofides, C. Whitlock, Oper. Res. 25 (1977) 30-44, problem 1. Data from memory; the
	// optimum 244 is listed in published benchmark tables, and was recomputed with an exhaustive
	// guillotine search.
	const kinds = [
		[8, 4, 66],
		[3, 7, 35],
		[8, 2, 24],
		[3, 4, 17],
		[3, 3, 11],
		[3, 2, 8],
		[2, 1, 2],
	] as const;
	const counts = [2, 1, 1, 2, 1, 1, 0];

	it('lays the selection worth 244 on one sheet of 15 x 10', () => {
		const worth = kinds.reduce((sum, [, , value], i) => sum + value * counts[i]!, 0);
		expect(worth).toBe(244);
		const pieces = kinds.map(([l, w], i) => piece(`k${i}`, l, w, counts[i]));
		const problem = sawProblem([sheet('S', 15, 10)], pieces);
		const answer = solve(problem);
		expect(auditSheets(problem, answer)).toEqual([]);
		expect(answer.layouts).toHaveLength(1);
		expect(answer.unplaced).toEqual([]);
		expect(isGuillotine(answer.layouts[0]!.placed, { x: 0, y: 0, length: 15, width: 10 })).toBe(
			true,
		);
	});

	it('does not fit when the sheet is given as 10 x 15', () => {
		const pieces = kinds.map(([l, w], i) => piece(`k${i}`, l, w, counts[i]));
		expect(solve(sawProblem([sheet('S', 10, 15)], pieces)).layouts.length).toBeGreaterThan(1);
	});
});

/** Squares by Bouwkamp code: each bracket fills the lowest, leftmost ledge from the left. */
function decode(width: number, code: readonly (readonly number[])[]): Rect[] {
	const tops = new Array<number>(width).fill(0);
	const squares: Rect[] = [];
	for (const row of code) {
		const level = Math.min(...tops);
		let x = tops.indexOf(level);
		for (const side of row) {
			squares.push({ x, y: level, length: side, width: side });
			for (let i = 0; i < side; i++) tops[x + i] = level + side;
			x += side;
		}
	}
	return squares;
}

const squared = [
	{
		// Z. Moron, "O rozkladach prostokatow na kwadraty", 1925; from memory
		name: 'order 9, 33 x 32',
		size: [33, 32],
		code: [[18, 15], [7, 8], [14, 4], [10, 1], [9]],
	},
	{
		// A. J. W. Duijvestijn, "Simple perfect squared square of lowest order", J. Comb. Theory B
		// 25 (1978) 240-243
		name: 'order 21, 112 x 112',
		size: [112, 112],
		code: [
			[50, 35, 27],
			[8, 19],
			[15, 17, 11],
			[6, 24],
			[29, 25, 9, 2],
			[7, 18],
			[16],
			[42],
			[4, 37],
			[33],
		],
	},
] as const;

describe('squared rectangles', () => {
	it.each(squared)('$name packs and cannot be cut by saw', ({ size: [l, w], code }) => {
		const squares = decode(l, code);
		const area = squares.reduce((sum, s) => sum + s.length * s.width, 0);
		expect(area).toBe(l * w);
		const placed = squares.map((s, i) => ({
			...s,
			id: `q${i}`,
			copy: 0,
			turn: 0 as const,
			length: ticks(s.length),
			width: ticks(s.width),
		}));
		expect(auditApart(placed, new Map(), 0, 'sheet')).toEqual([]);
		expect(isGuillotine(squares, { x: 0, y: 0, length: l, width: w })).toBe(false);
		// pushed one unit to the right, the first square lies on its neighbour
		const pushed = placed.map((p, i) => (i === 0 ? { ...p, x: p.x + 1 } : p));
		expect(auditApart(pushed, new Map(), 0, 'sheet')).not.toEqual([]);
	});

	it('knows the pinwheel, which no saw can cut, from the same pieces in rows', () => {
		const stock = { x: 0, y: 0, length: 3, width: 3 };
		const pinwheel = [
			{ x: 0, y: 0, length: 2, width: 1 },
			{ x: 2, y: 0, length: 1, width: 2 },
			{ x: 1, y: 2, length: 2, width: 1 },
			{ x: 0, y: 1, length: 1, width: 2 },
			{ x: 1, y: 1, length: 1, width: 1 },
		];
		expect(isGuillotine(pinwheel, stock)).toBe(false);
		const rows = [
			{ x: 0, y: 0, length: 2, width: 1 },
			{ x: 0, y: 1, length: 2, width: 1 },
			{ x: 0, y: 2, length: 2, width: 1 },
			{ x: 2, y: 0, length: 1, width: 2 },
			{ x: 2, y: 2, length: 1, width: 1 },
		];
		expect(isGuillotine(rows, stock)).toBe(true);
	});
});
