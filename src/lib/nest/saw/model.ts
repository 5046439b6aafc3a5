import { nth, sayLengths, ticks, type Length, type Ruler } from '../../measure';
import { deflate, inflate, type Actual, type Inflated } from '../inflated';
import { taperOf, type Taper } from './pairs';
import type { Piece, SawProblem, Sheet } from '../types';

/*
 * The saw problem as its search sees it. Every piece and every sheet is made one kerf longer and
 * wider, which turns sum(w) + (m - 1) kerf <= W into sum(w + kerf) <= W + kerf: from here on there
 * is no kerf, and the fit stays exact. Equal pieces are one type whatever they are called, in an
 * order that depends on sizes alone, so that the order of the list asked for cannot change the
 * layout.
 */

/** A kind of sheet the search may open. Sizes are the usable area, one kerf added. */
export interface Kind {
	readonly sheet: Sheet;
	readonly w: Inflated;
	readonly h: Inflated;
	readonly count: number; // Infinity: as many as needed
	/**
	 * What opening one costs in the search: money first, then the rank of its material; a whole
	 * number.
	 */
	readonly cost: number;
}

/** Pieces of one size. A pair is a type of its own that uses up two of its member. */
export interface PieceType {
	readonly pieces: readonly Piece[]; // empty for a pair
	readonly w: Inflated; // along x before turning
	readonly h: Inflated;
	readonly quarter: boolean; // may lie turned by a quarter
	readonly count: number;
	/** For a pair: index of the type it is made of; else -1. */
	readonly member: number;
	/** Index of the pair that two of these make; -1 when they make none. */
	readonly pair: number;
	readonly taper: Taper | null;
}

export interface SawModel {
	readonly problem: SawProblem;
	readonly kerf: Length;
	readonly kinds: readonly Kind[];
	readonly types: readonly PieceType[];
	/** Width and height of each type, inflated; index alongside `types`. */
	readonly w: Int32Array;
	readonly h: Int32Array;
	readonly turns: Uint8Array;
	readonly area: Float64Array;
	/** How many of each type are to be placed; 0 for pairs, which are made on the way. */
	readonly demand: Int32Array;
	/** Does any type make pairs? */
	readonly paired: boolean;
	/**
	 * Smallest width and height of anything to be placed, as it may lie: a smaller room is no slot.
	 */
	readonly leastW: number;
	readonly leastH: number;
	/** Pieces that no sheet takes, each with the reason. */
	readonly impossible: readonly { readonly piece: Piece; readonly why: string }[];
}

const SHARE_STEPS = 1000;
/**
 * Owned sheets are saved at the expense of offcuts, bought ones at the expense of both; money
 * stands above all three.
 */
const RANK_WEIGHT = [1, 8, 16];

export function usable(sheet: Sheet): { length: Actual; width: Actual } {
	return {
		length: ticks(sheet.length - sheet.trim.left - sheet.trim.right),
		width: ticks(sheet.width - sheet.trim.bottom - sheet.trim.top),
	};
}

/** A sheet of the stock that is not used up, with its usable size, one kerf added. */
interface Open {
	readonly sheet: Sheet;
	readonly w: Inflated;
	readonly h: Inflated;
}

function openSheets(problem: SawProblem): Open[] {
	return problem.sheets.flatMap((sheet) => {
		const { length, width } = usable(sheet);
		if (length <= 0 || width <= 0 || sheet.count === 0) return [];
		return [{ sheet, w: inflate(length, problem.kerf), h: inflate(width, problem.kerf) }];
	});
}

function fits(piece: Piece, { w, h }: Open, kerf: Length): boolean {
	const [length, width] = [inflate(piece.length, kerf), inflate(piece.width, kerf)];
	return (length <= w && width <= h) || (piece.turns === 'any' && width <= w && length <= h);
}

/**
 * Sheets worth opening, cheapest first. Left out are those that hold no piece and those that
 * another kind, to be had without end, replaces for no more: so such sheets on the rack can never
 * change the plan.
 */
function kindsOf(problem: SawProblem, open: readonly Open[]): Kind[] {
	const pieces = problem.pieces.filter((p) => p.count > 0);
	const useful = open.filter((s) => pieces.some((p) => fits(p, s, problem.kerf)));
	const areaOf = ({ sheet }: Open): number => usable(sheet).length * usable(sheet).width;
	const largest = Math.max(1, ...useful.map(areaOf));
	const count = pieces.reduce((sum, p) => sum + p.count, 0);
	// no sum of the lesser aims outweighs one unit of money
	const moneyUnit = SHARE_STEPS * 16 * (count + 1) + 1;
	const cost = (s: Open): number =>
		s.sheet.price * moneyUnit +
		Math.max(1, Math.ceil((areaOf(s) / largest) * SHARE_STEPS)) * (RANK_WEIGHT[s.sheet.rank] ?? 16);
	const kinds = useful
		.map((s) => ({ ...s, count: s.sheet.count ?? Infinity, cost: cost(s) }))
		.sort(
			(a, b) => a.cost - b.cost || a.w - b.w || a.h - b.h || (a.sheet.id < b.sheet.id ? -1 : 1),
		);
	// a larger sheet may lie beyond the limits of the saw where a smaller one does not
	if (problem.stages !== null || problem.fenceLimit !== null || problem.narrowestRip !== null)
		return kinds;
	return kinds.filter((k) => !kinds.some((other) => replaces(other, k)));
}

