import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closeTo, NEAREST, nearness } from '../../../src/lib/ui/drawings/frame';

const WHOLE = { x: 0, y: 0, width: 200, height: 100 };

describe('the part of a drawing that is worked at', () => {
	it('is shown with room round it, in the shape of the drawing', () => {
		const part = { x: 50, y: 40, width: 40, height: 10 };
		expect(closeTo(part, WHOLE, 5)).toEqual({ x: 45, y: 32.5, width: 50, height: 25 });
		expect(closeTo(WHOLE, WHOLE, 5)).toEqual(WHOLE);
		expect(closeTo({ x: 0, y: 0, width: 20, height: 10 }, WHOLE, 5)).toMatchObject({ x: 0, y: 0 });
	});

	it('lies within the drawing and holds the part', () => {
		const side = fc.double({ min: 0, max: 100, noNaN: true });
		fc.assert(
			fc.property(side, side, side, side, (x, y, w, h) => {
				const part = { x, y, width: Math.min(w, 200 - x), height: Math.min(h, 100 - y) };
				const frame = closeTo(part, WHOLE, 3);
				expect(nearness(frame, WHOLE)).toBeLessThanOrEqual(NEAREST + 1e-9);
				expect(frame.width / frame.height).toBeCloseTo(2, 9);
				for (const [of, size] of [
					['x', 'width'],
					['y', 'height'],
				] as const) {
					expect(frame[of]).toBeGreaterThanOrEqual(-1e-9);
					expect(frame[of] + frame[size]).toBeLessThanOrEqual(WHOLE[size] + 1e-9);
					expect(frame[of]).toBeLessThanOrEqual(part[of] + 1e-9);
					expect(frame[of] + frame[size]).toBeGreaterThanOrEqual(part[of] + part[size] - 1e-9);
				}
			}),
		);
	});
});
