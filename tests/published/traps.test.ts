import { describe, expect, test } from 'vitest';
import { END_CORRECTION, equalRadius, halfPower } from '../../src/lib/design/box/vent/acoustics';
import { figures } from '../design/box/make';

/*
 * Figures that look published but are wrong or ambiguous: each form is shown not to be the one
 * used.
 */

test('an end correction of 0.732 times the root of the area for each end is not used', () => {
	const area = 0.0079;
	const ours = END_CORRECTION['one-flanged'] * equalRadius(area);
	expect(ours).toBeCloseTo(0.731 * 2 * equalRadius(area), 4);
	expect(Math.abs(2 * 0.732 * Math.sqrt(area) - ours) / ours).toBeGreaterThan(0.5);
});

test('half power is at the resonance only for a Qtc of 0.7071', () => {
	expect(halfPower(Math.SQRT1_2)).toBeCloseTo(1, 9);
	expect(Math.abs(halfPower(0.9) - 1)).toBeGreaterThan(0.1);
	expect(Math.abs(halfPower(0.5) - 1)).toBeGreaterThan(0.1);
});

describe('a box whose two dimensions taper differently', () => {
	const [a1, a2, h] = [600 * 400, 500 * 200, 300];
	const ours = figures({
		shape: {
			kind: 'tapered',
			front: { width: 600, height: 400 },
			back: { width: 500, height: 200 },
			depth: 300,
		},
		sizes: 'inner',
	}).chambers[0]!.gross;

	test('does not hold what the frustum formula says', () => {
		const frustum = ((h / 3) * (a1 + Math.sqrt(a1 * a2) + a2)) / 1e6;
		expect(Math.abs(frustum / ours - 1)).toBeGreaterThan(1e-3);
	});

	test('holds less than its depth times the mean of its ends', () => {
		expect((h * (a1 + a2)) / 2 / 1e6).toBeGreaterThan(ours * 1.01);
	});
});

test('measured thickness rules, not the nominal 18', () => {
	const shape = { kind: 'plain' as const, width: 500, height: 400, depth: 300 };
	const litres = figures({ shape, material: 'ply-17' }).chambers[0]!.gross;
	expect(litres).toBeCloseTo((500 - 34.8) * (400 - 34.8) * (300 - 34.8) * 1e-6, 9);
	expect(litres).not.toBeCloseTo(464 * 364 * 264 * 1e-6, 2);
});