function replaces(other: Kind, k: Kind): boolean {
	return other.count === Infinity && other.cost < k.cost && other.w >= k.w && other.h >= k.h;
}

const MILLIMETRES: Ruler = { unit: 'mm', fraction: 32, decimal: '.' };

/** The ruler that lengths in words are told on. */
export const wordsOf = ({ ruler }: Pick<SawProblem, 'ruler'>): Ruler => ruler ?? MILLIMETRES;

function whyImpossible(piece: Piece, kinds: readonly Open[], problem: SawProblem): string | null {
	const k = problem.kerf;
	const size = (l: Actual, w: Actual): string => sayLengths([l, w], wordsOf(problem), ' x ');
	const [length, width] = [inflate(piece.length, k), inflate(piece.width, k)];
	const straight = kinds.some((s) => length <= s.w && width <= s.h);
	const turned = kinds.some((s) => width <= s.w && length <= s.h);
	if (straight || (turned && piece.turns === 'any')) return null;
	const what = `Piece ${piece.id} measures ${size(piece.length, piece.width)}`;
	if (kinds.length === 0) return `${what}; there is no sheet in the stock to cut it from.`;
	if (turned)
		return `${what}; it fits a sheet only when turned by a quarter, and its grain does not allow that.`;
	const big = kinds.reduce((a, b) => (b.w * b.h > a.w * a.h ? b : a));
	return `${what}; that is more than every sheet gives once its trim is off, the largest being ${size(deflate(big.w, k), deflate(big.h, k))}.`;
}

function keyOf(piece: Piece): { w: Actual; h: Actual; quarter: boolean; key: string } {
	const quarter = piece.turns === 'any' && piece.length !== piece.width;
	const lie = quarter && piece.length < piece.width;
	const [w, h] = lie ? [piece.width, piece.length] : [piece.length, piece.width];
	const taper = taperOf(piece);
	return {
		w,
		h,
		quarter,
		key: `${w} ${h} ${quarter} ${taper ? `${taper.key} ${lie} ${piece.turns}` : ''}`,
	};
}

interface Draft {
	w: Actual;
	h: Actual;
	quarter: boolean;
	key: string;
	pieces: Piece[];
}

function draftTypes(pieces: readonly Piece[]): Draft[] {
	const drafts = new Map<string, Draft>();
	for (const piece of pieces) {
		const { w, h, quarter, key } = keyOf(piece);
		const draft = drafts.get(key) ?? { w, h, quarter, key, pieces: [] };
		draft.pieces.push(piece);
		drafts.set(key, draft);
	}
	return [...drafts.values()].sort(
		(a, b) =>
			b.w * b.h - a.w * a.h ||
			b.w - a.w ||
			Number(a.quarter) - Number(b.quarter) ||
			(a.key < b.key ? -1 : 1),
	);
}

/**
 * Types of the pieces, then one type for each pair that some sheet takes and that is smaller than
 * two rectangles.
 */
function typesOf(drafts: readonly Draft[], kinds: readonly Kind[], kerf: Length): PieceType[] {
	const singles = drafts.map((d) => ({
		pieces: [...d.pieces].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)),
		w: inflate(d.w, kerf),
		h: inflate(d.h, kerf),
		quarter: d.quarter,
		count: d.pieces.reduce((sum, p) => sum + p.count, 0),
		member: -1,
		pair: -1,
		taper: taperOf(nth(d.pieces, 0)),
	}));
	const pairs: PieceType[] = [];
	singles.forEach((single, i) => {
		const piece = nth(single.pieces, 0);
		const pair = single.taper?.pair(piece, kerf);
		if (!pair || single.count < 2) return;
		const [w, h] = [inflate(ticks(pair.length), kerf), inflate(ticks(pair.width), kerf)];
		const quarter = piece.turns === 'any' && w !== h;
		const fits = kinds.some((k) => (w <= k.w && h <= k.h) || (quarter && h <= k.w && w <= k.h));
		if (!fits || w * h >= 2 * single.w * single.h) return;
		single.pair = singles.length + pairs.length;
		pairs.push({ pieces: [], w, h, quarter, count: 0, member: i, pair: -1, taper: single.taper });
	});
	return [...singles, ...pairs];
}

/**
 * The problem in the search's own numbers. Lengths are whole; a fraction is a bug of the caller.
 */
export function sawModel(problem: SawProblem): SawModel {
	const open = openSheets(problem);
	const kinds = kindsOf(problem, open);
	const judged = problem.pieces
		.filter((p) => p.count > 0)
		.map((piece) => ({ piece, why: whyImpossible(piece, open, problem) }));
	const possible = judged.flatMap((j) => (j.why === null ? [j.piece] : []));
	const types = typesOf(draftTypes(possible), kinds, problem.kerf);
	return {
		problem,
		kerf: problem.kerf,
		kinds,
		types,
		w: Int32Array.from(types, (t) => t.w),
		h: Int32Array.from(types, (t) => t.h),
		turns: Uint8Array.from(types, (t) => Number(t.quarter)),
		area: Float64Array.from(types, (t) => t.w * t.h),
		demand: Int32Array.from(types, (t) => t.count),
		paired: types.some((t) => t.member >= 0),
		leastW: types.reduce((least, t) => Math.min(least, t.w, t.quarter ? t.h : t.w), Infinity),
		leastH: types.reduce((least, t) => Math.min(least, t.h, t.quarter ? t.w : t.h), Infinity),
		impossible: judged.flatMap((j) => (j.why === null ? [] : [{ piece: j.piece, why: j.why }])),
	};
}
