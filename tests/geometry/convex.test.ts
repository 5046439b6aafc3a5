import fc from 'fast-check';
import { runs } from '../depth';
import { describe, expect, it } from 'vitest';
import { convexParts } from '../../src/lib/geometry/shaping/convex';
import { area } from '../../src/lib/geometry/extent';
import { depthIn, forbidden } from '../../src/lib/geometry/shaping/minkowski';
import { orient } from '../../src/lib/geometry/orient';
import type { Point } from '../../src/lib/geometry/outline';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { commonArea } from '../../src/lib/geometry/shaping/clip';
import { stars } from '../stars';

const p = (x: number, y: number): Point => ({ x, y });

const star = stars([200, 3000], [5, 24]);

const sumArea = (parts: readonly Point[][]) => parts.reduce((sum, part) => sum + area(part), 0);

function expectConvex(parts: readonly Point[][]): void {
	for (const part of parts) {
		part.forEach((a, i) => {
			const b = part[(i + 1) % part.length]!;
			const c = part[(i + 2) % part.length]!;
			expect(orient(a, b, c)).toBeGreaterThanOrEqual(0);
		});
	}
}

describe('an area cut into convex parts', () => {
	it('keeps its area, and every part is convex', () => {
		fc.assert(
			fc.property(star, (outline) => {
				const parts = convexParts(outline);
				expectConvex(parts);
				expect(sumArea(parts)).toBe(area(outline));
			}),
			{ numRuns: runs(200) },
		);
	});

	it('leaves holes open', () => {
		const holes = [rectangle(10, 10, 20, 20), rectangle(60, 30, 10, 40), rectangle(40, 80, 15, 5)];
		const parts = convexParts(rectangle(0, 0, 100, 100), holes);
		expectConvex(parts);
		expect(sumArea(parts)).toBe(10_000 - 400 - 400 - 75);
		for (const hole of holes) expect(commonArea(parts, [hole])).toBe(0);
	});

	it('needs one part for a convex outline and two for an L', () => {
		expect(convexParts(rectangle(0, 0, 5, 5))).toHaveLength(1);
		expect(convexParts([p(0, 0), p(10, 0), p(10, 3), p(3, 3), p(3, 10), p(0, 10)])).toHaveLength(2);
	});
});

describe('where one part may not lie beside another', () => {
	it('tells overlap as the polygon library does', () => {
		const move = fc.integer({ min: -7000, max: 7000 });
		fc.assert(
			fc.property(star, star, move, move, (a, b, x, y) => {
				const moved = b.map((q) => p(q.x + x, q.y + y));
				const deep = Math.max(
					...convexParts(a).flatMap((one) =>
						convexParts(b).map((other) => depthIn(forbidden(one, other), x, y)),
					),
				);
				const shared = commonArea([a], [moved]);
				// thinner overlaps are lost in the library's rounding
				if (shared > 4000) expect(deep).toBeGreaterThan(0);
				if (deep > 4) expect(shared).toBeGreaterThan(0);
			}),
			{ numRuns: runs(200) },
		);
	});

	it('lets parts touch', () => {
		const f = forbidden(rectangle(0, 0, 10, 10), rectangle(0, 0, 4, 4));
		expect(depthIn(f, 10, 0)).toBe(0);
		expect(depthIn(f, 9, 0)).toBe(1);
		expect(depthIn(f, -4, -4)).toBe(0);
		expect(depthIn(f, 3, 3)).toBe(7);
	});
});
