import {
	nestRoll,
	nestRouter,
	nestSaw,
	type Budget,
	type RollAnswer,
	type Search,
	type SheetsAnswer,
} from '../../lib/nest';
import { rollJson, sheetsJson } from './answer';
import type { NestProblem } from './problem';

/**
 * How long to search: so many units of work, or until so many seconds are over, whichever is asked
 * for.
 */
export interface EffortLimit {
	readonly seed: number;
	readonly effort: number | null;
	readonly seconds: number | null;
}

/**
 * Units of work when nothing is asked for: about a second on a hard problem; a proven answer stops
 * at once.
 */
const EFFORT = 100_000;
/**
 * Budget a second under the clock: about what a machine of today does, so that the last share of a
 * search, for offcuts and settings, is reached.
 */
const ROUND = 90_000;

/** Searches and gives the answer as it is printed. `clock`: milliseconds from any moment on. */
export function answerNest(
	nest: NestProblem,
	patience: EffortLimit,
	clock = () => performance.now(),
): { readonly seconds: number } {
	const from = clock();
	const spent = () => (clock() - from) / 1000;
	if (nest.kind === 'roll') {
		const answer = within((budget) => nestRoll(nest.problem, budget), rollBetter, patience, spent);
		return { ...rollJson(answer), seconds: rounded(spent()) };
	}
	const search = (budget: Budget) =>
		nest.kind === 'saw' ? nestSaw(nest.problem, budget) : nestRouter(nest.problem, budget);
	const answer = within(search, sheetsBetter, patience, spent);
	return { ...sheetsJson(answer), seconds: rounded(spent()) };
}

function rounded(seconds: number): number {
	return Math.round(seconds * 1000) / 1000;
}

/**
 * Rounds with seed after seed until the time is over, the effort spent or the answer proven; the
 * best one is kept.
 */
function within<A extends { readonly proven: boolean; readonly effort: number }>(
	search: (budget: Budget) => Search<A>,
	better: (a: A, b: A) => boolean,
	patience: EffortLimit,
	spent: () => number,
): A {
	const { seconds, seed } = patience;
	if (seconds === null)
		return drive(search({ seed, effort: patience.effort ?? EFFORT }), () => false);
	const over = () => spent() >= seconds;
	const most = patience.effort ?? Infinity;
	let best = drive(search({ seed, effort: Math.min(most, ROUND * seconds) }), over);
	let effort = best.effort;
	for (let round = 1; !over() && !best.proven && effort < most; round++) {
		const budget = { seed: (seed + round) >>> 0, effort: Math.min(most - effort, ROUND * seconds) };
		const next = drive(search(budget), over);
		if (next.effort === 0) break;
		effort += next.effort;
		if (better(next, best)) best = next;
	}
	return { ...best, effort };
}

function drive<A>(search: Search<A>, over: () => boolean): A {
	for (;;) {
		const step = search.next();
		if (step.done) return step.value;
		if (over()) return step.value.best;
	}
}

const left = (answer: { readonly unplaced: readonly { readonly count: number }[] }) =>
	answer.unplaced.reduce((sum, u) => sum + u.count, 0);

function sheetsBetter(a: SheetsAnswer, b: SheetsAnswer): boolean {
	return (left(a) - left(b) || a.cost - b.cost || a.layouts.length - b.layouts.length) < 0;
}

function rollBetter(a: RollAnswer, b: RollAnswer): boolean {
	return (left(a) - left(b) || a.length - b.length) < 0;
}
