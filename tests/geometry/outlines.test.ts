import { describe, expect, test } from 'vitest';
import { runs } from '../depth';
import fc from 'fast-check';
import { bulgeThrough } from '../../src/lib/geometry/arc';
import {
	commonArea,
	grown,
	linesInside,
	linesOutside,
	regionArea,
	union,
	without,
} from '../../src/lib/geometry/shaping/clip';
import { crossings } from '../../src/lib/geometry/meeting/crossing';
import { arcsAlong, cubic } from '../../src/lib/geometry/shaping/curve';
import { alongEdge, edgesOf, nearestOnEdge } from '../../src/lib/geometry/edge';
import { area, bounds, perimeter } from '../../src/lib/geometry/extent';
import { flatten } from '../../src/lib/geometry/flatten';
import { distanceTo, whereIs } from '../../src/lib/geometry/meeting/inside';
import { orient } from '../../src/lib/geometry/orient';
import type { Outline } from '../../src/lib/geometry/outline';
import { circle, rectangle, tidy } from '../../src/lib/geometry/shaping/tidy';
import {
	mirrored,
	mirrorOrder,
	moved,
	reversed,
	scaled,
	turned,
	wound,
} from '../../src/lib/geometry/turn';

/** A star-shaped outline with bulged edges: it never crosses itself while the bulges are small. */
const blob = fc
	.array(
		fc.record({
			r: fc.integer({ min: 60_000, max: 90_000 }),
			bulge: fc.integer({ min: -15, max: 25 }),
		}),
		{ minLength: 3, maxLength: 14 },
	)
	.map((steps): Outline =>
		steps.map((s, i) => {
			const turn = (i / steps.length) * 2 * Math.PI;
			return {
				x: Math.round(s.r * Math.cos(turn)) + 0,
				y: Math.round(s.r * Math.sin(turn)) + 0,
				bulge: s.bulge / 100,
			};
		}),
	)
	.filter((o) => crossings(o).length === 0);

const outlineOf = (...p: [number, number][]): Outline => p.map(([x, y]) => ({ x, y }));

describe('sizes', () => {
	test('of a rectangle, exact, and of a circle', () => {
		const r = rectangle(-7, 3, 160_000_001, 99_999_999);
		expect(bounds(r)).toEqual({ x: -7, y: 3, length: 160_000_001, width: 99_999_999 });
		expect(perimeter(r)).toBe(2 * (160_000_001 + 99_999_999));
		expect(area(rectangle(5, 5, 3001, 77))).toBe(3001 * 77);
		expect(area(circle(100, 50, 1000))).toBeCloseTo(Math.PI * 1e6, 3);
		expect(bounds(circle(100, 50, 1000))).toEqual({ x: -900, y: -950, length: 2000, width: 2000 });
	});

	test('turning, moving, mirroring and reversing keep area and perimeter', () => {
		fc.assert(
			fc.property(
				blob,
				fc.constantFrom(90, 180, 270),
				fc.integer({ min: -1e6, max: 1e6 }),
				(o, degrees, by) => {
					for (const p of [turned(o, degrees), moved(o, by, -by), mirrored(o, by)]) {
						expect(area(p) / area(o)).toBeCloseTo(1, 9);
						expect(perimeter(p) / perimeter(o)).toBeCloseTo(1, 9);
					}
					expect(area(reversed(o)) / area(o)).toBeCloseTo(-1, 9);
					expect(wound(reversed(o))).toHaveLength(o.length);
					expect(turned(turned(o, degrees), -degrees)).toEqual(
						o.map((c) => (c.bulge ? c : { x: c.x, y: c.y })),
					);
				},
			),
			{ numRuns: runs(60) },
		);
	});

	test('mirroring twice gives the outline back, and edges keep their numbers in reverse', () => {
		fc.assert(
			fc.property(blob, (o) => {
				const twice = mirrored(mirrored(o, 1234), 1234);
				expect(twice.map((c) => [c.x, c.y])).toEqual(o.map((c) => [c.x, c.y]));
				const lengths = (x: Outline): number[] =>
					edgesOf(x).map((e) => Math.round(Math.hypot(e.to.x - e.from.x, e.to.y - e.from.y)));
				expect(lengths(mirrored(o))).toEqual(mirrorOrder(lengths(o)));
			}),
			{ numRuns: runs(60) },
		);
	});

	test('scaling an area by a factor squares it', () => {
		expect(area(scaled(circle(0, 0, 1000), 25.4)) / area(circle(0, 0, 1000))).toBeCloseTo(
			25.4 ** 2,
			6,
		);
	});
});

