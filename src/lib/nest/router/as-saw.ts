import { nth } from '../../measure';
import { boundOf, nestSaw, sawModel } from '../saw';
import { isCheaper, type RouterModel, type RouterPlan, type RouterSheet } from './model';
import type { Budget, Piece, Placed, SawProblem, SheetLayout, SheetsAnswer } from '../types';

/*
 * What a saw can cut, a router can too, with the bit for the kerf: so the saw search, which is
 * strong, gives the router its plan to beat, and the bound that holds for free placement.
 */

export function sawBound(model: RouterModel): SheetsAnswer['bound'] {
	return boundOf(sawModel(asSaw(model)));
}

/** Plans of the saw search whenever they are better than the plan given. */
export function* sawPlans(
	model: RouterModel,
	first: RouterPlan,
	budget: Budget,
): Generator<{ best: RouterPlan; effort: number }, { best: RouterPlan; effort: number }, void> {
	let best = first;
	const search = nestSaw(asSaw(model), budget);
	let step = search.next();
	for (; step.done !== true; step = search.next()) {
		best = better(model, step.value.best, best);
		yield { best, effort: step.value.effort };
	}
	return { best: better(model, step.value, best), effort: step.value.effort };
}

function asSaw(model: RouterModel): SawProblem {
	const { bit, sheets, keep } = model.problem;
	const pieces = model.types.map(({ piece }): Piece => {
		const { id, length, width, count, turns } = piece;
		return { id, length, width, count, turns };
	});
	const free = { stages: null, fenceLimit: null, narrowestRip: null, first: 'any' } as const;
	return { kerf: bit, sheets, pieces, keep, ...free };
}

function better(model: RouterModel, answer: SheetsAnswer, best: RouterPlan): RouterPlan {
	const plan = planOf(model, answer);
	return isCheaper(model, plan, best) ? plan : best;
}

function planOf(model: RouterModel, answer: SheetsAnswer): RouterPlan {
	const left = model.types.map(({ piece }) =>
		answer.unplaced.filter((u) => u.id === piece.id).reduce((n, u) => n + u.count, 0),
	);
	return { sheets: answer.layouts.map((layout) => sheetOf(model, layout)), left };
}

function sheetOf(model: RouterModel, layout: SheetLayout): RouterSheet {
	const kind = model.kinds.findIndex((k) => k.sheet.id === layout.sheet);
	const { trim } = nth(model.kinds, kind).sheet;
	const spots = layout.placed.map((placed: Placed) => {
		const type = model.types.findIndex((t) => t.piece.id === placed.id);
		const { orientations } = nth(model.types, type);
		const orientation = orientations.findIndex(
			(l) => l.length === placed.length && l.width === placed.width,
		);
		return { type, orientation, x: placed.x - trim.left, y: placed.y - trim.bottom };
	});
	return { kind, spots };
}
