import { nth, ticks } from '../../measure';
import {
	GapCheck,
	searchFree,
	type FreeKind,
	type FreeSpot,
	type FreeState,
	type LaidPiece,
	readyShapes,
} from '../shapes';
import { readyRoll, type Unplaced } from './kinds';
import type { Budget, Placed, RollAnswer, RollProblem, RollSpot } from '../types';

interface Answered {
	readonly best: RollAnswer;
	readonly effort: number;
}

/**
 * Lay the outlines of blanks as they are, starting from an answer for their rectangles, which stays
 * the answer until a shorter one is found. Every layout that becomes the answer was checked again
 * on the true outlines.
 */
export function* layOutlines(
	problem: RollProblem,
	byRectangle: RollAnswer,
	budget: Budget,
): Generator<Answered, RollAnswer, void> {
	const { refused } = readyRoll(problem);
	const pieces = problem.pieces.filter((p) => p.count > 0 && !refused.some((u) => u.id === p.id));
	const kinds = readyShapes(pieces, problem.gap);
	const bound = boundByOutline(problem, kinds);
	const strip = { width: problem.width, limit: problem.limit ?? Infinity, gap: problem.gap };
	const from = problem.start ? spotsOf(kinds, problem.start) : null;
	const search = searchFree(kinds, strip, bound, from ? { ...budget, start: from } : budget);
	const start = { ...byRectangle, ...claim(byRectangle, bound) };
	const check = new GapCheck(pieces, problem.gap);
	let best = start;
	let seen: FreeState['spots'] = [];
	for (;;) {
		const step = search.next();
		const effort = byRectangle.effort + step.value.effort;
		if (step.value.spots !== seen) {
			seen = step.value.spots;
			const free = answerOf(kinds, step.value, refused, bound, effort);
			if (isShorter(free, best) && check.passes(laidOf(seen))) best = free;
		}
		if (step.done === true) return { ...best, effort };
		yield { best: { ...best, effort }, effort };
	}
}

/** Null when a blank of the layout is not among the kinds, or cannot lie so. */
function spotsOf(kinds: readonly FreeKind[], start: readonly RollSpot[]): FreeSpot[] | null {
	const spots = start.flatMap(({ id, x, y, turn }): FreeSpot[] => {
		const kind = kinds.findIndex((one) => one.id === id);
		const shape = kinds[kind]?.shapes.find((one) => one.turn === turn);
		return shape ? [{ kind, shape, x, y }] : [];
	});
	return spots.length === kinds.reduce((sum, kind) => sum + kind.count, 0) ? spots : null;
}

export function laidOf(spots: FreeState['spots']): LaidPiece[] {
	return spots.map(({ kind, shape, x, y }) => ({ piece: kind, turn: shape.turn, x, y }));
}

/** By the true areas, gaps not counted, and the longest blank. */
export function boundByOutline(problem: RollProblem, kinds: readonly FreeKind[]): number {
	const area = kinds.reduce((sum, kind) => sum + kind.count * kind.area, 0);
	const longest = kinds.map((kind) => Math.min(...kind.shapes.map((shape) => shape.length)));
	// A hair off the area: arcs make it a computed figure.
	return Math.max(0, Math.ceil((area / problem.width) * (1 - 1e-12)), ...longest);
}

export function claim(answer: RollAnswer, bound: number): Pick<RollAnswer, 'bound' | 'proven'> {
	const all = answer.unplaced.length === 0;
	return {
		bound: ticks(Math.min(bound, answer.length)),
		proven: all && answer.length <= bound,
	};
}

function left(answer: RollAnswer): number {
	return answer.unplaced.reduce((sum, u) => sum + u.count, 0);
}

export function isShorter(a: RollAnswer, b: RollAnswer): boolean {
	return left(a) < left(b) || (left(a) === left(b) && a.length < b.length);
}

export function answerOf(
	kinds: readonly FreeKind[],
	state: FreeState,
	refused: readonly Unplaced[],
	bound: number,
	effort: number,
): RollAnswer {
	const next = new Map<string, number>();
	const spots = [...state.spots].sort((a, b) => a.x - b.x || a.y - b.y);
	const placed = spots.map(({ kind, shape, x, y }): Placed => {
		const { id } = nth(kinds, kind);
		const copy = next.get(id) ?? 0;
		next.set(id, copy + 1);
		return { id, copy, x, y, length: shape.length, width: shape.width, turn: shape.turn };
	});
	const counts = new Map<number, number>();
	for (const kind of state.left) counts.set(kind, (counts.get(kind) ?? 0) + 1);
	const why = 'No room was found for it on what is left of the roll.';
	const over = [...counts].map(([kind, count]) => ({ id: nth(kinds, kind).id, count, why }));
	const bare = { length: ticks(state.length), placed, unplaced: [...refused, ...over], effort };
	const whole = { ...bare, bound: ticks(0), proven: false };
	return { ...whole, ...claim(whole, bound) };
}
