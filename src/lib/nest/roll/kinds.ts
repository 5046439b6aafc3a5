import type { Length } from '../../measure';
import { inflate, type Actual, type Inflated } from '../inflated';
import type { RollPiece, RollProblem } from '../types';

type Turn = 0 | 90 | 180 | 270;

/**
 * One way a kind of blank may lie. The gap is taken into the sizes: m blanks in a row need the sum
 * of their lengths and m - 1 gaps, which is the same as m blanks each longer by one gap on a roll
 * longer by one gap. Likewise the pattern: when every start falls on whole repeats, lengthening
 * each blank to whole repeats loses nothing.
 */
export interface Orientation {
	readonly turn: Turn;
	readonly length: Actual; // as laid
	readonly width: Actual;
	/** Width with its gap. */
	readonly wide: Inflated;
	/** Length with its gap: where the blank ends. */
	readonly reach: Inflated;
	/** Length with its gap, rounded up to the pattern: where the next blank may start. */
	readonly tall: Inflated;
	/** Where in the pattern its corner belongs. */
	readonly along?: number;
	readonly aside?: number;
}

export interface RollKind {
	readonly id: string;
	readonly count: number;
	readonly orientations: readonly Orientation[];
}

/** How the pattern of the cloth falls: see {@link RollProblem}. */
export interface ClothPattern {
	readonly repeat: number; // 0 for none
	readonly across: number; // width of one column, 0 when it need not match across
	readonly drops?: boolean; // half a repeat later in every second column
	/** Some blanks belong elsewhere than where the pattern starts. */
	readonly phased?: boolean;
}

/**
 * A roll problem made ready: gaps and repeats taken into the sizes, impossible blanks set aside.
 */
export interface RollDeck {
	readonly width: Inflated; // usable width
	readonly gap: Length;
	readonly limit: number; // an inflated length; Infinity for an endless roll
	readonly pattern: ClothPattern;
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
	const pattern = patternOf(problem);
	const kinds: RollKind[] = [];
	const refused: Unplaced[] = [];
	for (const piece of problem.pieces) {
		if (piece.count <= 0) continue;
		const orientations = orientationsOf(piece, problem.gap, pattern);
		const why = refusal(orientations, problem);
		const fitting = orientations.filter((o) => fits(o, problem));
		if (why !== null) refused.push({ id: piece.id, count: piece.count, why });
		else kinds.push({ id: piece.id, count: piece.count, orientations: fitting });
	}
	return {
		width: inflate(problem.width, problem.gap),
		gap: problem.gap,
		limit: problem.limit === null ? Infinity : inflate(problem.limit, problem.gap),
		pattern,
		kinds,
		refused,
	};
}

function patternOf(problem: RollProblem): ClothPattern {
	const across = problem.drop?.across ?? problem.across ?? 0;
	return {
		repeat: problem.repeat,
		across,
		drops: problem.drop !== undefined && across > 0,
		phased: problem.pieces.some(
			({ phase }) => phase && (phase.along !== 0 || (across > 0 && phase.across !== 0)),
		),
	};
}

function fits(orientation: Orientation, problem: RollProblem): boolean {
	const long = orientation.length + (orientation.along ?? 0);
	return isNarrow(orientation, problem) && (problem.limit === null || long <= problem.limit);
}

/** Narrow enough for the roll from where its pattern lets it start. */
function isNarrow(orientation: Orientation, problem: RollProblem): boolean {
	return (orientation.aside ?? 0) + orientation.width <= problem.width;
}

/** Why a blank can lie nowhere on this roll, or null when it can. */
function refusal(orientations: readonly Orientation[], problem: RollProblem): string | null {
	if (orientations.length === 0) return 'No turn is allowed for it, so it cannot be laid.';
	const narrow = orientations.filter((o) => isNarrow(o, problem));
	if (narrow.length === 0 && orientations.some((o) => o.width <= problem.width))
		return 'It is wider than the roll from where its place in the pattern falls; move the seam, or choose a wider roll.';
	if (narrow.length === 0)
		return 'It is wider than the usable width of the roll in every turn allowed; split it at a seam or choose a wider roll.';
	if (narrow.some((o) => fits(o, problem))) return null;
	return 'It is longer than what is left on the roll in every turn that fits the width.';
}

/** The ways a rectangle may lie: a half turn looks the same, so at most two. */
function orientationsOf(piece: RollPiece, gap: Length, pattern: ClothPattern): Orientation[] {
	const orientations: Orientation[] = [];
	for (const turn of piece.turns) {
		const quarter = turn === 90 || turn === 270;
		const length = quarter ? piece.width : piece.length;
		const width = quarter ? piece.length : piece.width;
		if (orientations.some((o) => o.length === length && o.width === width)) continue;
		const reach = inflate(length, gap);
		const tall = wholeSteps(reach, pattern);
		orientations.push({
			turn,
			length,
			width,
			wide: inflate(width, gap),
			reach,
			tall,
			...placeIn(piece, pattern),
		});
	}
	return orientations;
}

/**
 * The place of a blank's corner within one column and one repeat; a column on is half a repeat on
 * where the pattern drops.
 */
function placeIn(piece: RollPiece, pattern: ClothPattern): Pick<Orientation, 'along' | 'aside'> {
	const { along, across } = piece.phase ?? { along: 0, across: 0 };
	const { repeat } = pattern;
	// Without a pattern across, or along, every place is as good as any other.
	const column = pattern.across > 0 ? Math.floor(across / pattern.across) : 0;
	return {
		aside: pattern.across > 0 ? across - column * pattern.across : 0,
		along: repeat > 0 ? modulo(along - dropOf(column, pattern), repeat) : 0,
	};
}

const modulo = (a: number, n: number): number => ((a % n) + n) % n;

/** How much later the pattern starts in a column. */
function dropOf(column: number, pattern: ClothPattern): number {
	return pattern.drops && modulo(column, 2) === 1 ? Math.floor(pattern.repeat / 2) : 0;
}

/** Rounded up to the steps on which a start may fall. */
function wholeSteps(length: Inflated, pattern: ClothPattern): Inflated {
	const step = stepOf(pattern);
	return step === 0 ? length : ((Math.ceil(length / step) * step) as Inflated);
}

/**
 * The smallest distance between two possible starts: half a repeat when the pattern drops, a tick
 * when that is not whole; 0 when starts fall anywhere.
 */
export function stepOf(pattern: ClothPattern): number {
	if (pattern.repeat === 0 || pattern.phased) return 0;
	if (!pattern.drops) return pattern.repeat;
	return pattern.repeat % 2 === 0 ? pattern.repeat / 2 : 1;
}

/**
 * The first start at or after `from` where the pattern is right for a blank whose lower side lies
 * at `side`.
 */
export function startAt(
	from: number,
	side: number,
	pattern: ClothPattern,
	{ along = 0, aside = 0 }: Pick<Orientation, 'along' | 'aside'>,
): number {
	if (pattern.repeat === 0) return from;
	const column = pattern.across > 0 ? Math.floor((side - aside) / pattern.across) : 0;
	const offset = dropOf(column, pattern) + along;
	return Math.max(0, Math.ceil((from - offset) / pattern.repeat)) * pattern.repeat + offset;
}

/** The first place across at or after `from` where the pattern lets a blank's lower side lie. */
export function sideAt(
	from: number,
	pattern: ClothPattern,
	{ aside = 0 }: Pick<Orientation, 'aside'>,
): number {
	if (pattern.across === 0) return from;
	return Math.max(0, Math.ceil((from - aside) / pattern.across)) * pattern.across + aside;
}
