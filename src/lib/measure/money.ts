declare const minor: unique symbol;

/**
 * Money in whole minor units of the job's currency: cents, yen, fils. Rounding happens once, at the
 * end of a sum.
 */
export type Money = number & { readonly [minor]: true };

/**
 * Whole minor units; rounds half up (away from zero for a credit). Throws `bug:` when not finite.
 */
export function money(units: number): Money {
	if (!Number.isFinite(units)) throw new Error(`bug: ${units} is not an amount`);
	return (Math.sign(units) * Math.round(Math.abs(units)) + 0) as Money;
}

const ZERO = 0 as Money;

export function sumMoney(amounts: readonly Money[]): Money {
	return amounts.reduce((sum, amount) => money(sum + amount), ZERO);
}

/** Built once a currency and sign: making a formatter costs more than using it a hundred times. */
const formats = new Map<string, Intl.NumberFormat>();

/**
 * Decimals follow the currency: two for most, none for the yen, three for the Kuwaiti dinar (ISO
 * 4217).
 */
function format(currency: string, decimal: '.' | ','): Intl.NumberFormat {
	const key = currency + decimal;
	const known = formats.get(key);
	if (known) return known;
	const made = new Intl.NumberFormat(decimal === '.' ? 'en-US' : 'de-DE', {
		style: 'currency',
		currency,
		currencyDisplay: 'code',
	});
	formats.set(key, made);
	return made;
}

/** Decimals an amount of the currency is written with. */
function decimals(currency: string): number {
	return format(currency, '.').resolvedOptions().maximumFractionDigits ?? 2;
}

/** How many of the minor unit make one of the currency: 100 cents, 1 yen, 1000 fils. */
export function minorUnits(currency: string): number {
	return 10 ** decimals(currency);
}

/** The amount in the currency itself, for other programs: 1234.5. */
export function majorMoney(amount: Money | number, currency: string): number {
	return amount / minorUnits(currency);
}

/**
 * `EUR 1,234.50` with a decimal point, `1.234,50 EUR` with a comma. The ISO 4217 code rather than a
 * sign: it is in every typeface and never mistaken for another country's dollar.
 */
export function printMoney(amount: Money, currency: string, decimal: '.' | ',' = '.'): string {
	return format(currency, decimal).format(majorMoney(amount, currency)).replace(/\s/g, ' ');
}

/** The bare amount for a table or a spreadsheet: `1234.50`. */
export function plainMoney(amount: Money, currency: string, decimal: '.' | ',' = '.'): string {
	return majorMoney(amount, currency).toFixed(decimals(currency)).replace('.', decimal);
}
