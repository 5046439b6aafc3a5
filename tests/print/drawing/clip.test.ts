import fc from 'fast-check';
import { expect, it } from 'vitest';
import { clipped, ringRunsInto, runsInto } from '../../../src/lib/print/drawing/clip';
import type { PathStep } from '../../../src/lib/print/drawing/drawing';
import { polygon } from '../../../src/lib/print/drawing/path';
import { runs } from '../../depth';

/* What lies in a box is told without making what is drawn of it. */

const BOX = { x: -10, y: -6, width: 20, height: 12 };
const place = fc.integer({ min: -30, max: 30 });
const spots = fc.array(fc.record({ x: place, y: place }), { minLength: 2, maxLength: 5 });
const curve = fc.tuple(place, place, place, place, place, place, place, place);

it('a line or a ring runs into a box where something of it is left there', () => {
	let into = 0;
	const law = fc.property(spots, (ring) => {
		const path = polygon(ring);
		const left = clipped(path, BOX).length > 0;
		expect(runsInto(path, BOX)).toBe(left);
		expect(ringRunsInto(ring, BOX)).toBe(left);
		if (left) into++;
	});
	fc.assert(law, { numRuns: runs(400, 100) });
	expect(into).toBeGreaterThan(10);
});

it('a curve with a place well inside a box is not taken for one that passes it', () => {
	let into = 0;
	const law = fc.property(curve, ([x0, y0, ...handles]) => {
		const steps: PathStep[] = [
			['M', x0, y0],
			['C', ...handles],
		];
		const [x1, y1, x2, y2, x3, y3] = handles;
		const at = (t: number, a: number, b: number, c: number, d: number): number =>
			(1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t ** 3 * d;
		const inside = [...Array(101).keys()].some((i) => {
			const [x, y] = [at(i / 100, x0, x1, x2, x3), at(i / 100, y0, y1, y2, y3)];
			return Math.abs(x) < 9.9 && Math.abs(y) < 5.9;
		});
		if (!inside) return;
		into++;
		expect(runsInto(steps, BOX)).toBe(true);
		expect(clipped(steps, BOX).length).toBeGreaterThan(0);
	});
	fc.assert(law, { numRuns: runs(400, 100) });
	expect(into).toBeGreaterThan(10);
});
