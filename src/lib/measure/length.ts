/**
 * Lengths live on one grid of 1600 ticks to the millimetre, so that 0.01 mm (16 ticks) and 1/64 in
 * (635 ticks) are both whole numbers and every sum, difference and comparison of lengths is exact.
 */
declare const onGrid: unique symbol;

/**
 * A length as a whole number of ticks. Plain arithmetic gives a `number`; wrap it with
 * {@link ticks} to name it a length again.
 */
export type Length = number & { readonly [onGrid]: true };

export const TICKS_PER_MM = 1600;
export const TICKS_PER_INCH = 40_640; // 25.4 mm exactly: NIST SP 811 (2008) appendix B.8

/** A whole number of ticks named as a length. Throws `bug:` on a fraction or an unsafe integer. */
export function ticks(n: number): Length {
	if (!Number.isSafeInteger(n)) throw new Error(`bug: ${n} is not a whole number of ticks`);
	return (n === 0 ? 0 : n) as Length;
}

/** The nearest tick to a number of ticks that fell between two. */
export function snap(n: number): Length {
	return ticks(Math.round(n));
}

/** Millimetres (any finite number) snapped to the nearest tick. */
export function mm(n: number): Length {
	return snap(n * TICKS_PER_MM);
}

/** Inches snapped to the nearest tick. */
export function inches(n: number): Length {
	return snap(n * TICKS_PER_INCH);
}

export function toMm(l: number): number {
	return l / TICKS_PER_MM;
}

export function toInches(l: number): number {
	return l / TICKS_PER_INCH;
}
