import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { shareOut } from '../../src/lib/estimate/share';
import { money } from '../../src/lib/measure/money';

const weights = fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), {
	minLength: 1,
	maxLength: 30,
});

describe('shares of a price', () => {
	test.prop([fc.integer({ min: 0, max: 1e9 }), weights])('add up to the price', (whole, w) => {
		const shares = shareOut(money(whole), w);
		expect(shares.reduce((a, b) => a + b, 0)).toBe(whole);
		expect(shares.every((s) => s >= 0)).toBe(true);
	});

	test.prop([fc.integer({ min: 0, max: 1e9 }), weights])(
		'stay within a hundredth of their part',
		(whole, w) => {
			const sum = w.reduce((a, b) => a + b, 0);
			fc.pre(sum > 1e-3);
			const shares = shareOut(money(whole), w);
			w.forEach((weight, i) =>
				expect(Math.abs(shares[i]! - (whole * weight) / sum)).toBeLessThanOrEqual(1),
			);
		},
	);
});
