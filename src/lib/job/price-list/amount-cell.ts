import { minorUnits } from '../../measure';

/** Signs of money, and the currencies each stands for; the dollar of many countries. */
const SIGNS: Readonly<Record<string, readonly string[]>> = {
	'€': ['EUR'],
	'£': ['GBP'],
	'¥': ['JPY', 'CNY'],
	$: ['USD', 'CAD', 'AUD', 'NZD', 'SGD', 'HKD', 'MXN'],
};

/** An amount in the currency itself, or what is wrong with the cell and what would be right. */
export type ReadAmount =
	| { readonly major: number }
	| { readonly column: 'price' | 'currency'; readonly what: string; readonly fix: string };

/**
 * `12.50`, `EUR 1,234.50`, `12,50 €`: the currency may stand in the cell or in a column of its
 * own, and has to be the shop's.
 */
export function priceCell(
	cell: string,
	named: string,
	shop: { readonly currency: string; readonly decimal: '.' | ',' },
): ReadAmount {
	const { currency, decimal } = shop;
	const found = /^([^\d\s.,-]{1,3})?\s*(-?[.,]?\d[\d.,\s']*?)\s*([^\d\s.,-]{1,3})?$/u.exec(
		cell.trim(),
	);
	const signs = [found?.[1], found?.[3], named.trim()].filter((t) => t !== undefined && t !== '');
	const other = signs.find((sign) => !isOf(sign ?? '', currency));
	if (found && other !== undefined)
		return {
			column: named.trim() === other ? 'currency' : 'price',
			what: `This price is in ${other}, and the shop's are in ${currency}.`,
			fix: `Write it in ${currency}; a price list has one currency.`,
		};
	const thousands = decimal === '.' ? /[,\s']/g : /[.\s']/g;
	const text = (found?.[2] ?? '').replace(thousands, '').replace(',', '.');
	if (!/^\d+(\.\d+)?$/.test(text) || Number(text) > 1e7)
		return {
			column: 'price',
			what: `"${cell.slice(0, 40)}" is no price.`,
			fix: 'Write an amount such as 12.50.',
		};
	const minor = Number(text) * minorUnits(currency);
	if (Math.abs(minor - Math.round(minor)) < 1e-6) return { major: Number(text) };
	return {
		column: 'price',
		what: `"${cell.slice(0, 40)}" has more decimals than ${currency} has.`,
		fix: 'Write the price of more of it, as it is sold, or round it.',
	};
}

const isOf = (sign: string, currency: string): boolean =>
	sign.toUpperCase() === currency || (SIGNS[sign]?.includes(currency) ?? false);
