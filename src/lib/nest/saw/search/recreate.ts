import type { PartialLayout } from './partial-layout';
import type { Random } from '../../random';

/** What puts pieces in order before they are laid: the largest by some measure go first. */
export type OrderKey = 'area' | 'long' | 'sum' | 'w' | 'h' | 'short';

export function keyOf(partial: PartialLayout, key: OrderKey, type: number): number {
	const { w, h, area } = partial.search.model;
	const [pw, ph] = [w[type]!, h[type]!];
	if (key === 'area') return area[type]!;
	if (key === 'long') return Math.max(pw, ph);
	if (key === 'sum') return pw + ph;
	if (key === 'w') return pw;
	if (key === 'h') return ph;
	return Math.min(pw, ph);
}

/**
 * Sheets up to which rooms are listed for one type at a time: each list is out of date once that is
 * laid anyway.
 */
const FEW = 3;

/**
 * Types with something out, by falling key; `noise` 0.1 shakes each key by up to a tenth. Ties fall
 * by type.
 */
export function typesInOrder(
	partial: PartialLayout,
	key: OrderKey | 'random',
	noise: number,
): number[] {
	const { dice, orderKeys: keys } = partial.search;
	partial.tidy();
	const types = partial.outTypes.slice();
	for (let i = 0; i < types.length; i++) {
		const base = key === 'random' ? dice.unit() : keyOf(partial, key, types[i]!);
		keys[i] = noise > 0 ? base * (1 - noise + 2 * noise * dice.unit()) : base;
	}
	if (types.length <= 64) return sortFew(types, keys);
	const rank = types.map((type, i) => ({ type, k: keys[i]! }));
	return rank.sort((a, b) => b.k - a.k || a.type - b.type).map((r) => r.type);
}

/** In place, by falling key, ties by type. */
function sortFew(types: number[], keys: Float64Array): number[] {
	for (let i = 1; i < types.length; i++) {
		const type = types[i]!;
		const key = keys[i]!;
		let j = i;
		for (; j > 0 && (keys[j - 1]! < key || (keys[j - 1] === key && types[j - 1]! > type)); j--) {
			types[j] = types[j - 1]!;
			keys[j] = keys[j - 1]!;
		}
		types[j] = type;
		keys[j] = key;
	}
	return types;
}

/** Draws a key for one step of the search; half the time with noise. */
export function drawOrder(partial: PartialLayout): number[] {
	const { dice } = partial.search;
	const draw = dice.unit();
	const noise = dice.unit() < 0.5 ? 0.1 : 0;
	if (draw < 0.45) return typesInOrder(partial, 'area', noise);
	if (draw < 0.6) return typesInOrder(partial, 'long', noise);
	if (draw < 0.7) return typesInOrder(partial, 'sum', noise);
	if (draw < 0.8) return typesInOrder(partial, 'w', noise);
	if (draw < 0.9) return typesInOrder(partial, 'h', noise);
	return typesInOrder(partial, 'random', 0);
}

/**
 * Chooses the kind of a new sheet for a piece of the type among those allowed at this limit; -1 for
 * none.
 */
export type SheetOpening = (partial: PartialLayout, type: number, limit: number) => number;

/**
 * Above 1: of kinds at the same rate the larger one, which wastes less; it is shrunk later if it
 * stays empty.
 */
const LARGER = 1.3;

/**
 * The kind with the least cost for its area; `shake` 0.3 makes that up to 30 % dearer or cheaper by
 * lot.
 */
export function cheapestOpening(shake: number): SheetOpening {
	return (partial, type, limit) => {
		const { model, openable } = partial.search;
		const { kinds } = model;
		let best = -1;
		let least = Infinity;
		for (const kind of openable) {
			if (!partial.opens(kind, type, limit)) continue;
			const { w, h, cost } = kinds[kind]!;
			const rate = (cost / (w * h) ** LARGER) * (1 + shake * (2 * partial.search.dice.unit() - 1));
			if (rate >= least) continue;
			least = rate;
			best = kind;
		}
		return best;
	};
}

