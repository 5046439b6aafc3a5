import { runs } from '../../depth';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/lib/geometry/extent';
import type { Outline, Point } from '../../../src/lib/geometry/outline';
import { commonArea } from '../../../src/lib/geometry/shaping/clip';
import { moved, turned } from '../../../src/lib/geometry/turn';
import { type FreeKind, readyShapes } from '../../../src/lib/nest/shapes/free-shape';
import { PairTables } from '../../../src/lib/nest/shapes/tables';
import { starOf, stars } from '../../stars';

const TURNS = [0, 90, 180, 270] as const;
type Turn = (typeof TURNS)[number];

/** A star from the corner of its box, as a kind that may lie any way. */
function kindsOf(outlines: readonly Point[][]): FreeKind[] {
	const pieces = outlines.map((points, i) => {
		const box = bounds(points);
		const outline = moved(points, -box.x, -box.y);
		const [length, width] = [box.length, box.width];
		return { id: `${i}`, length, width, count: 1, turns: TURNS, outline };
	});
	return readyShapes(pieces, 0);
}

/** The outline turned, the centre of its box at x, y. */
function lying(points: readonly Point[], turn: Turn, x: number, y: number): Outline {
	const all = turned(points, turn);
	const box = bounds(all);
	return moved(all, x - box.x - box.length / 2, y - box.y - box.width / 2);
}

const star = stars([3000, 30_000], [3, 9]);
const offset = fc.record({
	x: fc.integer({ min: -60_000, max: 60_000 }),
	y: fc.integer({ min: -60_000, max: 60_000 }),
});

const pairs = fc.record({
	outlines: fc.tuple(star, star),
	turns: fc.tuple(fc.constantFrom(...TURNS), fc.constantFrom(...TURNS)),
	swapped: fc.boolean(),
	offsets: fc.array(offset, { minLength: 20, maxLength: 20 }),
});

/** The two shapes asked about, one of each kind, in either order. */
function shapesOf(kinds: readonly FreeKind[], turns: readonly [Turn, Turn], swapped: boolean) {
	const n = ([first, second]: readonly [number, number]): number =>
		kinds[first]!.shapes.find((shape) => shape.turn === second)!.n;
	const [a, b] = [n([0, turns[0]]), n([1, turns[1]])];
	return swapped ? [b, a] : [a, b];
}

const GRID = Array.from({ length: 900 }, (_, n) => ({
	x: 4000 * ((n % 30) - 15) + 17,
	y: 4000 * (Math.floor(n / 30) - 15) + 5,
}));

interface Pair {
	readonly outlines: readonly Point[][];
	readonly turns: readonly [Turn, Turn];
	readonly swapped: boolean;
}

/** Tables asked often enough to make a map beside ones that were not: zero at the same places. */
function deeperByMap({ outlines, turns, swapped }: Pair): number {
	const kinds = kindsOf(outlines);
	const [a, b] = shapesOf(kinds, turns, swapped);
	const mapped = new PairTables(kinds, 0);
	for (let round = 0; round < 3; round++) for (const { x, y } of GRID) mapped.depth(a!, b!, x, y);
	const plain = new PairTables(kinds, 0);
	const deeper = GRID.slice(250, 600).filter(({ x, y }) => {
		const [by, without] = [mapped.depth(a!, b!, x, y), plain.depth(a!, b!, x, y)];
		expect(by > 0).toBe(without > 0);
		return by > 1.1 * without;
	});
	return deeper.length;
}

describe('the tables of pairs', () => {
	it('call apart nothing that overlaps, and overlapping nothing that is apart', () => {
		const seen = { apart: 0, overlapping: 0 };
		fc.assert(
			fc.property(pairs, ({ outlines, turns, swapped, offsets }) => {
				const kinds = kindsOf(outlines);
				const tables = new PairTables(kinds, 0);
				const [a, b] = shapesOf(kinds, turns, swapped);
				const [first, second] = swapped ? [1, 0] : [0, 1];
				for (const { x, y } of offsets) {
					const depth = tables.depth(a!, b!, x, y);
					const still = lying(outlines[first]!, turns[first]!, 0, 0);
					const shared = commonArea([still], [lying(outlines[second]!, turns[second]!, x, y)]);
					// thinner overlaps are lost in the library's rounding
					if (shared > 4000) expect(depth).toBeGreaterThan(0);
					if (depth > 6) expect(shared).toBeGreaterThan(0);
					seen[shared > 0 ? 'overlapping' : 'apart']++;
				}
			}),
			{ numRuns: runs(120) },
		);
		expect(seen.apart).toBeGreaterThan(100);
		expect(seen.overlapping).toBeGreaterThan(100);
	});

	it('say the same of touching with a map as without, and know a longer way out', () => {
		fc.assert(
			fc.property(pairs, (pair) => void deeperByMap(pair)),
			{ numRuns: runs(40) },
		);
		const spiky = starOf([30_000, 5000, 30_000, 5000, 30_000, 5000, 30_000, 5000]);
		const pair = { outlines: [spiky, spiky], turns: [0, 0], swapped: false } as const;
		expect(deeperByMap(pair)).toBeGreaterThan(10);
	});

	it('know the way out of triangles, and how far a piece may slide before it meets another', () => {
		const triangle = stars([3000, 30_000], [3, 3]);
		const any = fc.oneof(
			pairs,
			fc.tuple(pairs, triangle, triangle).map(([pair, a, b]) => ({
				...pair,
				outlines: [a, b] as [Point[], Point[]],
			})),
		);
		let ways = 0;
		fc.assert(
			fc.property(any, ({ outlines, turns, swapped, offsets }) => {
				const kinds = kindsOf(outlines);
				const tables = new PairTables(kinds, 0);
				const [a, b] = shapesOf(kinds, turns, swapped);
				for (const { x, y } of offsets) {
					const depth = tables.exit(a!, b!, x, y);
					if (depth > 0) {
						if (outlines.some((points) => points.length > 3)) continue; // several sums
						const [outX, outY] = [tables.exitX, tables.exitY];
						expect(tables.depth(a!, b!, x + depth * outX, y + depth * outY)).toBeLessThan(0.01);
						expect(
							tables.depth(a!, b!, x + depth * 0.9 * outX, y + depth * 0.9 * outY),
						).toBeCloseTo(depth * 0.1, 3);
						ways++;
						continue;
					}
					const free = tables.slideLeft(a!, b!, x, y);
					if (free === Infinity) continue;
					expect(tables.depth(a!, b!, x - free * 0.999, y)).toBeLessThan(1);
					expect(tables.depth(a!, b!, x - free - 2, y)).toBeGreaterThan(0);
				}
			}),
			{ numRuns: runs(120) },
		);
		expect(ways).toBeGreaterThan(50);
	});

	it('lead two squares apart by the nearest side, gap included', () => {
		const square = [0, 1, 2, 3].map((k) => ({
			x: 1000 * (k === 1 || k === 2 ? 1 : 0),
			y: 1000 * (k > 1 ? 1 : 0),
		}));
		const tables = new PairTables(kindsOf([square, square.map((p) => ({ ...p, x: 2 * p.x }))]), 50);
		// a 1000 square, and 2000 x 1000 with its centre 1400 to the right: 100 of overlap
		expect(tables.exit(0, 1, 1400, 0)).toBe(100 + 50 + 2);
		expect([tables.exitX, tables.exitY]).toEqual([1, 0]);
		expect(tables.exit(1, 0, -1400, 0)).toBe(152);
		expect(tables.exitX).toBe(-1);
		expect(tables.depth(0, 1, 1552, 0)).toBe(0);
	});
});
