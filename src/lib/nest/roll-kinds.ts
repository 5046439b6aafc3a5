import type { RollPiece, RollProblem } from './types';

type Turn = 0 | 90 | 180 | 270;

/**
 * One way a kind of blank may lie. The gap is taken into the sizes: m blanks in a row need the sum of their lengths
 * and m - 1 gaps, which is the same as m blanks each longer by one gap on a roll longer by one gap. Likewise the
 * pattern: when every start falls on whole repeats, lengthening each blank to whole repeats loses nothing.
 */
export interface Lay {
	readonly turn: Turn;
	readonly length: number; // as laid, ticks
	readonly width: number;
	/** Width with its gap. */
	readonly wide: number;
	/** Length with its gap: where the blank ends. */
	readonly reach: number;
	/** Length with its gap, rounded up to the pattern: where the next blank may start. */
	readonly tall: number;
}

export interface RollKind {
	readonly id: string;
	readonly count: number;
	readonly lays: readonly Lay[];
}

/** How the pattern of the cloth falls: see {@link RollProblem}. */
export interface Pattern {
	readonly repeat: number; // 0 for none
	readonly across: number; // width of one column of a half-drop pattern, 0 for a straight one
}

/** A roll problem made ready: gaps and repeats taken into the sizes, impossible blanks set aside. */
export interface RollDeck {
	readonly width: number; // usable width and one gap
	readonly gap: number;
	readonly limit: number; // limit and one gap; Infinity for an endless roll
	readonly pattern: Pattern;
	readonly kinds: readonly RollKind[];
	readonly refused: readonly Unplaced[];
}

export interface Unplaced {
	readonly id: string;
	readonly count: number;
	readonly why: string;
}

/** Ready a roll problem for laying by rectangles. */
export function readyRoll(problem: RollProblem): RollDeck {
	const pattern: Pattern = { repeat: problem.repeat, across: problem.drop?.across ?? 0 };
	const kinds: RollKind[] = [];
	const refused: Unplaced[] = [];
	for (const piece of problem.pieces) {
		if (piece.count <= 0) continue;
		const lays = laysOf(piece, problem.gap, pattern);
		const why = refusal(lays, problem);
		const fitting = lays.filter((lay) => fits(lay, problem));
		if (why !== null) refused.push({ id: piece.id, count: piece.count, why });
		else kinds.push({ id: piece.id, count: piece.count, lays: fitting });
	}
	return {
		width: problem.width + problem.gap,
		gap: problem.gap,
		limit: problem.limit === null ? Infinity : problem.limit + problem.gap,
		pattern,
		kinds,
		refused,
	};
}

function fits(lay: Lay, problem: RollProblem): boolean {
	return lay.width <= problem.width && (problem.limit === null || lay.length <= problem.limit);
}

/** Why a blank can lie nowhere on this roll, or null when it can. */
function refusal(lays: readonly Lay[], problem: RollProblem): string | null {
	if (lays.length === 0) return 'No turn is allowed for it, so it cannot be laid.';
	const narrow = lays.filter((lay) => lay.width <= problem.width);
	if (narrow.length === 0)
		return 'It is wider than the usable width of the roll in every turn allowed; split it at a seam or choose a wider roll.';
	if (narrow.some((lay) => fits(lay, problem))) return null;
	return 'It is longer than what is left on the roll in every turn that fits the width.';
}

/** The ways a rectangle may lie: a half turn looks the same, so at most two. */
function laysOf(piece: RollPiece, gap: number, pattern: Pattern): Lay[] {
	const lays: Lay[] = [];
	for (const turn of piece.turns) {
		const quarter = turn === 90 || turn === 270;
		const length = quarter ? piece.width : piece.length;
		const width = quarter ? piece.length : piece.width;
		if (lays.some((lay) => lay.length === length && lay.width === width)) continue;
		const reach = length + gap;
		lays.push({ turn, length, width, wide: width + gap, reach, tall: wholeSteps(reach, pattern) });
	}
	return lays;
}

/** Rounded up to the steps on which a start may fall. */
function wholeSteps(length: number, pattern: Pattern): number {
	const step = stepOf(pattern);
	return step === 0 ? length : Math.ceil(length / step) * step;
}

/** The smallest distance between two possible starts: half a repeat when the pattern drops, a tick when that is not whole. */
export function stepOf(pattern: Pattern): number {
	if (pattern.repeat === 0) return 0;
	if (pattern.across === 0) return pattern.repeat;
	return pattern.repeat % 2 === 0 ? pattern.repeat / 2 : 1;
}

/** The first start at or after `from` where the pattern is right for a blank whose side lies at `across`. */
export function startAt(from: number, across: number, pattern: Pattern): number {
	if (pattern.repeat === 0) return from;
	const odd = pattern.across > 0 && Math.floor(across / pattern.across) % 2 === 1;
	const offset = odd ? Math.floor(pattern.repeat / 2) : 0;
	return Math.ceil((from - offset) / pattern.repeat) * pattern.repeat + offset;
}
