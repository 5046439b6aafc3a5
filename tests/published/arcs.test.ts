import { beforeAll, describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { runs } from '../depth';
import Module, { type ManifoldToplevel } from 'manifold-3d';
import { arcOf, radiusFromRise, riseOf, sweepForRise } from '../../src/lib/geometry/arc';
import { crossings } from '../../src/lib/geometry/meeting/crossing';
import { area, perimeter } from '../../src/lib/geometry/extent';
import { flatten } from '../../src/lib/geometry/flatten';
import type { Outline } from '../../src/lib/geometry/outline';
import { setInAll } from '../../src/lib/geometry/shaping/set-in';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { inches, mm } from '../../src/lib/measure/length';

describe('segments of a circle', () => {
	// Machinery's Handbook, 31st edition, p. 83, segments of a circle: chord 21, height 6.
	const [chord, rise] = [21, 6];

	test('radius from chord and height: 12.1875', () => {
		expect(radiusFromRise(chord, rise)).toBe(12.1875);
	});

	test('angle 118.97953 degrees, arc 25.308373, area of the segment 89.254148', () => {
		const bulge = (2 * rise) / chord;
		const arc = arcOf({ x: 0, y: 0 }, { x: chord, y: 0 }, bulge);
		expect((arc.sweep * 180) / Math.PI).toBeCloseTo(118.97953, 5);
		expect(arc.radius).toBeCloseTo(12.1875, 9);
		const segment: Outline = [
			{ x: 0, y: 0, bulge },
			{ x: chord, y: 0 },
		];
		expect(perimeter(segment) - chord).toBeCloseTo(25.308373, 5);
		expect(area(segment)).toBeCloseTo(89.254148, 5);
	});

	test('the sagitta rule there and back', () => {
		const sweep = sweepForRise(100, 0.5);
		expect(riseOf(100, sweep)).toBeCloseTo(0.5, 9);
		// Half the chord, the radius less the rise and the radius make a right triangle.
		expect(2 * 100 * Math.sin(sweep / 2)).toBeCloseTo(2 * Math.sqrt(100 ** 2 - 99.5 ** 2), 9);
	});

	test('a circle of 10.875 in: area 92.886 in2, round 34.165 in (pi r2, pi d)', () => {
		const r = inches(10.875) / 2;
		const o: Outline = [
			{ x: -r, y: 0, bulge: 1 },
			{ x: r, y: 0, bulge: 1 },
		];
		expect(area(o) / 40_640 ** 2).toBeCloseTo(92.886, 3);
		expect(perimeter(o) / 40_640).toBeCloseTo(34.165, 3);
	});
});

test('a skin of 3 mm round an outside corner is 4.712 mm longer than round its edge (quarter turn times thickness)', () => {
	const round: Outline = [
		{ x: mm(20), y: 0 },
		{ x: mm(200), y: 0 },
		{ x: mm(200), y: mm(200) },
		{ x: 0, y: mm(200) },
		{ x: 0, y: mm(20), bulge: Math.tan(Math.PI / 8) },
	];
	const wide = setInAll(round, -mm(3)).outline!;
	const arcLength = (o: Outline): number => {
		const i = o.findIndex((c) => c.bulge);
		const arc = arcOf(o[i]!, o[(i + 1) % o.length]!, o[i]!.bulge!);
		return (arc.radius * Math.abs(arc.sweep)) / 1600;
	};
	expect(arcLength(wide) - arcLength(round)).toBeCloseTo(4.712, 3);
});

describe('areas against an independent polygon library (the cross-sections of a solid-modelling kernel)', () => {
	let kernel: ManifoldToplevel;
	beforeAll(async () => {
		kernel = await Module();
		kernel.setup();
	});
	const areaByKernel = (o: Outline): number => {
		const section = new kernel.CrossSection(
			o.map((p): [number, number] => [p.x / 1600, p.y / 1600]),
		);
		const found = section.area();
		section.delete();
		return found;
	};

	test('outlines with arcs, flattened finely', () => {
		const corner = fc.record({
			r: fc.integer({ min: 50, max: 300 }),
			bulge: fc.integer({ min: -20, max: 60 }),
		});
		fc.assert(
			fc.property(fc.array(corner, { minLength: 3, maxLength: 12 }), (corners) => {
				const o = corners.map((c, i): Outline[number] => {
					const turn = (i / corners.length) * 2 * Math.PI;
					return { x: mm(c.r * Math.cos(turn)), y: mm(c.r * Math.sin(turn)), bulge: c.bulge / 100 };
				});
				fc.pre(crossings(o).length === 0);
				const ours = area(o) / 1600 ** 2;
				// Chords 0.00625 mm off at most: that much along the whole line is the most the two
				// can differ.
				const most = (perimeter(o) / 1600) * 0.00625 + 0.01;
				expect(Math.abs(areaByKernel(flatten(o, 10)) - ours)).toBeLessThan(most);
			}),
			{ numRuns: runs(60) },
		);
	});

	test('straight outlines set in edge by edge', () => {
		const by = fc.integer({ min: -40, max: 40 });
		fc.assert(
			fc.property(
				fc.integer({ min: 100, max: 900 }),
				fc.integer({ min: 100, max: 900 }),
				by,
				(length, width, d) => {
					const set = setInAll(rectangle(0, 0, mm(length), mm(width)), mm(d)).outline!;
					expect(areaByKernel(set)).toBeCloseTo((length - 2 * d) * (width - 2 * d), 4);
				},
			),
			{ numRuns: runs(40) },
		);
	});
});
