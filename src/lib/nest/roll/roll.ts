import { nth, ticks } from '../../measure';
import { rollBound } from './bound';
import { layOutlines } from './outline';
import { layOnPattern } from './pattern-outline';
import { readyRoll, type RollDeck } from './kinds';
import { searchRoll, type DeckLayout, type RollState } from './search';
import type { Budget, Placed, RollAnswer, RollProblem, Search } from '../types';

/**
 * Share of the budget for rectangles when outlines are laid: a good start, and an answer at once.
 */
const RECTANGLE_SHARE = 0.02;

/**
 * Lay blanks on a roll so that the shortest length is pulled. Blanks are turned only as listed and
 * never flipped. Yields the best layout so far, the first one after some milliseconds; returns the
 * best one when the budget is spent or the bound is met. What cannot be laid is in `unplaced`, with
 * the reason. On a cloth with a pattern every start matches it, by outline too.
 */
export function* nestRoll(problem: RollProblem, budget: Budget): Search<RollAnswer> {
	const shaped = problem.pieces.some((piece) => piece.outline !== undefined && piece.count > 0);
	const patterned = problem.repeat > 0 || (problem.drop?.across ?? problem.across ?? 0) > 0;
	if (problem.by !== 'outline' || !shaped) return yield* layRectangles(problem, budget);
	const part = Math.ceil(budget.effort * RECTANGLE_SHARE);
	const first = yield* layRectangles(problem, { seed: budget.seed, effort: part });
	const rest = { seed: budget.seed, effort: budget.effort - first.effort };
	if (patterned) return yield* layOnPattern(problem, first, rest);
	return yield* layOutlines(problem, first, rest);
}

function* layRectangles(problem: RollProblem, budget: Budget): Search<RollAnswer> {
	const deck = readyRoll(problem);
	const search = searchRoll(deck, budget);
	let step = search.next();
	for (; step.done !== true; step = search.next())
		yield { best: answerOf(deck, step.value), effort: step.value.effort };
	return answerOf(deck, step.value);
}

function answerOf(deck: RollDeck, state: RollState): RollAnswer {
	const { best } = state;
	const length = Math.max(0, best.length - deck.gap);
	const left = leftOver(deck, best);
	const unplaced = [...deck.refused, ...left];
	const bound = left.length === 0 ? state.bound : boundOfLaid(deck, best);
	return {
		length: ticks(length),
		placed: placedOf(deck, best),
		unplaced,
		bound: ticks(Math.max(0, bound - deck.gap)),
		proven: unplaced.length === 0 && best.length <= bound,
		effort: state.effort,
	};
}

function laidCounts(deck: RollDeck, layout: DeckLayout): number[] {
	const counts = deck.kinds.map(() => 0);
	for (const spot of layout.spots) counts[spot.kind] = nth(counts, spot.kind) + 1;
	return counts;
}

/**
 * When something is left over the bound speaks of what was laid, so that it never exceeds the
 * length.
 */
function boundOfLaid(deck: RollDeck, layout: DeckLayout): number {
	return rollBound(deck, laidCounts(deck, layout));
}

function leftOver(deck: RollDeck, layout: DeckLayout): RollAnswer['unplaced'] {
	const laid = laidCounts(deck, layout);
	return deck.kinds.flatMap((kind, k) => {
		const count = kind.count - nth(laid, k);
		const why = 'No room was found for it on what is left of the roll.';
		return count > 0 ? [{ id: kind.id, count, why }] : [];
	});
}

/** From the start of the roll on, then across; copies of a blank are numbered in that order. */
function placedOf(deck: RollDeck, layout: DeckLayout): Placed[] {
	const next = new Map<string, number>();
	const spots = [...layout.spots].sort((a, b) => a.x - b.x || a.y - b.y);
	return spots.map((spot) => {
		const kind = nth(deck.kinds, spot.kind);
		const orientation = nth(kind.orientations, spot.orientation);
		const copy = next.get(kind.id) ?? 0;
		next.set(kind.id, copy + 1);
		const { length, width, turn } = orientation;
		return { id: kind.id, copy, x: spot.x, y: spot.y, length, width, turn };
	});
}