describe('flattening', () => {
	test('outward contains the outline, inward is contained, and none departs by more than the tolerance', () => {
		fc.assert(
			fc.property(blob, fc.constantFrom(8, 80, 800), (o, tolerance) => {
				const [out, inn, near] = (['outward', 'inward', 'nearest'] as const).map((s) =>
					flatten(o, tolerance, s),
				);
				for (const e of edgesOf(o))
					for (const t of [0.1, 0.37, 0.5, 0.8]) {
						const p = alongEdge(e, t);
						expect(whereIs(p, out!) === 'outside' && distanceTo(p, out!) > 0.5).toBe(false);
						expect(whereIs(p, inn!) === 'inside' && distanceTo(p, inn!) > 0.5).toBe(false);
					}
				for (const flat of [out!, inn!, near!])
					for (const e of edgesOf(flat))
						for (const t of [0, 0.5])
							expect(distanceTo(alongEdge(e, t), o)).toBeLessThan(tolerance + 1.5);
			}),
			{ numRuns: runs(60) },
		);
	});

	test('a Bézier curve as arcs stays within the tolerance', () => {
		const c = cubic(
			{ x: 0, y: 0 },
			{ x: 90_000, y: 200_000 },
			{ x: 160_000, y: -150_000 },
			{ x: 300_000, y: 20_000 },
		);
		const arcs = [...arcsAlong(c, 32), { x: 300_000, y: 20_000 }];
		expect(arcs.length).toBeLessThan(40);
		const edges = arcs
			.slice(0, -1)
			.map((a, i) => ({ from: a, to: arcs[i + 1]!, bulge: ('bulge' in a && a.bulge) || 0 }));
		for (let t = 0; t <= 1; t += 0.003) {
			const off = Math.min(...edges.map((e) => nearestOnEdge(c(t), e).distance));
			expect(off).toBeLessThan(40);
		}
	});

	test('an arc through three points passes through the third', () => {
		const p = fc.record({
			x: fc.integer({ min: -1e5, max: 1e5 }),
			y: fc.integer({ min: -1e5, max: 1e5 }),
		});
		fc.assert(
			fc.property(p, p, p, (a, via, b) => {
				fc.pre(orient(a, b, via) !== 0);
				const bulge = bulgeThrough(a, via, b);
				// Nearly straight arcs have no radius to speak of.
				fc.pre(Math.abs(bulge) > 1e-3 && Math.abs(bulge) < 1e3);
				expect(nearestOnEdge(via, { from: a, to: b, bulge }).distance).toBeLessThan(1);
			}),
			{ numRuns: runs(200) },
		);
	});
});

