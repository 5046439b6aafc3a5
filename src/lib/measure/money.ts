declare const minor: unique symbol;

/** Money in whole hundredths of the job's currency. Rounding happens once, at the end of a sum. */
export type Money = number & { readonly [minor]: true };

/** Whole hundredths; rounds half up (away from zero for a credit). Throws `bug:` when not finite. */
export function money(hundredths: number): Money {
	if (!Number.isFinite(hundredths)) throw new Error(`bug: ${hundredths} is not an amount`);
	return (Math.sign(hundredths) * Math.round(Math.abs(hundredths)) + 0) as Money;
}

const ZERO = 0 as Money;

export function sumMoney(amounts: readonly Money[]): Money {
	return amounts.reduce((sum, amount) => money(sum + amount), ZERO);
}

/** Built once a currency and sign: making a formatter costs more than using it a hundred times. */
const formats = new Map<string, Intl.NumberFormat>();

function format(currency: string, decimal: '.' | ','): Intl.NumberFormat {
	const key = currency + decimal;
	const known = formats.get(key);
	if (known) return known;
	const made = new Intl.NumberFormat(decimal === '.' ? 'en-US' : 'de-DE', {
		style: 'currency',
		currency,
		currencyDisplay: 'code',
		minimumFractionDigits: 2,
		maximumFractionDigits: 2,
	});
	formats.set(key, made);
	return made;
}

/**
 * `EUR 1,234.50` with a decimal point, `1.234,50 EUR` with a comma. The ISO 4217 code rather than a sign: it is in every
 * typeface and never mistaken for another country's dollar.
 */
export function printMoney(amount: Money, currency: string, decimal: '.' | ',' = '.'): string {
	return format(currency, decimal)
		.format(amount / 100)
		.replace(/\s/g, ' ');
}

/** The bare amount for a table or a spreadsheet: `1234.50`. */
export function plainMoney(amount: Money, decimal: '.' | ',' = '.'): string {
	return (amount / 100).toFixed(2).replace('.', decimal);
}
