import { describe, expect, test } from 'vitest';
import { runs } from '../depth';
import fc from 'fast-check';
import { commonArea } from '../../src/lib/geometry/shaping/clip';
import { cropped } from '../../src/lib/geometry/shaping/crop';
import { crossings } from '../../src/lib/geometry/meeting/crossing';
import { edgesOf, nearestOnEdge } from '../../src/lib/geometry/edge';
import { bounds } from '../../src/lib/geometry/extent';
import { flatten } from '../../src/lib/geometry/flatten';
import { whereIs } from '../../src/lib/geometry/meeting/inside';
import { finder, liesIn } from '../../src/lib/geometry/meeting/lies-in';
import type { Outline, Point } from '../../src/lib/geometry/outline';
import { circle, rectangle } from '../../src/lib/geometry/shaping/tidy';
import { starOf } from '../stars';

/* What is made quick for outlines of many corners says the same as the plain way. */

/** A spiky outline of many corners, some of its edges bowed. */
const spiky = fc
	.array(
		fc.record({ r: fc.integer({ min: 400, max: 900 }), bow: fc.integer({ min: -4, max: 4 }) }),
		{
			minLength: 12,
			maxLength: 60,
		},
	)
	.map((steps): Outline =>
		starOf(steps.map((s) => s.r)).map((p, i) => ({ ...p, bulge: steps[i]!.bow / 20 })),
	)
	.filter((o) => crossings(o).length === 0);

const place = fc.record({
	x: fc.integer({ min: -950, max: 950 }),
	y: fc.integer({ min: -950, max: 950 }),
});

describe('where points lie in an outline of many corners', () => {
	test('is found by height as by looking at every edge', () => {
		fc.assert(
			fc.property(spiky, fc.array(place, { maxLength: 60 }), (o, places) => {
				const find = finder(o);
				for (const p of [...places, ...o]) expect(find(p)).toBe(whereIs(p, o));
			}),
			{ numRuns: runs(150) },
		);
	});

	test('is found within half a tick of an edge too, where heights are parted finer than that', () => {
		const tiny = Array.from({ length: 80 }, (_, i) => ({
			x: Math.round(40 * Math.cos((i * Math.PI) / 40)),
			y: Math.round(25 * Math.sin((i * Math.PI) / 40)),
		}));
		const find = finder(tiny);
		for (const c of tiny)
			for (const off of [-0.9, -0.45, 0, 0.45, 0.9]) {
				const p = { x: c.x + off / 2, y: c.y + off };
				expect(find(p)).toBe(whereIs(p, tiny));
			}
	});

	test('is on the outline for its corners and within half a tick of an edge, nowhere else', () => {
		fc.assert(
			fc.property(spiky, place, (o, p) => {
				const find = finder(o);
				for (const c of o) expect(find(c)).toBe('on');
				const near = Math.min(...edgesOf(o).map((e) => nearestOnEdge(p, e).distance));
				expect(find(p) === 'on').toBe(near < 0.5);
			}),
			{ numRuns: runs(150) },
		);
	});
});

describe('one outline in another', () => {
	const board = rectangle(0, 0, 1000, 600);

	test('may share its edge, and must not run over it', () => {
		expect(liesIn(rectangle(0, 0, 1000, 600), board)).toBe(true);
		expect(liesIn(circle(300, 300, 300), board)).toBe(true);
		expect(liesIn(circle(299, 300, 300), board)).toBe(false);
		expect(liesIn(rectangle(900, 100, 101, 100), board)).toBe(false);
	});

	test('is not when a notch of the other bites into a long edge between its corners', () => {
		const notched: Outline = [
			{ x: 0, y: 0 },
			{ x: 240, y: 0 },
			{ x: 250, y: 120 },
			{ x: 260, y: 0 },
			{ x: 1000, y: 0 },
			{ x: 1000, y: 600 },
			{ x: 0, y: 600 },
		];
		// Corners and middles of the piece all lie on the board; the notch is at a quarter of its
		// lower edge.
		const piece = rectangle(10, 100, 980, 400);
		expect([...piece, { x: 500, y: 100 }].every((p) => whereIs(p, notched) === 'inside')).toBe(
			true,
		);
		expect(liesIn(piece, notched)).toBe(false);
		expect(liesIn(rectangle(10, 120, 980, 400), notched)).toBe(true);
	});

	test('agrees with what the two have in common', () => {
		fc.assert(
			fc.property(spiky, place, fc.integer({ min: 20, max: 500 }), (o, at, side) => {
				const outer = flatten(o, 2);
				const piece = rectangle(at.x, at.y, side, side);
				const over = side * side - commonArea([piece], [outer]);
				if (liesIn(piece, outer)) expect(over).toBeLessThan(1);
				else expect(over).toBeGreaterThan(0);
			}),
			{ numRuns: runs(150) },
		);
	});
});

describe('an outline as far as a box shows it', () => {
	test('covers the same in the box, with no more corners', () => {
		fc.assert(
			fc.property(spiky, place, place, fc.array(place, { maxLength: 60 }), (o, a, b, places) => {
				const flat = flatten(o, 2);
				const box = bounds([a, b]);
				const near = cropped(flat, box);
				expect(near.length).toBeLessThanOrEqual(flat.length);
				const shown = (p: Point) =>
					p.x >= box.x && p.x <= box.x + box.length && p.y >= box.y && p.y <= box.y + box.width;
				for (const p of [a, b, ...places, ...flat].filter(shown))
					expect(whereIs(p, near)).toBe(whereIs(p, flat));
			}),
			{ numRuns: runs(300) },
		);
	});

	test('is shortened by far where the box is small', () => {
		const fine = flatten(circle(0, 0, 100_000), 2);
		const near = cropped(fine, { x: 99_000, y: -100, length: 2000, width: 200 });
		expect(fine.length).toBeGreaterThan(400);
		expect(near.length).toBeLessThan(12);
	});
});
