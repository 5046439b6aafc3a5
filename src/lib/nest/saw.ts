import { areaBound, boundOf } from './bound';
import { limitsOf } from './cut-plan';
import { firstLayout, moreFirstLayouts } from './first-layout';
import { Hunt } from './hunt';
import { Finishing } from './finishing';
import type { Kept } from './laying';
import { labour } from './open-sheet';
import { random } from './random';
import { meets, sawAnswer } from './saw-answer';
import { sawModel } from './saw-model';
import type { Budget, SawProblem, Search, SheetsAnswer } from './types';

/** Slots looked at that make one unit of effort. */
const WORK_PER_EFFORT = 300;
const SHOW_EVERY = 500; // units of effort between two reports
const FIRST_SHARE = 0.05; // of the budget for layouts from nothing
const LAST_SHARE = 0.1; // of the budget for offcuts, fence settings and cuts
const SAVED_SHARE = 0.2; // the same where the search for a cheaper layout ended before its time

/**
 * Lays pieces on sheets so that a saw can cut them, every cut from edge to edge. Money first, then the rank of the material
 * used (offcuts before owned sheets before bought ones), then the largest offcut, fewer fence settings and fewer cuts. Yields a full layout at once, then the best so far; the same
 * problem, seed and effort give the same answer, whatever order the pieces are listed in.
 */
export function* nestSaw(problem: SawProblem, budget: Budget): Search<SheetsAnswer> {
	const model = sawModel(problem);
	let bound = areaBound(model);
	const job = labour(model, random(budget.seed), limitsOf(problem));
	const effort = (): number => Math.round(job.work / WORK_PER_EFFORT);
	let best = firstLayout(job);
	// Put in the shop's terms only when it is shown: a search betters its layout far more often than that.
	let shown: { readonly kept: Kept; readonly answer: SheetsAnswer } | null = null;
	const answer = (): SheetsAnswer => {
		if (shown?.kept !== best)
			shown = { kept: best, answer: sawAnswer(model, best, bound, effort()) };
		return { ...shown.answer, effort: effort() };
	};
	yield { best: answer(), effort: effort() };
	bound = boundOf(model); // takes longer than the first layout
	shown = null;
	// everything that can be laid is laid, and nothing cheaper exists
	const enough = (kept: Kept): boolean => kept.missing === 0 && meets(model, kept, bound);
	const end = budget.effort * WORK_PER_EFFORT;
	for (const kept of moreFirstLayouts(job, best, end * FIRST_SHARE, enough)) best = kept;
	const report = function* (search: Improver, until: number, stop: () => boolean): Reports {
		let last = job.work;
		while (job.work < until && !stop()) {
			if (search.step()) best = search.best;
			if (job.work - last < SHOW_EVERY * WORK_PER_EFFORT) continue;
			last = job.work;
			yield { best: answer(), effort: effort() };
		}
	};
	if (!enough(best) && job.work < end)
		yield* report(new Hunt(job, best), end * (1 - LAST_SHARE), () => enough(best));
	const last = new Finishing(job, best);
	const share = enough(best) ? SAVED_SHARE : LAST_SHARE;
	yield* report(last, job.work + end * share, () => last.done);
	return answer();
}

type Reports = Generator<{ readonly best: SheetsAnswer; readonly effort: number }, void, void>;

/** A search that betters its layout step by step. */
interface Improver {
	step(): boolean;
	readonly best: Kept;
}
