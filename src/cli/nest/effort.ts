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
 * Units of work when nothing is asked for: about a second on a hard problem, two with outlines; a
 * proven answer stops at once.
 */
export const USUAL_EFFORT = 100_000;
/**
 * Budget a second under the clock: about what a machine of today does, so that the last share of a
 * search, for offcuts and settings, is reached.
 */
const ROUND = 90_000;
/**
 * The same for outlines on a roll, where it differs more from problem to problem: a first round of
 * this share of the time tells how many units a second the rest may count on.
 */
const OUTLINE_ROUND = 50_000;
const OUTLINE_FIRST = 0.05;

/** Searches and gives the answer as it is printed. `clock`: milliseconds from any moment on. */
export function answerNest(
	nest: NestProblem,
	patience: EffortLimit,
	clock = () => performance.now(),
): { readonly seconds: number } {
	const from = clock();
	const spent = () => (clock() - from) / 1000;
	if (nest.kind === 'roll') {
		const pace = nest.problem.by === 'outline' ? outlinePace(patience, spent) : plainPace(patience);
		const search = (budget: Budget) => nestRoll(nest.problem, budget);
		const answer = within(search, rollBetter, { ...patience, pace }, spent);
		return { ...rollJson(answer), seconds: rounded(spent()) };
	}
	const search = (budget: Budget) =>
		nest.kind === 'saw' ? nestSaw(nest.problem, budget) : nestRouter(nest.problem, budget);
	const paced = { ...patience, pace: plainPace(patience) };
	const answer = within(search, sheetsBetter, paced, spent);
	return { ...sheetsJson(answer), seconds: rounded(spent()) };
}

function rounded(seconds: number): number {
	return Math.round(seconds * 1000) / 1000;
}

/** Units for the next round under the clock, so many having been spent. */
type Pace = (done: number) => number;

function plainPace({ seconds }: EffortLimit): Pace {
	return () => ROUND * (seconds ?? 0);
}

function outlinePace({ seconds }: EffortLimit, spent: () => number): Pace {
	const all = seconds ?? 0;
	return (done) =>
		Math.ceil(
			done === 0 ? OUTLINE_ROUND * OUTLINE_FIRST * all : (done / spent()) * (all - spent()),
		);
}

/**
 * Rounds with seed after seed until the time is over, the effort spent or the answer proven; the
 * best one is kept.
 */
function within<A extends { readonly proven: boolean; readonly effort: number }>(
	search: (budget: Budget) => Search<A>,
	better: (a: A, b: A) => boolean,
	{ seconds, seed, effort: asked, pace }: EffortLimit & { readonly pace: Pace },
	spent: () => number,
): A {
	if (seconds === null) return drive(search({ seed, effort: asked ?? USUAL_EFFORT }), () => false);
	const over = () => spent() >= seconds;
	const most = asked ?? Infinity;
	let best = drive(search({ seed, effort: Math.min(most, pace(0)) }), over);
	let effort = best.effort;
	for (let round = 1; !over() && !best.proven && effort < most; round++) {
		const budget = { seed: (seed + round) >>> 0, effort: Math.min(most - effort, pace(effort)) };
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
