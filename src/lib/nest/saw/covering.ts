/*
 * The least money that buys a given amount, when each kind of sheet gives so much for so much: the
 * last step of every bound on cost.
 */

export interface Offer {
	readonly gives: number;
	readonly price: number; // whole
	readonly count: number; // Infinity: as many as needed
}

const SLIP = 1e-9; // share of the amount that rounding in the last place may have added

export function gcd(a: number, b: number): number {
	return b === 0 ? a : gcd(b, a % b);
}

/** Cheapest sheets by the piece, parts of a sheet allowed: never above the true cost. */
export function leastMoney(offers: readonly Offer[], amount: number): number {
	const able = offers.filter((o) => o.gives > 0);
	able.sort((a, b) => a.price * b.gives - b.price * a.gives);
	let left = amount * (1 - SLIP);
	let money = 0;
	for (const { gives, price, count } of able) {
		if (left <= 0) break;
		const used = Math.min(left, gives * count);
		money += (price * used) / gives;
		left -= used;
	}
	const unit = able.reduce((u, o) => gcd(u, o.price), 0);
	return unit === 0 ? 0 : Math.ceil(money / unit - SLIP) * unit;
}

/** Fewest sheets that give the amount. */
export function leastSheets(offers: readonly Offer[], amount: number): number {
	const able = offers.filter((o) => o.gives > 0).sort((a, b) => b.gives - a.gives);
	let left = amount * (1 - SLIP);
	let sheets = 0;
	for (const { gives, count } of able) {
		if (left <= 0) break;
		const used = Math.min(Math.ceil(left / gives), count);
		sheets += used;
		left -= used * gives;
	}
	return sheets;
}

/**
 * Cheapest whole sheets that give the amount, by trying kinds in turn from the best rate down; null
 * when it would take more than `most` tries.
 */
export function leastWhole(offers: readonly Offer[], amount: number, most: number): number | null {
	const able = offers
		.filter((o) => o.gives > 0)
		.sort((a, b) => a.price * b.gives - b.price * a.gives);
	const need = amount * (1 - SLIP);
	let best = Infinity;
	let tries = 0;
	const visit = (kind: number, left: number, money: number): void => {
		if (left <= 0) {
			best = Math.min(best, money);
			return;
		}
		const offer = able[kind];
		if (!offer || ++tries > most) return;
		// no later kind has a better rate
		if (money + (left * offer.price) / offer.gives >= best - SLIP) return;
		const full = Math.min(offer.count, Math.ceil(left / offer.gives));
		for (let n = full; n >= 0 && tries <= most; n--)
			visit(kind + 1, left - n * offer.gives, money + n * offer.price);
	};
	visit(0, need, 0);
	return tries > most ? null : best;
}

const MOST_SUMS = 2_000_000; // looked through in some hundredths of a second

/**
 * Which sums below `end` whole sheets of these whole costs can come to, 1 or 0 for each from 0 on;
 * null when they are too many to look through.
 */
export function sumsBelow(
	costs: readonly number[],
	counts: readonly number[],
	end: number,
): Uint8Array | null {
	if (end > MOST_SUMS) return null;
	const reached = new Uint8Array(end);
	reached[0] = 1;
	costs.forEach((cost, kind) => {
		if (cost === 0) return;
		// sheets of this kind that a sum needs at least, where the kinds before do not come to it
		const taken = new Uint32Array(end);
		for (let sum = cost; sum < end; sum++) {
			if (reached[sum] || !reached[sum - cost] || taken[sum - cost]! >= counts[kind]!) continue;
			reached[sum] = 1;
			taken[sum] = taken[sum - cost]! + 1;
		}
	});
	return reached;
}

/**
 * The least money from `money` on that whole sheets come to; `money` itself when that is not to be
 * found out.
 */
export function nextFrom(offers: readonly Offer[], money: number): number {
	const unit = offers.reduce((u, o) => gcd(u, o.price), 0);
	if (unit === 0 || !Number.isFinite(money)) return money;
	const costs = offers.map((o) => o.price / unit);
	const least = Math.ceil(money / unit);
	const counts = offers.map((o) => o.count);
	const at = sumsBelow(costs, counts, least + Math.max(...costs) + 1)?.indexOf(1, least) ?? -1;
	return at < 0 ? money : at * unit;
}
