import { money, type Money, type Ruler } from '../../measure';
import { priceOfLength, stepsFor } from './roll-price';
import type { Roll, StockSheet } from './stock';

/** Why more is bought than is needed; '' for the seller's own unit and no other reason. */
export type MoreBecause = '' | 'least' | 'multiple' | 'break';

/** What is bought of one thing: how many of the seller's units, at what each. */
export interface Bought {
	readonly count: number;
	/** Of one unit at this count. */
	readonly each: Money;
	readonly total: Money;
	readonly more: MoreBecause;
}

type Counted = Pick<StockSheet, 'price' | 'breaks' | 'least' | 'soldBy'>;

/**
 * Sheets or packs bought for a need: whole multiples of what they are sold by, no fewer than the
 * seller sends. Where more of them cost less in all, for their lower price, those are bought.
 *
 * @param most as many as can be bought; null for no limit
 */
export function buyCounted(of: Counted, need: number, most: number | null = null): Bought {
	if (need <= 0) return nothing(of.price);
	const whole = (n: number): number => Math.ceil(n / of.soldBy) * of.soldBy;
	const least = whole(Math.max(need, of.least));
	const why = least === need ? '' : of.least > need ? 'least' : 'multiple';
	const priced = (count: number, more: MoreBecause): Bought => {
		const each = priceAt(of, count);
		return { count, each, total: money(each * count), more };
	};
	const cheaper = of.breaks
		.map((b) => whole(Math.max(b.from, least)))
		.filter((n) => n > least && (most === null || n <= most))
		.map((n) => priced(n, 'break'));
	return cheapest(priced(least, why), cheaper);
}

type Lengths = Pick<Roll, 'price' | 'breaks' | 'per' | 'step' | 'least'>;

/**
 * Steps bought off a roll for so much cloth, as {@link buyCounted}. A step costs its share of the
 * price, rounded: a line is the product of what it shows, so that whoever checks it gets the same.
 */
export function buyLength(of: Lengths, pull: number, ruler: Pick<Ruler, 'unit'>): Bought {
	const priced = (count: number, more: MoreBecause): Bought => {
		const each = money(eachStep(of, count, ruler));
		return { count, each, total: money(each * count), more };
	};
	if (pull <= 0) return { ...nothing(of.price), each: priced(0, '').each };
	const count = stepsFor(of, pull);
	const cheaper = of.breaks
		.map((b) => stepsFor({ ...of, least: b.from }, pull))
		.filter((n) => n > count)
		.map((n) => priced(n, 'break'));
	return cheapest(priced(count, of.least > pull ? 'least' : ''), cheaper);
}

/** What one step costs when so many are bought, in minor units as a fraction. */
export function eachStep(of: Lengths, steps: number, ruler: Pick<Ruler, 'unit'>): number {
	return priceOfLength({ ...of, price: priceAt(of, steps * of.step) }, of.step, ruler);
}

/** Without a price nothing is cheaper than anything. */
function cheapest(plain: Bought, others: readonly Bought[]): Bought {
	if (plain.total === 0) return plain;
	return others.reduce(
		(best, b) =>
			b.total > 0 && (b.total < best.total || (b.total === best.total && b.count < best.count))
				? b
				: best,
		plain,
	);
}

const nothing = (price: Money): Bought => ({ count: 0, each: price, total: money(0), more: '' });

/** The price that holds for this much: of the highest number reached, the lowest of two alike. */
function priceAt(
	of: { readonly price: Money; readonly breaks: readonly Break[] },
	amount: number,
): Money {
	const reached = of.breaks.filter((b) => b.from <= amount);
	const from = Math.max(0, ...reached.map((b) => b.from));
	const prices = reached.filter((b) => b.from === from).map((b) => b.price);
	return prices.length > 0 ? (Math.min(...prices) as Money) : of.price;
}

interface Break {
	readonly from: number;
	readonly price: Money;
}