/** Looking through so many kinds is work, and is counted. */
const MANY = 64;

/** Any kind that takes the piece, each as likely as the other. */
export const anyOpening: SheetOpening = (partial, type, limit) => {
	const { search } = partial;
	const { openable } = search;
	if (openable.length > MANY) search.work += openable.length;
	let count = 0;
	for (const kind of openable) count += Number(partial.opens(kind, type, limit));
	if (count === 0) return -1;
	let skip = count === 1 ? 0 : search.dice.int(count);
	for (const kind of openable) if (partial.opens(kind, type, limit) && skip-- === 0) return kind;
	return -1;
};

function openFor(
	partial: PartialLayout,
	type: number,
	limit: number,
	opening: SheetOpening,
): boolean {
	const kind = opening(partial, type, limit);
	if (kind < 0) return false;
	if (partial.open(kind, type)) return true;
	// the limits of the saw forbid this kind: any other that takes it
	for (const other of partial.search.openable)
		if (partial.opens(other, type, limit) && partial.open(other, type)) return true;
	return false;
}

function layAll(partial: PartialLayout, type: number, limit: number, opening: SheetOpening): void {
	while (partial.out[type]! > 0)
		if (!partial.place(type) && !openFor(partial, type, limit, opening)) return;
}

/**
 * Lays what is out in the order given, opening sheets as far as the limit allows. What fails once
 * stays out.
 */
export function recreate(
	partial: PartialLayout,
	order: readonly number[],
	limit: number,
	opening: SheetOpening,
): void {
	const eachAlone = partial.sheets.length <= FEW && !partial.search.model.paired;
	if (!eachAlone) measure(partial, partial.outTypes);
	for (const type of order) {
		if (eachAlone) measure(partial, [type]);
		layAll(partial, type, limit, opening);
	}
	splitPairs(partial, limit, opening);
	partial.tidy();
}

/** Notes the smallest of the types that rooms are now looked for. */
function measure({ search }: PartialLayout, types: readonly number[]): void {
	const { model } = search;
	if (model.paired) return; // the least of all holds, for pairs may come apart
	let leastW = Infinity;
	let leastH = Infinity;
	for (const type of types) {
		const w = model.w[type]!;
		const h = model.h[type]!;
		const turns = model.turns[type] === 1;
		leastW = Math.min(leastW, turns && h < w ? h : w);
		leastH = Math.min(leastH, turns && w < h ? w : h);
	}
	search.leastW = leastW;
	search.leastH = leastH;
}

/** Pairs that found no room are two pieces again, each with its own chance. */
function splitPairs(partial: PartialLayout, limit: number, opening: SheetOpening): void {
	const { types } = partial.search.model;
	if (!partial.search.model.paired) return;
	for (const type of partial.outTypes.slice()) {
		const member = types[type]!.member;
		if (member < 0 || partial.out[type] === 0) continue;
		partial.putOut(member, 2 * partial.out[type]!);
		partial.out[type] = 0;
		layAll(partial, member, limit, opening);
	}
}

/**
 * Tapered pieces that are out are paired head to tail, as many as there are, with the given chance
 * per type.
 */
export function makePairs(partial: PartialLayout, chance: number, dice: Random): void {
	const { types, paired } = partial.search.model;
	if (!paired) return;
	for (const type of partial.outTypes.slice()) {
		const { member, pair } = types[type]!;
		// a pair that was taken off is broken up first, so that its pieces may find other partners
		// or none
		if (member >= 0 && partial.out[type]! > 0) {
			partial.putOut(member, 2 * partial.out[type]!);
			partial.out[type] = 0;
		}
		const single = member >= 0 ? member : type;
		const couple = member >= 0 ? type : pair;
		if (couple < 0 || partial.out[single]! < 2 || dice.unit() >= chance) continue;
		partial.putOut(couple, partial.out[single]! >> 1);
		partial.out[single]! &= 1;
	}
	partial.tidy();
}
