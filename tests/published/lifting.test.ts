import { describe, expect, test } from 'vitest';
import { LOAD_CONSTANT, personsFor } from '../../src/lib/design/box/report/lifting';

/** Waters, Putz-Anderson and Garg, NIOSH publication 94-110 (1994). */
describe('lifting', () => {
	test('the load constant is 23 kg; from there on it takes two people or a cart', () => {
		expect(LOAD_CONSTANT).toBe(23);
		expect([personsFor(22.9), personsFor(23), personsFor(42)]).toEqual([1, 2, 2]);
	});
});
