import fc from 'fast-check';
import { runs } from '../depth';
import { describe, expect, it } from 'vitest';
import { regionArea, without } from '../../src/lib/geometry/shaping/clip';
import { crossings } from '../../src/lib/geometry/meeting/crossing';
import { area, perimeter } from '../../src/lib/geometry/extent';
import { flatten } from '../../src/lib/geometry/flatten';
import { simplifiedOutward } from '../../src/lib/geometry/shaping/simplify';
import { circle } from '../../src/lib/geometry/shaping/tidy';
import { stars } from '../stars';

const star = stars([20_000, 60_000], [6, 40]);

describe('an outline simplified outward', () => {
	it('contains the old one, grows no more than allowed, and does not cross itself', () => {
		fc.assert(
			fc.property(star, fc.constantFrom(0.002, 0.01, 0.05), (outline, share) => {
				const simple = simplifiedOutward(outline, share);
				expect(simple.length).toBeLessThanOrEqual(outline.length);
				expect(area(simple)).toBeLessThanOrEqual(
					area(outline) * (1 + share) + 2 * perimeter(outline),
				);
				expect(crossings(simple)).toEqual([]);
				const lost = without([outline], [simple]).reduce((sum, r) => sum + regionArea(r), 0);
				// the library's own rounding
				expect(lost).toBeLessThanOrEqual(0.1 * perimeter(outline));
			}),
			{ numRuns: runs(200) },
		);
	});

	it('makes a circle of dozens of corners one of a few', () => {
		const round = flatten(circle(0, 0, 160_000), 80, 'outward');
		const simple = simplifiedOutward(round, 0.02);
		expect(round.length).toBeGreaterThan(60);
		expect(simple.length).toBeLessThan(round.length / 2);
	});

	it('leaves a rectangle as it is', () => {
		const square = [
			{ x: 0, y: 0 },
			{ x: 10, y: 0 },
			{ x: 10, y: 10 },
			{ x: 0, y: 10 },
		];
		expect(simplifiedOutward(square, 0.5)).toEqual(square);
	});
});
