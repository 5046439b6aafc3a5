/*
 * The least money that buys a given amount, when each kind of sheet gives so much for so much: the last step of every
 * bound on cost.
 */

export interface Offer {
	readonly gives: number;
	readonly price: number; // whole
	readonly count: number; // Infinity: as many as needed
}

const SLIP = 1e-9; // share of the amount that rounding in the last place may have added

function gcd(a: number, b: number): number {
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
 * Cheapest whole sheets that give the amount, by trying kinds in turn from the best rate down; null when it would take
 * more than `most` tries.
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
		if (money + (left * offer.price) / offer.gives >= best - SLIP) return; // no later kind has a better rate
		const full = Math.min(offer.count, Math.ceil(left / offer.gives));
		for (let n = full; n >= 0 && tries <= most; n--)
			visit(kind + 1, left - n * offer.gives, money + n * offer.price);
	};
	visit(0, need, 0);
	return tries > most ? null : best;
}
