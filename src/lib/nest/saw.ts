import { areaBound, boundOf } from './bound';
import { limitsOf } from './cut-plan';
import { firstLayout, moreFirstLayouts } from './first-layout';
import { Hunt } from './hunt';
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

/**
 * Lays pieces on sheets so that a saw can cut them, every cut from edge to edge. Money first, then the rank of the material
 * used (offcuts before owned sheets before bought ones). Yields a full layout at once, then the best so far; the same
 * problem, seed and effort give the same answer, whatever order the pieces are listed in.
 */
export function* nestSaw(problem: SawProblem, budget: Budget): Search<SheetsAnswer> {
	const model = sawModel(problem);
	let bound = areaBound(model);
	const job = labour(model, random(budget.seed), limitsOf(problem));
	const effort = (): number => Math.round(job.work / WORK_PER_EFFORT);
	let best = firstLayout(job);
	let answer = sawAnswer(model, best, bound, effort());
	yield { best: answer, effort: effort() };
	bound = boundOf(model); // takes longer than the first layout
	answer = sawAnswer(model, best, bound, effort());
	// everything that can be laid is laid, and nothing cheaper exists
	const enough = (kept: Kept): boolean => kept.missing === 0 && meets(model, kept, bound);
	const renew = (kept: Kept): void => {
		if (kept === best) return;
		best = kept;
		answer = sawAnswer(model, best, bound, effort());
	};
	const more = moreFirstLayouts(job, best, budget.effort * WORK_PER_EFFORT * FIRST_SHARE, enough);
	for (let step = more.next(); ; step = more.next()) {
		renew(step.value);
		if (step.done) break;
	}
	const end = budget.effort * WORK_PER_EFFORT;
	if (!enough(best) && job.work < end) {
		const hunt = new Hunt(job, best);
		let shown = job.work;
		while (job.work < end && !enough(best)) {
			if (hunt.step()) renew(hunt.best);
			if (job.work - shown < SHOW_EVERY * WORK_PER_EFFORT) continue;
			shown = job.work;
			yield { best: answer, effort: effort() };
		}
	}
	return { ...answer, effort: effort() };
}
