import { money, wholeShares, type Money } from '../measure';

/**
 * Shares `whole` out by weight so that the shares add up to it to the last hundredth. No weight at
 * all: everything to the first line.
 */
export function shareOut(whole: Money, weights: readonly number[]): Money[] {
	const sum = weights.reduce((a, b) => a + b, 0);
	const parts = weights.map((w, i) => (sum > 0 ? (whole * w) / sum : i === 0 ? whole : 0));
	return wholeShares(parts, whole).map(money);
}
