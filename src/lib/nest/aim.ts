import type { Aim } from './generation';
import type { Kept } from './laying';
import type { Kind, SawModel } from './saw-model';

const MOST_UNITS = 2_000_000; // sums of prices looked through: some hundredths of a second

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

function gcd(a: number, b: number): number {
	return b === 0 ? a : gcd(b, a % b);
}

/**
 * The largest sum below `money` that sheets of these costs can come to: between the two no layout costs anything. Whole
 * numbers; `money` is 1 or more.
 */
export function nextBelow(
	costs: readonly number[],
	counts: readonly number[],
	money: number,
): number {
	if (money > MOST_UNITS) return money - 1;
	const reached = new Uint8Array(money);
	reached[0] = 1;
	costs.forEach((cost, kind) => {
		if (cost === 0) return;
		// sheets of this kind that a sum needs at least, where the kinds before do not come to it
		const taken = new Uint32Array(money);
		for (let sum = cost; sum < money; sum++) {
			if (reached[sum] || !reached[sum - cost] || taken[sum - cost]! >= counts[kind]!) continue;
			reached[sum] = 1;
			taken[sum] = taken[sum - cost]! + 1;
		}
	});
	return reached.lastIndexOf(1);
}
