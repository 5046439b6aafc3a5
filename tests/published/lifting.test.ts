import { describe, expect, test } from 'vitest';
import {
	liftingIndex,
	liftingLimit,
	LOAD_CONSTANT,
	personsFor,
} from '../../src/lib/design/box/report/lifting';

/** Waters, Putz-Anderson and Garg, NIOSH publication 94-110 (1994). */
describe('lifting', () => {
	test('the load constant is 23 kg, and the ideal lift allows all of it', () => {
		expect(LOAD_CONSTANT).toBe(23);
		expect(liftingLimit(25, 75, 25, 0)).toBe(23);
	});

	test('farther out, lower, higher or twisted allows less', () => {
		expect(liftingLimit(50, 75, 25, 0)).toBe(11.5);
		expect(liftingLimit(25, 0, 25, 0)).toBeCloseTo(23 * (1 - 0.225), 9);
		expect(liftingLimit(25, 75, 100, 0)).toBeCloseTo(23 * (0.82 + 0.045), 9);
		expect(liftingLimit(25, 75, 25, 90)).toBeCloseTo(23 * (1 - 0.288), 9);
	});

	test('a 42 kg board where 11.58 kg are recommended has an index of 3.6: two people or a cart', () => {
		expect(liftingIndex(42, 11.58)).toBeCloseTo(3.6, 1);
		expect([personsFor(22.9), personsFor(23), personsFor(42)]).toEqual([1, 2, 2]);
	});
});
