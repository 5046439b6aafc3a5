import { nth } from '../../measure';
import { area } from '../../geometry';
import type { Piece } from '../types';
import type { RouterModel } from './model';

/**
 * What no layout of true outlines can beat: sheets and money by area, the bit not counted. Sheets:
 * the largest sheets in stock that hold the area together. Money: what is owned is filled for
 * nothing, the rest at the best price for its area, or as whole sheets when one kind alone is to be
 * bought.
 */
export function outlineBound(model: RouterModel): {
	readonly sheets: number;
	readonly cost: number;
} {
	const total = model.types.reduce((sum, { piece }) => sum + piece.count * trueArea(piece), 0);
	const least = total * (1 - 1e-12); // arcs make the area a computed figure
	return { sheets: leastSheets(model, least), cost: leastCost(model, least) };
}

function trueArea(piece: Piece): number {
	const own =
		piece.outline === undefined ? piece.length * piece.width : Math.abs(area(piece.outline));
	return (piece.holes ?? []).reduce((sum, hole) => sum - Math.abs(area(hole)), own);
}

function leastSheets(model: RouterModel, total: number): number {
	const areas = model.kinds.map((kind) => ({ area: kind.length * kind.width, count: kind.count }));
	let rest = total;
	let sheets = 0;
	for (const kind of areas.sort((a, b) => b.area - a.area)) {
		const used = Math.min(kind.count, Math.ceil(rest / kind.area));
		if (used <= 0) break;
		sheets += used;
		rest -= used * kind.area;
	}
	return sheets;
}

function leastCost(model: RouterModel, total: number): number {
	const size = (k: { readonly length: number; readonly width: number }): number =>
		k.length * k.width;
	const owned = model.kinds.filter((kind) => kind.sheet.price === 0);
	const rest = total - owned.reduce((sum, kind) => sum + size(kind) * kind.count, 0);
	const bought = model.kinds.filter((kind) => kind.sheet.price > 0);
	if (!(rest > 0) || bought.length === 0) return 0;
	const only = nth(bought, 0);
	if (bought.length === 1)
		return Math.min(only.count, Math.ceil(rest / size(only))) * only.sheet.price;
	const perArea = Math.min(...bought.map((kind) => kind.sheet.price / size(kind)));
	const cheapest = Math.min(...bought.map((kind) => kind.sheet.price));
	// rounded down: a share of a price must not claim too much
	return Math.max(cheapest, Math.floor(rest * perArea));
}
