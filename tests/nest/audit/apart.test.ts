import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { convexApart, rectCorners, rectsApart } from '../../../src/lib/nest/audit/apart';
import type { Placed } from '../../../src/lib/nest/types';
import { runs } from '../../depth';
import { piece } from '../saw/samples';

const rect = (x: number, y: number, length: number, width: number) => ({ x, y, length, width });
const still = rect(-40, 70, 30, 20);

describe('rectangles', () => {
	test.each([
		['right of it', rect(-7, 70, 5, 20), rect(-8, 70, 5, 20)],
		['left of it', rect(-48, 75, 5, 5), rect(-47, 75, 5, 5)],
		['above it', rect(-40, 93, 30, 9), rect(-40, 92, 30, 9)],
		['below it', rect(-30, 58, 9, 9), rect(-30, 59, 9, 9)],
	])('%s: a kerf apart, and one tick nearer', (_, far, near) => {
		expect([rectsApart(still, far, 3), rectsApart(far, still, 3)]).toEqual([true, true]);
		expect([rectsApart(still, near, 3), rectsApart(near, still, 3)]).toEqual([false, false]);
	});
});

/** A trapezoid with no two sides alike, so that a wrong turn shows. */
const lean = [
	{ x: 0, y: 0 },
	{ x: 30, y: 0 },
	{ x: 22, y: 20 },
	{ x: 0, y: 20 },
];
const laid = (turn: Placed['turn']): Placed => {
	const [length, width] = turn % 180 === 0 ? [30, 20] : [20, 30];
	return { id: 'a', copy: 0, x: 100, y: 200, length, width, turn };
};

describe('corners of a piece where it lies', () => {
	test('as it is, and turned counter-clockwise within its rectangle', () => {
		const plain = piece('a', 30, 20);
		expect(rectCorners(plain, laid(0))).toEqual([
			{ x: 100, y: 200 },
			{ x: 130, y: 200 },
			{ x: 130, y: 220 },
			{ x: 100, y: 220 },
		]);
		const shaped = { ...plain, outline: lean };
		// The blunt corner, right of the upper left one, goes round with the turns.
		expect(rectCorners(shaped, laid(0))[2]).toEqual({ x: 122, y: 220 });
		expect(rectCorners(shaped, laid(90))[2]).toEqual({ x: 100, y: 222 });
		expect(rectCorners(shaped, laid(180))[2]).toEqual({ x: 108, y: 200 });
		expect(rectCorners(shaped, laid(270))[2]).toEqual({ x: 120, y: 208 });
	});

	test.each([0, 90, 180, 270] as const)('turned by %i it fills its rectangle', (turn) => {
		const placed = laid(turn);
		const corners = rectCorners({ ...piece('a', 30, 20), outline: lean }, placed);
		const [xs, ys] = [corners.map((c) => c.x), corners.map((c) => c.y)];
		expect([Math.min(...xs), Math.max(...xs)]).toEqual([100, 100 + placed.length]);
		expect([Math.min(...ys), Math.max(...ys)]).toEqual([200, 200 + placed.width]);
	});
});

/** Two triangles that face each other over a cut of slope 3 to 4, `away` times five ticks apart. */
function pair(away: number, at = { x: 0, y: 0 }) {
	const low = [
		{ x: 0, y: 0 },
		{ x: 400, y: 0 },
		{ x: 0, y: 300 },
	];
	const high = [
		{ x: 400, y: 300 },
		{ x: 0, y: 300 },
		{ x: 400, y: 0 },
	].map(({ x, y }) => ({ x: x + 3 * away, y: y + 4 * away }));
	const moved = (shape: typeof low) => shape.map(({ x, y }) => ({ x: x + at.x, y: y + at.y }));
	return [moved(low), moved(high)] as const;
}

describe('tapered pieces along a slanted cut', () => {
	test('lie exactly the kerf apart, and not a tick more: 3, 4, 5', () => {
		expect([convexApart(...pair(2), 10), convexApart(...pair(2), 11)]).toEqual([true, false]);
		expect([convexApart(...pair(0), 0), convexApart(...pair(0), 1)]).toEqual([true, false]);
		expect(convexApart(...pair(-1), 0)).toBe(false);
	});

	const far = fc.integer({ min: -1_000_000, max: 1_000_000 });
	law.prop([far, far, fc.integer({ min: -3, max: 9 }), fc.integer({ min: 0, max: 50 })], {
		numRuns: runs(200),
	})('wherever they lie, whichever comes first', (x, y, away, gap) => {
		const [low, high] = pair(away, { x, y });
		const right = away >= 0 && gap <= 5 * away;
		expect(convexApart(low, high, gap)).toBe(right);
		expect(convexApart(high, low, gap)).toBe(right);
	});

	test('a length of a whole sheet is still judged exactly', () => {
		const long = ticks(2500 * 1600);
		const low = [
			{ x: 0, y: 0 },
			{ x: long, y: 0 },
			{ x: 0, y: 1 },
		];
		const over = [
			{ x: long, y: 1 },
			{ x: 0, y: 1 },
			{ x: long, y: 0 },
		];
		expect([convexApart(low, over, 0), convexApart(low, over, 1)]).toEqual([true, false]);
	});
});
