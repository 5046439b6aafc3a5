import { describe, expect, it } from 'vitest';
import { inches } from '../../src/lib/measure/length';
import { FREE, ONE_WAY, blank, lay, roll } from '../nest/roll-samples';

/*
 * Nap makes you buy more. Roll 40 in wide (a width box carpet is sold in: common practice, no source); three panels
 * 34 x 15 in with 2 in turned under on every edge: blanks 38 x 19 in. Worked by hand: turned freely they lie across,
 * 38 of 40 in, one to a row, three rows of 19 in. With the nap along the 38 in, two lie side by side (38 in), and
 * three take two rows of 38 in. One-way layout for napped cloth: a rule of dressmaking glossaries.
 */
describe('three 38 x 19 in blanks on a 40 in roll', () => {
	const blanks = (turns: typeof FREE) =>
		roll(inches(40), [blank('panel', inches(38), inches(19), 3, turns)]);

	it('take 57 in when they may turn: 1.583 yd', () => {
		const answer = lay(blanks(FREE));
		expect(answer.length).toBe(inches(57));
		expect(answer.proven).toBe(true);
		expect(answer.length / inches(36)).toBeCloseTo(1.583, 3);
	});

	it('take 76 in with a one-way nap: 2.111 yd', () => {
		const answer = lay(blanks(ONE_WAY));
		expect(answer.length).toBe(inches(76));
		expect(answer.proven).toBe(true); // all three are longer than half of anything less: they would cross its middle
		expect(answer.length / inches(36)).toBeCloseTo(2.111, 3);
	});
});
