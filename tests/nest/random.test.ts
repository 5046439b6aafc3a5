import { describe, expect, it } from 'vitest';
import { random } from '../../src/lib/nest/random';

describe('random', () => {
	it('repeats itself for the same seed and differs for another', () => {
		const draw = (seed: number): number[] => {
			const dice = random(seed);
			return Array.from({ length: 20 }, () => dice.int(1_000_000));
		};
		expect(draw(7)).toEqual(draw(7));
		expect(draw(7)).not.toEqual(draw(8));
		expect(new Set(draw(0)).size).toBeGreaterThan(15);
	});

	it('spreads evenly over its range', () => {
		const dice = random(3);
		const seen = new Array<number>(10).fill(0);
		let sum = 0;
		for (let i = 0; i < 20_000; i++) {
			const face = dice.int(10);
			seen[face] = (seen[face] ?? 0) + 1;
			sum += dice.unit();
		}
		// 2000 each expected; five standard deviations of a binomial count are 212
		for (const n of seen) expect(Math.abs(n - 2000)).toBeLessThan(212);
		expect(Math.abs(sum / 20_000 - 0.5)).toBeLessThan(0.011);
	});
});
