import type { Bound } from './bound';
import { gcd, nextFrom, sumsBelow } from './covering';
import type { Aim } from './generation';
import type { Kept } from './laying';
import type { Kind, SawModel } from './saw-model';

/**
 * What is to be shown of a layout: money where kinds differ and some is spent, in units of what all prices are multiples of;
 * else sheets. Where all that is used is owned, sheets to be paid for are no way to use fewer.
 */
export function aimOf({ kinds, demand }: SawModel, { trees }: Pick<Kept, 'trees'>): Aim {
	const pieces = demand.reduce((sum, n) => sum + n, 0);
	const prices = kinds.map((k) => k.sheet.price);
	const money = trees.reduce((sum, tree) => sum + prices[tree.kind]!, 0);
	const scarce = (k: Kind): boolean => kinds.length > 1 && k.count < pieces;
	const limited = [...kinds.keys()].filter((k) => scarce(kinds[k]!));
	const sheets = trees.length - 1;
	if (kinds.length === 1) return { costs: [1], target: sheets, limited };
	if (money === 0)
		return { costs: prices.map((p) => (p === 0 ? 1 : sheets + 1)), target: sheets, limited };
	const unit = prices.reduce(gcd, 0);
	const costs = prices.map((p) => p / unit);
	const counts = kinds.map((k) => k.count);
	return { costs, target: nextBelow(costs, counts, money / unit), limited };
}

/** What is known of every layout once it is shown to cost `least` or more, in the units of the aim. */
export function boundBy({ kinds }: SawModel, aim: Aim, least: number, known: Bound): Bound {
	const prices = kinds.map((k) => k.sheet.price);
	const unit = prices.reduce(gcd, 0);
	if (kinds.length === 1 || unit === 0) {
		const sheets = Math.max(known.sheets, least);
		return { sheets, cost: Math.max(known.cost, sheets * prices[0]!) };
	}
	// where nothing is paid for, the aim weighs sheets of two sorts, which says little of either
	if (aim.costs.some((cost, kind) => cost * unit !== prices[kind])) return known;
	const offers = kinds.map((k, kind) => ({ gives: 1, price: prices[kind]!, count: k.count }));
	return { ...known, cost: Math.max(known.cost, nextFrom(offers, least * unit)) };
}

/** The largest sum below `money`, which is 1 or more, that sheets of these costs can come to: between the two lies nothing. */
export function nextBelow(
	costs: readonly number[],
	counts: readonly number[],
	money: number,
): number {
	return sumsBelow(costs, counts, money)?.lastIndexOf(1) ?? money - 1;
}
