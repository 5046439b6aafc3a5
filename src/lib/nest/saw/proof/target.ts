import { nth } from '../../../measure';
import type { Bound } from '../bound';
import { gcd, nextFrom, sumsBelow } from '../covering';
import type { ProofTarget } from './generation';
import type { LayoutSnapshot } from '../search';
import type { Kind, SawModel } from '../model';

/** A target, and what its costs stand for. */
export interface SoughtTarget extends ProofTarget {
	/** owned: of sheets that cost nothing only, where there are others. */
	readonly of: 'sheets' | 'owned' | 'money';
	/** Money in one unit of cost; 0 where sheets are counted. */
	readonly unit: number;
}

/**
 * What is to be shown of a layout: money where kinds differ and some is spent, in units of what all
 * prices are multiples of; else sheets. Where all that is used is owned, sheets to be paid for are
 * no way to use fewer.
 */
export function proofTargetOf(
	{ kinds, demand }: SawModel,
	{ trees }: Pick<LayoutSnapshot, 'trees'>,
): SoughtTarget {
	const pieces = demand.reduce((sum, n) => sum + n, 0);
	const prices = kinds.map((k) => k.sheet.price);
	const money = trees.reduce((sum, tree) => sum + nth(prices, tree.kind), 0);
	const scarce = (k: Kind): boolean => kinds.length > 1 && k.count < pieces;
	const limited = [...kinds.keys()].filter((k) => scarce(nth(kinds, k)));
	const sheets = trees.length - 1;
	if (kinds.length === 1) return { of: 'sheets', unit: 0, costs: [1], goal: sheets, limited };
	const unit = prices.reduce(gcd, 0);
	if (money === 0) {
		const costs = prices.map((p) => (p === 0 ? 1 : sheets + 1));
		return { of: unit === 0 ? 'sheets' : 'owned', unit: 0, costs, goal: sheets, limited };
	}
	const costs = prices.map((p) => p / unit);
	const counts = kinds.map((k) => k.count);
	return { of: 'money', unit, costs, goal: nextBelow(costs, counts, money / unit), limited };
}

/**
 * What is known of every layout once it is shown to cost `least` or more, in the units of the
 * target.
 */
export function boundBy(
	{ kinds }: SawModel,
	target: SoughtTarget,
	least: number,
	known: Bound,
): Bound {
	if (target.of === 'owned') return known; // there may be layouts with other sheets
	if (target.of === 'sheets') {
		const sheets = Math.max(known.sheets, least);
		return { sheets, cost: Math.max(known.cost, sheets * nth(kinds, 0).sheet.price) };
	}
	const offers = kinds.map((k) => ({ gives: 1, price: k.sheet.price, count: k.count }));
	return { ...known, cost: Math.max(known.cost, nextFrom(offers, least * target.unit)) };
}

/**
 * The largest sum below `money`, which is 1 or more, that sheets of these costs can come to:
 * between the two lies nothing.
 */
export function nextBelow(
	costs: readonly number[],
	counts: readonly number[],
	money: number,
): number {
	return sumsBelow(costs, counts, money)?.lastIndexOf(1) ?? money - 1;
}
