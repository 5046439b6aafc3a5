import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hatch, type Hatch, MOST_STROKES } from '../../../src/lib/print/drawing/hatch';
import { runs } from '../../depth';

const KINDS: readonly Hatch[] = [
	...(['plywood', 'mdf', 'particleboard', 'hardboard', 'solid', 'plastic'] as const),
	...(['other', 'pile', 'vinyl', 'offcut', 'waste'] as const),
];

const face = (width: number, height: number) => [
	[
		{ x: 0, y: 0 },
		{ x: width, y: 0 },
		{ x: width, y: height },
		{ x: 0, y: height },
	],
];

const ends = (kind: Hatch, width: number, height: number): readonly [number, number][] =>
	hatch(kind, face(width, height)).steps.map(([, x, y]) => [Number(x), Number(y)]);

describe('a hatch', () => {
	it('of upright strokes has one every 2.5 mm, as long as the face is high', () => {
		const lines = hatch('other', face(11, 7)).steps;
		expect(lines.filter(([way]) => way === 'M')).toHaveLength(5);
		const xs = ends('other', 11, 7).map(([x]) => Math.round(x * 1e6) / 1e6);
		expect([...new Set(xs)].sort((a, b) => a - b)).toEqual([0, 2.5, 5, 7.5, 10]);
	});

	it('stays on its face, and under so many strokes a family, however large or thin that is', () => {
		const long = fc.double({ min: -3, max: 6, noNaN: true }).map((e) => 10 ** e);
		fc.assert(
			fc.property(fc.constantFrom(...KINDS), long, long, (kind, width, height) => {
				const spots = ends(kind, width, height);
				expect(spots.length / 2).toBeLessThanOrEqual(2 * MOST_STROKES);
				const slack = 1e-9 * (width + height);
				for (const [x, y] of spots)
					if (x < -slack || y < -slack || x > width + slack || y > height + slack)
						expect([x, y]).toBe('on the face');
			}),
			{ numRuns: runs(60), seed: 7 },
		);
	});

	it('is none where a face has no end', () => {
		expect(hatch('mdf', face(Infinity, 20)).steps).toEqual([]);
		expect(hatch('offcut', face(20, NaN)).steps).toEqual([]);
	});

	it('of a board of 100 m by 100 m is still made of strokes', () => {
		for (const kind of KINDS) expect(ends(kind, 1e5, 1e5).length).toBeGreaterThan(100);
	});
});
