import { nth, ticks } from '../../measure';
import { offcutsOf } from './free-rects';
import { planCost, type RouterModel, type RouterPlan, type RouterSheet } from './model';
import type { Placed, SheetLayout, SheetsAnswer } from '../types';

/**
 * A plan told as an answer: copies numbered from the first sheet on, positions from the corner of
 * the whole sheet.
 */
export function routerAnswer(
	model: RouterModel,
	plan: RouterPlan,
	bound: SheetsAnswer['bound'],
	effort: number,
): SheetsAnswer {
	const next = new Map<string, number>();
	const copies = model.kinds.map(() => 0);
	const sheets = [...plan.sheets].sort((a, b) => a.kind - b.kind);
	const layouts = sheets.map((sheet) => {
		const copy = nth(copies, sheet.kind);
		copies[sheet.kind] = copy + 1;
		return layoutOf(model, sheet, copy, next);
	});
	const left = plan.left.flatMap((count, t) => {
		const why = 'There was no room left for it on the sheets in stock.';
		return count > 0 ? [{ id: nth(model.types, t).piece.id, count, why }] : [];
	});
	const unplaced = [...model.refused, ...left];
	const cost = planCost(model, plan);
	const all = unplaced.length === 0;
	const told = all
		? bound
		: { sheets: Math.min(bound.sheets, layouts.length), cost: Math.min(bound.cost, cost) };
	const proven = all && cost <= bound.cost && layouts.length <= bound.sheets;
	return { layouts, unplaced, cost, bound: told, proven, effort };
}

function layoutOf(
	model: RouterModel,
	sheet: RouterSheet,
	copy: number,
	next: Map<string, number>,
): SheetLayout {
	const { sheet: stock } = nth(model.kinds, sheet.kind);
	const { trim } = stock;
	const spots = [...sheet.spots].sort((a, b) => a.x - b.x || a.y - b.y);
	const placed = spots.map((spot): Placed => {
		const { piece, orientations } = nth(model.types, spot.type);
		const { length, width, ...orientation } = nth(orientations, spot.orientation);
		const turn = spot.turn ?? orientation.turn;
		const n = next.get(piece.id) ?? 0;
		next.set(piece.id, n + 1);
		return {
			id: piece.id,
			copy: n,
			x: spot.x + trim.left,
			y: spot.y + trim.bottom,
			length,
			width,
			turn,
		};
	});
	const usable = {
		x: trim.left,
		y: trim.bottom,
		length: stock.length - trim.left - trim.right,
		width: stock.width - trim.bottom - trim.top,
	};
	const { bit, keep } = model.problem;
	return {
		sheet: stock.id,
		copy,
		length: ticks(stock.length),
		width: ticks(stock.width),
		placed,
		cuts: [],
		offcuts: offcutsOf(usable, placed, bit, keep),
	};
}
