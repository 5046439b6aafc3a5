/**
 * A fraction of whole numbers, so that 1/3 in or 0.1 mm stays what was written until it is rounded
 * once, at the end.
 */
export interface Ratio {
	readonly n: bigint;
	readonly d: bigint;
}

export const whole = (n: bigint | number): Ratio => ({ n: BigInt(n), d: 1n });
export const addRatios = (a: Ratio, b: Ratio): Ratio => ({
	n: a.n * b.d + b.n * a.d,
	d: a.d * b.d,
});
export const subtractRatios = (a: Ratio, b: Ratio): Ratio => ({
	n: a.n * b.d - b.n * a.d,
	d: a.d * b.d,
});
export const multiplyRatios = (a: Ratio, b: Ratio): Ratio => ({ n: a.n * b.n, d: a.d * b.d });

/** The nearest whole number; a half goes away from zero. */
export function nearestWhole({ n, d }: Ratio): bigint {
	const magnitude = ((n < 0n ? -n : n) * 2n + d) / (d * 2n);
	return n < 0n ? -magnitude : magnitude;
}
