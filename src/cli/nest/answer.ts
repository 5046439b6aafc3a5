import { toMm } from '../../lib/measure';
import type { Rect } from '../../lib/geometry';
import type { Cut, Placed, RollAnswer, SheetLayout, SheetsAnswer } from '../../lib/nest';

/*
 * Answers of the nest as they are printed: lengths in millimetres, money in the unit the prices
 * were given in.
 */

export function sheetsJson(answer: SheetsAnswer): object {
	return {
		layouts: answer.layouts.map(layoutJson),
		unplaced: answer.unplaced,
		cost: answer.cost / 100,
		bound: { sheets: answer.bound.sheets, cost: answer.bound.cost / 100 },
		proven: answer.proven,
		effort: answer.effort,
	};
}

export function rollJson(answer: RollAnswer): object {
	return {
		length: toMm(answer.length),
		pieces: answer.placed.map(placedJson),
		unplaced: answer.unplaced,
		bound: toMm(answer.bound),
		proven: answer.proven,
		effort: answer.effort,
	};
}

export function layoutJson(layout: SheetLayout): object {
	return {
		sheet: layout.sheet,
		pieces: layout.placed.map(placedJson),
		cuts: layout.cuts.map(cutJson),
		offcuts: layout.offcuts.map(rectJson),
	};
}

function placedJson({ id, turn, ...rect }: Placed): object {
	return { id, ...rectJson(rect), turn };
}

function rectJson({ x, y, length, width }: Rect): object {
	return { x: toMm(x), y: toMm(y), length: toMm(length), width: toMm(width) };
}

function cutJson(cut: Cut): object {
	const spot = (p: { readonly x: number; readonly y: number }) => ({ x: toMm(p.x), y: toMm(p.y) });
	return {
		n: cut.n,
		kind: cut.kind,
		runs: cut.runs,
		region: rectJson(cut.region),
		at: toMm(cut.at),
		fence: toMm(cut.fence),
		fenceEdge: cut.fenceEdge,
		gives: cut.gives.map(({ kind, rect, id, nextCut }) => ({
			kind,
			...rectJson(rect),
			id,
			nextCut,
		})),
		...(cut.from && cut.to ? { from: spot(cut.from), to: spot(cut.to) } : {}),
	};
}
