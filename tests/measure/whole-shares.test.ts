import { describe, expect, it } from 'vitest';
import { wholeShares } from '../../src/lib/measure/whole-shares';

describe('whole shares', () => {
	it('go to the largest remainders, up and down', () => {
		expect(wholeShares([1.2, 1.7, 1.4], 5)).toEqual([1, 2, 2]);
		expect(wholeShares([1.2, 1.7], 2)).toEqual([1, 1]);
		expect(wholeShares([0.9, 0.1], -1)).toEqual([0, -1]);
		expect(wholeShares([], 0)).toEqual([]);
	});

	it('go to the first on a tie', () => {
		expect(wholeShares([1.5, 1.5, 1.5], 5)).toEqual([2, 2, 1]);
	});

	it('refuse what no whole numbers add up to', () => {
		expect(() => wholeShares([1, 2], 3.5)).toThrow('bug: 0.5');
		expect(() => wholeShares([NaN], 3)).toThrow('bug:');
	});
});
