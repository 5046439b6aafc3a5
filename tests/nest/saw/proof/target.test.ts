import fc from 'fast-check';
import { runs } from '../../../depth';
import { describe, expect, it } from 'vitest';
import { nextBelow } from '../../../../src/lib/nest/saw/proof/target';

describe('the next lower cost of any sheets', () => {
	it('leaves out sums that no sheets come to', () => {
		// sheets of 130 and 73: below 130 + 130 + 73 comes four times 73
		expect(nextBelow([130, 73], [Infinity, Infinity], 333)).toBe(292);
		// of which there are but three: then 130 + 73 + 73
		expect(nextBelow([130, 73], [Infinity, 3], 333)).toBe(276);
		expect(nextBelow([130, 0], [Infinity, Infinity], 130)).toBe(0);
	});

	it('is what trying all numbers of sheets gives', () => {
		const kind = fc.record({
			cost: fc.integer({ min: 0, max: 12 }),
			count: fc.constantFrom(0, 1, 2, 3, Infinity),
		});
		fc.assert(
			fc.property(
				fc.array(kind, { minLength: 1, maxLength: 3 }),
				fc.integer({ min: 1, max: 40 }),
				(kinds, money) => {
					let best = 0;
					const visit = (at: number, sum: number): void => {
						if (sum >= money) return;
						best = Math.max(best, sum);
						const k = kinds[at];
						if (!k) return;
						for (let n = 0; n <= Math.min(k.count, money); n++) visit(at + 1, sum + n * k.cost);
					};
					visit(0, 0);
					const costs = kinds.map((k) => k.cost);
					expect(
						nextBelow(
							costs,
							kinds.map((k) => k.count),
							money,
						),
					).toBe(best);
				},
			),
			{ numRuns: runs(300) },
		);
	});
});
