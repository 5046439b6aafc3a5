import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
	type Excerpt,
	midOf,
	nearer,
	NEAREST,
	nearness,
	slid,
	wholeOf,
} from '../../../src/lib/ui/drawings/frame';
import { runs } from '../../depth';

const whole = wholeOf({ width: 180, height: 120 });
const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Frames that looking nearer and sliding lead to. */
const frames = fc
	.tuple(fc.double({ min: 1, max: NEAREST, noNaN: true }), share, share)
	.map(([times, x, y]): Excerpt => {
		const near = nearer(whole, whole, times, midOf(whole));
		return slid(near, whole, { x: (x - 0.5) * 400, y: (y - 0.5) * 400 });
	});

const isInside = (f: Excerpt): boolean =>
	f.x >= -1e-9 &&
	f.y >= -1e-9 &&
	f.x + f.width <= whole.width + 1e-9 &&
	f.y + f.height <= whole.height + 1e-9;

test('nothing beyond the drawing is ever seen, and its form stays', () => {
	fc.assert(
		fc.property(
			frames,
			fc.double({ min: 0.01, max: 100, noNaN: true }),
			share,
			share,
			(f, times, x, y) => {
				const next = nearer(f, whole, times, { x: f.x + x * f.width, y: f.y + y * f.height });
				expect(isInside(f) && isInside(next)).toBe(true);
				expect(next.width / next.height).toBeCloseTo(1.5, 9);
				expect(nearness(next, whole)).toBeGreaterThanOrEqual(1 - 1e-9);
				expect(nearness(next, whole)).toBeLessThanOrEqual(NEAREST + 1e-9);
			},
		),
		{ numRuns: runs(300) },
	);
});

test('coming nearer, the spot under the hand stays under it', () => {
	fc.assert(
		fc.property(
			frames,
			fc.double({ min: 1, max: 3, noNaN: true }),
			share,
			share,
			(f, times, x, y) => {
				const at = { x: f.x + x * f.width, y: f.y + y * f.height };
				const next = nearer(f, whole, times, at);
				expect((at.x - next.x) / next.width).toBeCloseTo(x, 6);
				expect((at.y - next.y) / next.height).toBeCloseTo(y, 6);
			},
		),
		{ numRuns: runs(300) },
	);
});

test('as far away as it goes, all of it is seen', () => {
	fc.assert(
		fc.property(frames, (f) => {
			const all = nearer(f, whole, 1 / NEAREST, midOf(f));
			expect(all.x).toBeCloseTo(0, 9);
			expect(all.y).toBeCloseTo(0, 9);
			expect(all.width).toBeCloseTo(180, 9);
		}),
		{ numRuns: runs(100) },
	);
});
