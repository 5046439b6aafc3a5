import { routerAnswer } from './router-answer';
import { routerBound } from './router-bound';
import { firstPlans } from './router-first';
import { isCheaper, planCost, readyRouter } from './router-model';
import type { RouterModel, RouterPlan } from './router-model';
import { improvePlan } from './router-window';
import type { Budget, RouterProblem, Search, SheetsAnswer } from './types';

/** Work of one first layout, per piece: measured. */
const FIRST_UNITS = 5;

/**
 * Lay pieces freely on sheets, for a router: apart by one bit, no cuts edge to edge. A piece at the edge of the usable
 * sheet keeps that edge. Aims: everything laid, least money, least owned board, fewest sheets. Yields the best plan so
 * far; what cannot be laid is in `unplaced` with the reason.
 */
export function* nestRouter(problem: RouterProblem, budget: Budget): Search<SheetsAnswer> {
	const model = readyRouter(problem);
	const bound = routerBound(model);
	let best: RouterPlan = { sheets: [], left: model.types.map((type) => type.piece.count) };
	let spent = 0;
	for (const plan of firstPlans(model)) {
		spent += FIRST_UNITS * pieces(model);
		if (isCheaper(model, plan, best)) best = plan;
		yield { best: routerAnswer(model, best, bound, spent), effort: spent };
		if (spent >= budget.effort || isProven(model, best, bound))
			return routerAnswer(model, best, bound, spent);
	}
	const rest = { seed: budget.seed, effort: budget.effort - spent };
	const search = improvePlan(model, best, bound, rest);
	let step = search.next();
	for (; step.done !== true; step = search.next()) {
		const effort = spent + step.value.effort;
		yield { best: routerAnswer(model, step.value.best, bound, effort), effort };
	}
	return routerAnswer(model, step.value.best, bound, spent + step.value.effort);
}

function isProven(model: RouterModel, plan: RouterPlan, bound: SheetsAnswer['bound']): boolean {
	const all = plan.left.every((n) => n === 0);
	return all && plan.sheets.length <= bound.sheets && planCost(model, plan) <= bound.cost;
}

function pieces(model: RouterModel): number {
	return model.types.reduce((sum, type) => sum + type.piece.count, 0);
}
