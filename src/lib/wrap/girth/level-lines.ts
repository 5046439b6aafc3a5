import { nth, around } from '../../measure';
import type { Point } from '../../geometry';

/*
 * Level lines across a panel, from the bottom up: where each one meets the outlines of the board
 * and of its layers.
 */

/** A ring of points crossed by level lines. */
interface Ring {
	readonly points: readonly Point[];
}

/**
 * An edge that rises from `low` to `high`; while a level line is visited, `at` is where the line
 * meets it.
 */
export interface Rising {
	readonly ring: number;
	readonly low: number;
	readonly high: number;
	readonly start: number; // x at `low`
	readonly run: number; // x per y
	/** Sine of the angle at which a level line meets it. */
	readonly steep: number;
	at: number;
}

/** All edges of the rings that are not level, lowest first. */
export function risingEdges(rings: readonly Ring[]): Rising[] {
	const edges: Rising[] = [];
	rings.forEach(({ points }, ring) => {
		points.forEach((p, i) => {
			const q = around(points, i + 1);
			if (p.y === q.y) return;
			const [a, b] = p.y < q.y ? [p, q] : [q, p];
			const run = (b.x - a.x) / (b.y - a.y);
			const steep = 1 / Math.hypot(1, run);
			edges.push({ ring, low: a.y, high: b.y, start: a.x, run, steep, at: a.x });
		});
	});
	return edges.sort((a, b) => a.low - b.low);
}

/**
 * Calls `visit` for each height with the edges met there. `heights` ascend; they must not be those
 * of corners, where a crossing would count twice or not at all. The edges belong to the caller
 * again after each call.
 */
export function levelLines(
	edges: readonly Rising[],
	heights: readonly number[],
	visit: (met: readonly Rising[]) => void,
): void {
	let next = 0;
	let active: Rising[] = [];
	for (const y of heights) {
		while (next < edges.length && nth(edges, next).low < y) active.push(nth(edges, next++));
		if (active.some((e) => e.high <= y)) active = active.filter((e) => e.high > y);
		for (const e of active) e.at = e.start + (y - e.low) * e.run;
		visit(active);
	}
}

/**
 * Heights between any two at which something changes: corners, and where an edge crosses the
 * upright line x = `middle`.
 */
export function heightsBetween(rings: readonly Ring[], middle: number): number[] {
	const levels: number[] = [];
	for (const { points } of rings)
		points.forEach((p, i) => {
			const q = around(points, i + 1);
			levels.push(p.y);
			if ((p.x - middle) * (q.x - middle) < 0)
				levels.push(p.y + ((middle - p.x) / (q.x - p.x)) * (q.y - p.y));
		});
	const sorted = [...new Set(levels)].sort((a, b) => a - b);
	return sorted.slice(1).map((y, i) => (y + nth(sorted, i)) / 2);
}
