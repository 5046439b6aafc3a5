import { nth } from '../../measure';
import { random } from '../random';
import {
	columnOf,
	fillPattern,
	firstOrders,
	GapCheck,
	type Lattice,
	type PatternStrip,
	readyShapes,
} from '../shapes';
import { readyRoll, type RollDeck, sideAt, startAt } from './kinds';
import { answerOf, boundByOutline, claim, isShorter, laidOf } from './outline';
import type { Budget, RollAnswer, RollProblem, Search } from '../types';

/** Work of the column filler for one unit, as on plain cloth. */
const STRETCHES_PER_UNIT = 400;

/**
 * Lay outlines as they are on a cloth with a pattern: each starts where the pattern wants it, so
 * they are never pushed about, only laid one by one in several orders, then in orders changed at
 * random. The answer for rectangles stays until a shorter one is found; every layout that becomes
 * the answer was checked again on the true outlines.
 */
export function* layOnPattern(
	problem: RollProblem,
	byRectangle: RollAnswer,
	budget: Budget,
): Search<RollAnswer> {
	const deck = readyRoll(problem);
	const { refused } = deck;
	const pieces = problem.pieces.filter((p) => p.count > 0 && !refused.some((u) => u.id === p.id));
	const kinds = readyShapes(pieces, problem.gap);
	const bound = boundByOutline(problem, kinds);
	const on = patternStrip(problem, deck);
	const check = new GapCheck(pieces, problem.gap);
	const stream = random(budget.seed);
	let best = { ...byRectangle, ...claim(byRectangle, bound) };
	let spent = 0;
	const first = firstOrders(kinds);
	let order = nth(first, 0);
	let found: RollAnswer | null = null;
	for (let n = 0; spent < budget.effort && order.length > 0 && !best.proven; n++) {
		const next = first[n] ?? changed(order, stream.int(order.length), stream.int(order.length));
		const filled = fillPattern(kinds, next, on);
		spent += Math.ceil(filled.work / STRETCHES_PER_UNIT) + 1;
		const effort = byRectangle.effort + spent;
		const answer = answerOf(kinds, { ...filled, effort }, refused, bound, effort);
		if (found === null || !isShorter(found, answer)) [order, found] = [next, answer];
		if (isShorter(answer, best) && check.passes(laidOf(filled.spots))) best = answer;
		yield { best: { ...best, effort }, effort };
	}
	return { ...best, effort: byRectangle.effort + spent };
}

function patternStrip(problem: RollProblem, deck: RollDeck): PatternStrip {
	const strip = { width: problem.width, limit: problem.limit ?? Infinity };
	const column = columnOf(strip);
	return { strip, column, lattice: latticeOf(deck, column) };
}

/** Where the deck's kinds may lie; along a cloth that repeats across only, at every column. */
function latticeOf({ pattern, kinds }: RollDeck, column: number): Lattice {
	const repeat = pattern.repeat > 0 ? pattern.repeat : column;
	const own = kinds.map((kind) => nth(kind.orientations, 0));
	const starts = own.map(({ along = 0 }) => {
		const later = pattern.drops ? [along + Math.floor(pattern.repeat / 2)] : [];
		return [along, ...later].map((start) => start % repeat).sort((a, b) => a - b);
	});
	return {
		repeat,
		startsOf: (kind) => nth(starts, kind),
		sideAt(kind, x, from) {
			const lies = nth(own, kind);
			const side = sideAt(from, pattern, lies);
			const isRight = pattern.repeat === 0 || (x - startAt(0, side, pattern, lies)) % repeat === 0;
			// Where it does not start in this column it does in the next one, half a repeat on.
			return isRight || pattern.across === 0 ? side : side + pattern.across;
		},
	};
}

function changed(order: readonly number[], a: number, b: number): number[] {
	const next = [...order];
	next.splice(b, 0, ...next.splice(a, 1));
	return next;
}
