import { leastMoney, leastSheets, leastWhole, nextFrom, type Offer } from './covering';
import { functionsFor, type DualFeasible } from './dual-feasible';
import type { SawModel } from './model';

/**
 * Sheets and money that no layout of all pieces can do without. What is worked out here holds for
 * any way of cutting.
 */
export interface Bound {
	readonly sheets: number;
	readonly cost: number;
}

const MOST_PRODUCTS = 4_000_000; // weights multiplied for one bound: some hundredths of a second
const MOST_SIZES = 40; // eps values tried per side
const MOST_TRIES = 20_000;

/** Area alone, kerf counted, with several kinds of sheet the cheapest that give the area. */
export function areaBound(model: SawModel): Bound {
	let area = 0;
	model.types.forEach((t, i) => {
		if (t.member < 0) area += t.count * pieceShare(model, i, (w, h) => w * h);
	});
	if (area === 0) return { sheets: 0, cost: 0 };
	const offers = offersOf(model, (w, h) => w * h);
	const whole = leastWhole(offers, area, MOST_TRIES);
	return {
		sheets: leastSheets(offers, area),
		cost: finite(whole ?? leastMoney(offers, area)),
	};
}

/** No offers give enough: then nothing is bounded, for some piece stays out. */
function finite(money: number): number {
	return Number.isFinite(money) ? money : 0;
}

function offersOf(model: SawModel, weigh: (w: number, h: number) => number): Offer[] {
	return model.kinds.map((k) => ({
		gives: weigh(k.w, k.h),
		price: k.sheet.price,
		count: k.count,
	}));
}

/** Least weight of one piece of a type: turned if it may be, or as half of its pair. */
function pieceShare(
	model: SawModel,
	type: number,
	weigh: (w: number, h: number) => number,
): number {
	const { w, h, quarter, pair } = model.types[type]!;
	const single = quarter ? Math.min(weigh(w, h), weigh(h, w)) : weigh(w, h);
	return pair < 0 ? single : Math.min(single, pieceShare(model, pair, weigh) / 2);
}

/** The weights of one function for every type's width and height. */
interface Weights {
	readonly f: DualFeasible;
	readonly w: Float64Array;
	readonly h: Float64Array;
}

function weigh(f: DualFeasible, whole: number, model: SawModel): Weights {
	const at = (x: number): number => f(Math.min(x, whole));
	return {
		f,
		w: Float64Array.from(model.types, (t) => at(t.w)),
		h: Float64Array.from(model.types, (t) => at(t.h)),
	};
}

/**
 * Weighed amount of all pieces under one pair of functions. A side too long for the sheet forbids
 * that turn.
 */
function amount(model: SawModel, fits: Fits, a: Weights, b: Weights): number {
	const { types } = model;
	let sum = 0;
	const share = (i: number): number => {
		const straight = fits.straight[i] ? a.w[i]! * b.h[i]! : Infinity;
		return fits.turned[i] ? Math.min(straight, a.h[i]! * b.w[i]!) : straight;
	};
	for (let i = 0; i < types.length; i++) {
		const { count, pair } = types[i]!;
		if (count === 0) continue;
		const single = share(i);
		sum += count * (pair < 0 ? single : Math.min(single, share(pair) / 2));
	}
	return sum;
}

interface Fits {
	readonly straight: readonly boolean[];
	readonly turned: readonly boolean[];
}

function fitsOf({ types, kinds }: SawModel): Fits {
	const some = (w: number, h: number): boolean => kinds.some((k) => w <= k.w && h <= k.h);
	return {
		straight: types.map((t) => some(t.w, t.h)),
		turned: types.map((t) => t.quarter && some(t.h, t.w)),
	};
}

function weightsAlong(model: SawModel, side: 'w' | 'h', most: number): Weights[] {
	const whole = model.kinds.reduce((m, k) => Math.max(m, k[side]), 0);
	const other = side === 'w' ? 'h' : 'w';
	const sizes = model.types.flatMap((t) => (t.quarter ? [t[side], t[other]] : [t[side]]));
	return functionsFor(whole, sizes, most).map((f) => weigh(f, whole, model));
}

/**
 * The area bound and every pair of dual feasible functions; the best of all, for sheets and for
 * money.
 */
export function boundOf(model: SawModel): Bound {
	const area = areaBound(model);
	if (model.types.length === 0 || model.kinds.length === 0) return area;
	const perSide = Math.sqrt(MOST_PRODUCTS / model.types.length);
	const most = Math.max(4, Math.min(MOST_SIZES, Math.floor(perSide / 2) - 4));
	const fits = fitsOf(model);
	const along = weightsAlong(model, 'w', most);
	const across = weightsAlong(model, 'h', most);
	let { sheets, cost } = area;
	for (const a of along)
		for (const b of across) {
			const needed = amount(model, fits, a, b);
			if (needed <= sheets * (1 - 1e-6) && model.kinds.length === 1) continue;
			const offers = offersOf(model, (w, h) => a.f(w) * b.f(h));
			sheets = Math.max(sheets, leastSheets(offers, needed));
			cost = Math.max(cost, leastMoney(offers, needed));
		}
	return {
		sheets,
		cost: nextFrom(
			offersOf(model, () => 1),
			cost,
		),
	};
}
