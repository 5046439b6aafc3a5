import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { auditOutlines } from '../../../src/lib/nest/audit/outline';
import type { Placed } from '../../../src/lib/nest/types';
import { runs } from '../../depth';

/*
 * The auditor of outlines against counting squares: pieces made of columns of cells, two of which
 * share board where they share a cell, and lie as far apart as their nearest cells.
 */

const CELL = 100;

interface Columns {
	/** How high each column of cells is. */
	readonly heights: readonly number[];
	readonly turn: Placed['turn'];
	readonly x: number;
	readonly y: number;
}

function outlineOf(heights: readonly number[]) {
	const top = heights.flatMap((h, i) => [
		{ x: i * CELL, y: h * CELL },
		{ x: (i + 1) * CELL, y: h * CELL },
	]);
	const corners = [{ x: 0, y: 0 }, { x: heights.length * CELL, y: 0 }, ...top.reverse()];
	// Columns as high as the one before leave a corner on a straight edge, twice.
	return corners.filter((p, i) => {
		const q = corners[(i + 1) % corners.length]!;
		return p.x !== q.x || p.y !== q.y;
	});
}

const sizeOf = (heights: readonly number[]) => [heights.length, Math.max(...heights)] as const;

/** The cells of a piece where it lies, by their lower left corners. */
function cellsOf({ heights, turn, x, y }: Columns): [number, number][] {
	const [long, high] = sizeOf(heights);
	const all = heights.flatMap((h, i) => Array.from({ length: h }, (_, j) => [i, j] as const));
	return all.map(([i, j]) => {
		if (turn === 90) return [x + (high - 1 - j) * CELL, y + i * CELL];
		if (turn === 180) return [x + (long - 1 - i) * CELL, y + (high - 1 - j) * CELL];
		if (turn === 270) return [x + j * CELL, y + (long - 1 - i) * CELL];
		return [x + i * CELL, y + j * CELL];
	});
}

/** How far the nearest cells are apart; below nothing where two lie over each other. */
function apart(a: Columns, b: Columns): number {
	const between = cellsOf(a).flatMap(([x, y]) =>
		cellsOf(b).map(([u, v]) => {
			const [dx, dy] = [Math.abs(u - x) - CELL, Math.abs(v - y) - CELL];
			return dx < 0 && dy < 0 ? -1 : Math.hypot(Math.max(0, dx), Math.max(0, dy));
		}),
	);
	return Math.min(...between);
}

function fault(all: readonly Columns[], gap: number): string[] {
	const pieces = all.map(({ heights }, i) => {
		const [long, high] = sizeOf(heights);
		return { id: `p${i}`, length: long * CELL, width: high * CELL, outline: outlineOf(heights) };
	});
	const placed = all.map(({ turn, x, y }, i): Placed => {
		const { id, length, width } = pieces[i]!;
		const [along, across] = turn % 180 === 0 ? [length, width] : [width, length];
		return { id, copy: 0, x, y, length: along, width: across, turn };
	});
	return auditOutlines(placed, pieces, gap).map(({ what }) => what);
}

const place = fc.integer({ min: 0, max: 24 }).map((n) => n * 25);
const columns: fc.Arbitrary<Columns> = fc.record({
	heights: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 5 }),
	turn: fc.constantFrom<Placed['turn']>(0, 90, 180, 270),
	x: place,
	y: place,
});

law.prop([columns, columns, fc.constantFrom(0, 25, 50, 70, 110)], { numRuns: runs(1200) })(
	'two pieces of cells lie over each other, too near or far enough as their cells do',
	(a, b, gap) => {
		const far = apart(a, b);
		// Within a tick of the gap the auditor lets rounding pass.
		fc.pre(Math.abs(far - gap) === 0 || Math.abs(far - gap) > 1);
		const wanted = far < 0 ? /overlap/ : far < gap ? /apart, less than the gap/ : null;
		const told = fault([a, b], gap);
		expect(told).toHaveLength(wanted ? 1 : 0);
		if (wanted) expect(told[0]).toMatch(wanted);
		if (far > 0 && far < gap) expect(told[0]).toContain(`${Math.floor(far)} ticks apart`);
	},
);

law.prop([fc.array(columns, { minLength: 3, maxLength: 5 })], { numRuns: runs(300) })(
	'of several, each two that lie over each other are named, in whatever order they come',
	(all) => {
		const pairs = all.flatMap((a, i) => all.slice(i + 1).filter((b) => apart(a, b) < 0)).length;
		expect(fault(all, 0)).toHaveLength(pairs);
		expect(fault([...all].reverse(), 0)).toHaveLength(pairs);
	},
);

describe('a corner on a slanted side', () => {
	const diamond = {
		...{ id: 'd', length: 400, width: 400 },
		outline: [
			{ x: 200, y: 0 },
			{ x: 400, y: 200 },
			{ x: 200, y: 400 },
			{ x: 0, y: 200 },
		],
	};
	const box = { id: 'b', length: 150, width: 150 };
	const told = (x: number, y: number, gap = 0) =>
		auditOutlines(
			[
				{ id: 'd', copy: 0, x: 0, y: 0, length: 400, width: 400, turn: 0 },
				{ id: 'b', copy: 0, x, y, length: 150, width: 150, turn: 0 },
			],
			[diamond, box],
			gap,
		);

	// Middles of the four sides: 300,300 100,300 100,100 300,100.
	test.each([
		[300, 300, 1, 1],
		[-50, 300, -1, 1],
		[-50, -50, -1, -1],
		[300, -50, 1, -1],
	])('at %i, %i it touches; two ticks further in it does not', (x, y, dx, dy) => {
		expect(told(x, y)).toEqual([]);
		expect(told(x - 2 * dx, y - 2 * dy)).toHaveLength(1);
		// 30 along and 30 up are 42.4 away.
		expect(told(x + 30 * dx, y + 30 * dy, 42)).toEqual([]);
		expect(told(x + 30 * dx, y + 30 * dy, 44)).toHaveLength(1);
	});
});

test('a tick less than the gap is taken for rounding, two are not', () => {
	const boxes = [0, 1].map((i) => ({ id: `b${i}`, length: 100, width: 100 }));
	const told = (apart: number) =>
		auditOutlines(
			[0, 100 + apart].map((x, i) => ({
				...{ id: `b${i}`, copy: 0, x, y: 0, length: 100, width: 100, turn: 0 as const },
			})),
			boxes,
			42,
		);
	expect([42, 41, 40, 0].map((apart) => told(apart).length)).toEqual([0, 0, 1, 1]);
});
