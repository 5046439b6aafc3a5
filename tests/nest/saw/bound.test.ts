import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { boundOf } from '../../../src/lib/nest/saw/bound';
import { leastMoney, leastSheets, leastWhole, nextFrom } from '../../../src/lib/nest/saw/covering';
import { functionsFor } from '../../../src/lib/nest/saw/dual-feasible';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import { sawModel } from '../../../src/lib/nest/saw/model';
import { finish, problems } from './samples';

describe('dual feasible functions', () => {
	it('never weigh parts more than their sum, and the whole as one', () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 2, max: 60 }),
				fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 }),
				(whole, sizes) => {
					const cut = sizes.map((size) => Math.min(size, whole));
					const worst = functionsFor(whole, cut, 20).map((f) => {
						let over = f(whole) - 1;
						for (let a = 0; a <= whole; a++)
							for (let b = a; a + b <= whole; b++) over = Math.max(over, f(a) + f(b) - f(a + b));
						return over;
					});
					expect(Math.max(...worst)).toBeLessThan(1e-12);
				},
			),
			{ numRuns: runs(60) },
		);
	});
});

describe('the cheapest cover', () => {
	const offer = fc.record({
		gives: fc.integer({ min: 1, max: 20 }),
		price: fc.integer({ min: 0, max: 9 }),
		count: fc.oneof(fc.constant(Infinity), fc.integer({ min: 1, max: 4 })),
	});

	it('is never dearer in parts than in whole sheets, and what it says can be bought', () => {
		fc.assert(
			fc.property(
				fc.array(offer, { minLength: 1, maxLength: 3 }),
				fc.integer({ min: 1, max: 60 }),
				(offers, amount) => {
					const best = everyWay(offers, amount);
					expect(leastWhole(offers, amount, 1e6)).toBe(best.money);
					if (best.money === Infinity) return;
					expect(leastMoney(offers, amount)).toBeLessThanOrEqual(best.money);
					expect(leastSheets(offers, amount)).toBe(best.sheets);
				},
			),
			{ numRuns: runs(200) },
		);
	});

	it('of a sum that no sheets come to is the next one that they do', () => {
		const dear = { gives: 1, price: 65_00, count: Infinity };
		const cheap = { gives: 1, price: 36_50, count: Infinity };
		// four cheap ones make 146.00; then come two cheap ones and a dear one, 138.00, and one and
		// two, 166.50
		expect(nextFrom([dear, cheap], 138_50)).toBe(146_00);
		expect(nextFrom([dear, cheap], 146_50)).toBe(166_50);
		expect(nextFrom([dear, { ...cheap, count: 3 }], 138_50)).toBe(166_50);
		expect(nextFrom([{ ...cheap, count: 3 }], 138_50)).toBe(138_50); // no stock comes to it
		expect(nextFrom([{ ...cheap, price: 0 }], 0)).toBe(0);
	});

	/** By trying every number of every kind. */
	function everyWay(
		offers: readonly { gives: number; price: number; count: number }[],
		amount: number,
	): { money: number; sheets: number } {
		const [first, ...rest] = offers;
		if (amount <= 0) return { money: 0, sheets: 0 };
		if (!first) return { money: Infinity, sheets: Infinity };
		const best = { money: Infinity, sheets: Infinity };
		for (let n = 0; n <= Math.min(first.count, 60); n++) {
			const more = everyWay(rest, amount - n * first.gives);
			best.money = Math.min(best.money, n * first.price + more.money);
			best.sheets = Math.min(best.sheets, n + more.sheets);
			if (n * first.gives >= amount) break;
		}
		return best;
	}
});

describe('the bound beside an answer', () => {
	it('never lies above it', () => {
		fc.assert(
			fc.property(problems(false), (problem) => {
				const answer = finish(nestSaw(problem, { seed: 2, effort: 40 }));
				fc.pre(answer.unplaced.length === 0);
				const bound = boundOf(sawModel(problem));
				expect(bound.cost).toBeLessThanOrEqual(answer.cost);
				expect(bound.sheets).toBeLessThanOrEqual(answer.layouts.length);
			}),
			{ numRuns: runs(150) },
		);
	});
});
