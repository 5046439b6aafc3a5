import { around, nth } from './lists';

/**
 * Whole numbers near these that sum to `total`, itself a whole number: each is its floor, and what
 * is left goes one by one to the largest remainders (earlier ones first on a tie). Where the floors
 * come to more than the total, the smallest remainders give one up each. Nothing for no numbers.
 */
export function wholeShares(exact: readonly number[], total: number): number[] {
	const shares = exact.map(Math.floor);
	if (shares.length === 0) return shares;
	const rests = exact.map((x, i) => x - nth(shares, i));
	const order = exact.map((_, i) => i).sort((a, b) => nth(rests, b) - nth(rests, a) || a - b);
	const left = total - shares.reduce((sum, n) => sum + n, 0);
	if (!Number.isSafeInteger(left)) throw new Error(`bug: ${left} cannot be shared out in ones`);
	for (let k = 0; k < Math.abs(left); k++) {
		const i = left > 0 ? around(order, k) : around(order, -1 - k);
		shares[i] = nth(shares, i) + Math.sign(left);
	}
	return shares;
}
