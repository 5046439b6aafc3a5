import { routerAnswer } from './answer';
import { outlineBound } from './bound';
import { firstPlans } from './first-layout';
import { isCheaper, planCost, readyRouter, type RouterModel, type RouterPlan } from './model';
import { fillOutlines, hasShapes } from './outline';
import { sawBound, sawPlans } from './as-saw';
import { improvePlan } from './window';
import type { Budget, RouterProblem, Search, SheetsAnswer } from '../types';

/** Work of one first layout, per piece: measured. */
const FIRST_UNITS = 5;

/**
 * Lay pieces freely on sheets, for a router: apart by one bit, no cuts edge to edge. A piece at the
 * edge of the usable sheet keeps that edge. Aims: everything laid, least money, least owned board,
 * fewest sheets. Yields the best plan so far; what cannot be laid is in `unplaced` with the reason.
 */
export function* nestRouter(problem: RouterProblem, budget: Budget): Search<SheetsAnswer> {
	const model = readyRouter(problem);
	const bound = hasShapes(model) ? outlineBound(model) : sawBound(model);
	let best: RouterPlan = { sheets: [], left: model.types.map((type) => type.piece.count) };
	let spent = 0;
	for (const plan of firstPlans(model)) {
		spent += FIRST_UNITS * pieces(model);
		if (isCheaper(model, plan, best)) best = plan;
		yield { best: routerAnswer(model, best, bound, spent), effort: spent };
		if (spent >= budget.effort || isProven(model, best, bound))
			return routerAnswer(model, best, bound, spent);
	}
	for (const { search, share } of searches(model, bound)) {
		if (isProven(model, best, bound)) break;
		const rest = { seed: budget.seed, effort: Math.floor((budget.effort - spent) * share) };
		const run = search(best, rest);
		let step = run.next();
		for (; step.done !== true; step = run.next()) {
			const effort = spent + step.value.effort;
			yield { best: routerAnswer(model, step.value.best, bound, effort), effort };
		}
		best = step.value.best;
		spent += step.value.effort;
	}
	return routerAnswer(model, best, bound, spent);
}

interface Found {
	readonly best: RouterPlan;
	readonly effort: number;
}

interface Improver {
	/** Of what is left of the budget. */
	readonly share: number;
	readonly search: (best: RouterPlan, budget: Budget) => Generator<Found, Found, void>;
}

/** What is tried one after another on the best plan so far. */
function searches(model: RouterModel, bound: SheetsAnswer['bound']): Improver[] {
	const saw: Improver = { share: 0.4, search: (best, budget) => sawPlans(model, best, budget) };
	const relay: Improver = {
		share: 1,
		search: (best, budget) => improvePlan(model, best, bound, budget),
	};
	if (!hasShapes(model)) return [saw, relay];
	const outlines: Improver = {
		share: 0.8,
		search: (best, budget) => fillOutlines(model, best, budget),
	};
	return [saw, outlines, relay];
}

function isProven(model: RouterModel, plan: RouterPlan, bound: SheetsAnswer['bound']): boolean {
	const all = plan.left.every((n) => n === 0);
	return all && plan.sheets.length <= bound.sheets && planCost(model, plan) <= bound.cost;
}

function pieces(model: RouterModel): number {
	return model.types.reduce((sum, type) => sum + type.piece.count, 0);
}
