import { describe, expect, test } from 'vitest';
import { runs } from '../depth';
import fc from 'fast-check';
import { area, bounds, perimeter } from '../../src/lib/geometry/extent';
import { distanceTo } from '../../src/lib/geometry/meeting/inside';
import { alongEdge, edgesOf, nearestOnEdge } from '../../src/lib/geometry/edge';
import type { Outline } from '../../src/lib/geometry/outline';
import { setIn, setInAll } from '../../src/lib/geometry/shaping/set-in';
import { circle, rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm } from '../../src/lib/measure/length';

const slot = (length: number, radius: number): Outline => [
	{ x: 0, y: 0 },
	{ x: mm(length), y: 0, bulge: 1 },
	{ x: mm(length), y: mm(2 * radius) },
	{ x: 0, y: mm(2 * radius), bulge: 1 },
];

/** A rectangle with rounded corners: edges 0, 2, 4, 6 straight, 1, 3, 5, 7 rounded. */
function rounded(length: number, width: number, r: number): Outline {
	const b = Math.tan(Math.PI / 8);
	return [
		{ x: mm(r), y: 0 },
		{ x: mm(length - r), y: 0, bulge: b },
		{ x: mm(length), y: mm(r) },
		{ x: mm(length), y: mm(width - r), bulge: b },
		{ x: mm(length - r), y: mm(width) },
		{ x: mm(r), y: mm(width), bulge: b },
		{ x: 0, y: mm(width - r) },
		{ x: 0, y: mm(r), bulge: b },
	];
}

describe('set in', () => {
	test('a rectangle by a distance per edge', () => {
		const set = setIn(rectangle(0, 0, mm(300), mm(200)), [mm(1), mm(2), mm(3), mm(4)]);
		expect(bounds(set.outline!)).toEqual({ x: mm(4), y: mm(1), length: mm(294), width: mm(196) });
		expect(set.gone).toEqual([]);
	});

	test('outward is the way back', () => {
		const set = setInAll(setInAll(rectangle(0, 0, mm(300), mm(200)), mm(3.5)).outline!, -mm(3.5));
		expect(set.outline).toEqual(rectangle(0, 0, mm(300), mm(200)));
	});

	test('arcs stay arcs and their radius follows', () => {
		expect(setInAll(circle(0, 0, mm(50)), mm(3.5)).outline).toEqual(circle(0, 0, mm(46.5)));
		const set = setInAll(rounded(300, 200, 20), mm(3.5));
		expect(set.outline).toHaveLength(8);
		expect(area(set.outline!)).toBeCloseTo(area(rounded(293, 193, 16.5)), -5);
	});

	test('a radius smaller than the distance vanishes and leaves a sharp corner', () => {
		const set = setInAll(rounded(300, 200, 2), mm(3.5));
		expect(set.outline).toHaveLength(4);
		expect(bounds(set.outline!)).toEqual({
			x: mm(3.5),
			y: mm(3.5),
			length: mm(293),
			width: mm(193),
		});
		expect(set.gone.map((g) => g.why)).toEqual(['radius', 'radius', 'radius', 'radius']);
	});

	test('a short edge vanishes before its neighbours cross', () => {
		const chamfered: Outline = [
			{ x: mm(2), y: 0 },
			{ x: mm(100), y: 0 },
			{ x: mm(100), y: mm(100) },
			{ x: 0, y: mm(100) },
			{ x: 0, y: mm(2) },
		];
		const set = setIn(chamfered, [mm(10), mm(10), mm(10), mm(10), 0]);
		expect(set.gone).toEqual([{ edge: 4, why: 'length' }]);
		expect(set.outline).toHaveLength(4);
	});

	test('nothing is left of a slot set in by its radius', () => {
		expect(setInAll(slot(100, 10), mm(10)).outline).toBeNull();
		expect(setInAll(rectangle(0, 0, mm(10), mm(100)), mm(6)).outline).toBeNull();
		expect(setInAll(circle(0, 0, mm(5)), mm(5)).outline).toBeNull();
	});

	test('a neck that closes is reported', () => {
		const bone: Outline = [
			[0, 0],
			[40, 0],
			[40, 18],
			[60, 18],
			[60, 0],
			[100, 0],
			[100, 40],
			[60, 40],
			[60, 22],
			[40, 22],
			[40, 40],
			[0, 40],
		].map(([x, y]) => ({ x: mm(x!), y: mm(y!) }));
		expect(setInAll(bone, mm(1)).closed).toEqual([]);
		expect(setInAll(bone, mm(3)).closed.length).toBeGreaterThan(0);
	});

	test('edges in one line with different distances are joined by a jog', () => {
		const broken: Outline = [
			{ x: 0, y: 0 },
			{ x: mm(50), y: 0 },
			{ x: mm(100), y: 0 },
			{ x: mm(100), y: mm(50) },
			{ x: 0, y: mm(50) },
		];
		const set = setIn(broken, [mm(1), mm(4), 0, 0, 0]);
		expect(set.outline!.slice(0, 4)).toEqual([
			{ x: 0, y: mm(1) },
			{ x: mm(50), y: mm(1) },
			{ x: mm(50), y: mm(4) },
			{ x: mm(100), y: mm(4) },
		]);
		expect(set.from.slice(0, 4)).toEqual([0, null, 1, 2]);
	});

	test('a rounding between edges that differ touches both', () => {
		const set = setIn(rounded(300, 200, 20), [mm(1), null, mm(4), null, mm(1), null, mm(4), null]);
		expect(set.outline).toHaveLength(8);
		const joints = edgesOf(set.outline!);
		expect(joints[1]!.from.y).toBe(mm(1));
		expect(joints[1]!.to.x).toBe(mm(296));
		expect(perimeter(set.outline!)).toBeCloseTo(perimeter(rounded(292, 198, 17.5)), -1);
	});

	test.each([-20, -3, 2, 8])('every edge of an odd shape lies %s mm from its own', (d) => {
		const odd: Outline = [
			{ x: 0, y: 0 },
			{ x: mm(300), y: mm(20), bulge: 0.3 },
			{ x: mm(310), y: mm(200) },
			{ x: mm(180), y: mm(150), bulge: -0.4 },
			{ x: mm(20), y: mm(210) },
		];
		const set = setInAll(odd, mm(d));
		for (const [k, e] of edgesOf(set.outline!).entries()) {
			const from = set.from[k];
			if (from === null || from === undefined) continue;
			const own = edgesOf(odd)[from]!;
			expect(nearestOnEdge(alongEdge(e, 0.5), own).distance).toBeCloseTo(Math.abs(mm(d)), -1);
		}
	});

	test('a convex outline set in stays exactly that far from the old one', () => {
		const convex = fc.array(fc.double({ min: 0.2, max: 1, noNaN: true }), {
			minLength: 3,
			maxLength: 12,
		});
		fc.assert(
			fc.property(convex, fc.integer({ min: 1, max: 20 }), (gaps, d) => {
				const sum = gaps.reduce((a, b) => a + b, 0);
				let turn = 0;
				const shape: Outline = gaps.map((g) => {
					turn += (g / sum) * 2 * Math.PI;
					return {
						x: Math.round(mm(400) * Math.cos(turn)),
						y: Math.round(mm(300) * Math.sin(turn)),
					};
				});
				const set = setInAll(shape, mm(d));
				if (!set.outline) return;
				for (const e of edgesOf(set.outline))
					expect(Math.abs(distanceTo(alongEdge(e, 0.5), shape) - mm(d))).toBeLessThan(2);
			}),
			{ numRuns: runs(200) },
		);
	});
});
