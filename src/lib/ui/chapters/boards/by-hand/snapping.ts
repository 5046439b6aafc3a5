import type { Length } from '../../../../measure';
import type { Rect } from '../../../../geometry';
import type { Sheet } from '../../../../nest';

/** What a piece that is dragged is drawn to, all in ticks. */
export interface Snaps {
	readonly sheet: Sheet;
	/** The other pieces. */
	readonly others: readonly Rect[];
	/** The blade or the bit. */
	readonly gap: Length;
	/** How near it has to come. */
	readonly reach: number;
	/** The marks of the ruler, which hold where nothing else does. */
	readonly mark: number;
}

/**
 * Where a piece dragged to about here comes to lie: at an edge of the usable sheet, a blade beside
 * another piece or flush with it, else on a mark of the ruler.
 */
export function snapped(rect: Rect, snaps: Snaps): { readonly x: number; readonly y: number } {
	const { sheet, others, gap } = snaps;
	const { left, right, bottom, top } = sheet.trim;
	const along = others.map((o) => [o.x, o.length] as const);
	const up = others.map((o) => [o.y, o.width] as const);
	return {
		x: nearestOf(rect.x, [left, sheet.length - right - rect.length], snaps, {
			size: rect.length,
			gap,
			spans: along,
		}),
		y: nearestOf(rect.y, [bottom, sheet.width - top - rect.width], snaps, {
			size: rect.width,
			gap,
			spans: up,
		}),
	};
}

interface Beside {
	readonly size: number;
	readonly gap: number;
	/** Start and size of the others along one axis. */
	readonly spans: readonly (readonly [number, number])[];
}

function nearestOf(at: number, edges: readonly number[], snaps: Snaps, beside: Beside): number {
	const { size, gap, spans } = beside;
	const all = [
		...edges,
		...spans.flatMap(([from, long]) => [
			from + long + gap,
			from - gap - size,
			from,
			from + long - size,
		]),
	];
	const far = (to: number): number => Math.abs(to - at);
	const best = all.reduce((a, b) => (far(b) < far(a) ? b : a));
	if (far(best) <= snaps.reach) return best;
	return Math.round(at / snaps.mark) * snaps.mark;
}
