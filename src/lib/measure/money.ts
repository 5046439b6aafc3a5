declare const minor: unique symbol;

/** Money in whole hundredths of the job's currency. Rounding happens once, at the end of a sum. */
export type Money = number & { readonly [minor]: true };

/** Whole hundredths; rounds half up (away from zero for a credit). Throws `bug:` when not finite. */
export function money(hundredths: number): Money {
	if (!Number.isFinite(hundredths)) throw new Error(`bug: ${hundredths} is not an amount`);
	return (Math.sign(hundredths) * Math.round(Math.abs(hundredths)) + 0) as Money;
}