describe('exact tests', () => {
	test('orientation decides by the last tick, where floating products fail', () => {
		const a = { x: 0, y: 0 };
		const b = { x: 160_000_000, y: 159_999_999 };
		expect(orient(a, b, { x: 159_999_999, y: 159_999_998 })).toBe(-1);
		expect(orient(a, b, { x: 320_000_000, y: 319_999_998 })).toBe(0);
		expect(orient(a, b, { x: 159_999_999, y: 159_999_999 })).toBe(1);
	});

	test('outlines that cross, touch or run back over themselves', () => {
		expect(crossings(outlineOf([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual([
			{ edges: [0, 2], at: { x: 5, y: 5 } },
		]);
		const [touch] = crossings(outlineOf([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]));
		expect([touch!.edges[0], touch!.at]).toEqual([0, { x: 5, y: 0 }]);
		expect(crossings(outlineOf([0, 0], [10, 0], [5, 0], [5, 5])).length).toBeGreaterThan(0);
		expect(crossings(outlineOf([0, 0], [10, 0], [10, 10], [0, 10]))).toEqual([]);
	});

	test('an arc that reaches over an edge is a crossing, one that ends at it is not', () => {
		const bowed: Outline = [
			{ x: 0, y: 0 },
			{ x: 10_000, y: 0, bulge: -1 },
			{ x: 10_000, y: 8000 },
			{ x: 0, y: 8000 },
		];
		expect(crossings(bowed)).toEqual([]);
		const through: Outline = [
			{ x: 0, y: 0 },
			{ x: 3000, y: 0, bulge: -1 },
			{ x: 3000, y: 8000 },
			{ x: 0, y: 8000 },
		];
		expect(crossings(through)[0]!.edges).toEqual([1, 3]);
	});

	test('points inside, on and outside, arcs counted as arcs', () => {
		const c = circle(0, 0, 1000);
		expect([
			whereIs({ x: 0, y: 0 }, c),
			whereIs({ x: 999, y: 0 }, c),
			whereIs({ x: 1000, y: 0 }, c),
			whereIs({ x: 800, y: 800 }, c),
		]).toEqual(['inside', 'inside', 'on', 'outside']);
		fc.assert(
			fc.property(
				blob,
				fc.integer({ min: -95_000, max: 95_000 }),
				fc.integer({ min: -95_000, max: 95_000 }),
				(o, x, y) => {
					const p = { x, y };
					fc.pre(distanceTo(p, o) > 20);
					expect(whereIs(p, o)).toBe(whereIs(p, flatten(o, 8)));
				},
			),
			{ numRuns: runs(200) },
		);
	});
});

describe('clipping', () => {
	test('unions, differences and holes', () => {
		const [a, b] = [rectangle(0, 0, 1000, 1000), rectangle(500, 500, 1000, 1000)];
		expect(union([a, b]).map(regionArea)).toEqual([1_750_000]);
		expect(commonArea([a], [b])).toBe(250_000);
		const framed = without([a], [rectangle(200, 200, 100, 100)]);
		expect(framed).toHaveLength(1);
		expect(framed[0]!.holes).toHaveLength(1);
		expect(area(framed[0]!.holes[0]!)).toBe(10_000);
		expect(regionArea(grown([a], 100, 'sharp')[0]!)).toBe(1200 * 1200);
	});

	test('lines cut by outlines', () => {
		const line = [
			{ x: -500, y: 500 },
			{ x: 1500, y: 500 },
		];
		const square = [rectangle(0, 0, 1000, 1000)];
		const length = (lines: readonly (readonly { x: number; y: number }[])[]): number =>
			lines.reduce((s, l) => s + Math.abs(l.at(-1)!.x - l[0]!.x), 0);
		expect(length(linesInside([line], square))).toBe(1000);
		expect(length(linesOutside([line], square))).toBe(1000);
	});
});

test('tidying takes out doubled corners, spikes and corners on a straight run, and says so', () => {
	const t = tidy(
		outlineOf(
			[0, 0],
			[5000, 0],
			[9000, 0],
			[9000, 4],
			[9000, 9000],
			[4501, 9000],
			[4500, 20_000],
			[4499, 9000],
			[0, 9000],
		).toReversed(),
	);
	expect(t).toMatchObject({ doubled: 1, slivers: 1, straight: 3, turnedRound: true });
	expect(t.outline).toHaveLength(4);
	expect(area(t.outline)).toBe(9000 * 9000);
});
