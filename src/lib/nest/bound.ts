import type { SawModel } from './saw-model';

/** Sheets and money that no layout can do without. */
export interface Bound {
	readonly sheets: number;
	readonly cost: number;
}

/** Area alone, kerf counted. */
export function boundOf(model: SawModel): Bound {
	const area = model.demand.reduce((sum, n, t) => sum + n * pieceArea(model, t), 0);
	const largest = model.kinds.reduce((m, k) => Math.max(m, k.w * k.h), 1);
	const rate = model.kinds.reduce((m, k) => Math.min(m, k.sheet.price / (k.w * k.h)), Infinity);
	if (area === 0) return { sheets: 0, cost: 0 };
	return { sheets: Math.ceil(area / largest), cost: Math.ceil(area * rate * (1 - 1e-12)) };
}

/** A piece that may be paired takes at least half of its pair. */
function pieceArea(model: SawModel, type: number): number {
	const { pair } = model.types[type]!;
	return pair < 0 ? model.area[type]! : Math.min(model.area[type]!, model.area[pair]! / 2);
}
