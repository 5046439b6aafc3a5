import { nth, money, type Money } from '../measure';

/**
 * Shares `whole` out by weight so that the shares add up to it to the last hundredth: each gets its
 * floor, and the hundredths left over go to the largest remainders (earlier lines first on a tie).
 * No weight at all: everything to the first line.
 */
export function shareOut(whole: Money, weights: readonly number[]): Money[] {
	if (weights.length === 0) return [];
	const sum = weights.reduce((a, b) => a + b, 0);
	const parts = weights.map((w, i) => (sum > 0 ? (whole * w) / sum : i === 0 ? whole : 0));
	const shares = parts.map(Math.floor);
	const order = parts
		.map((p, i) => ({ i, rest: p - Math.floor(p) }))
		.sort((a, b) => b.rest - a.rest || a.i - b.i);
	let left = whole - shares.reduce((a, b) => a + b, 0);
	for (const { i } of order) {
		if (left < 1) break;
		shares[i] = nth(shares, i) + 1;
		left -= 1;
	}
	return shares.map(money);
}
