import { arcOfEdge, boundsOfPoints, edgeBounds, edgeLength, edgesOf } from './edge';
import type { Outline, Point, Rect } from './outline';

/**
 * Area in square ticks, arcs counted as arcs; negative for a clockwise outline. Exact for straight
 * edges on the grid.
 */
export function area(outline: Outline): number {
	const o = outline[0];
	if (o === undefined) return 0;
	let twice = 0;
	let segments = 0;
	for (const e of edgesOf(outline)) {
		twice += (e.from.x - o.x) * (e.to.y - o.y) - (e.from.y - o.y) * (e.to.x - o.x);
		const arc = arcOfEdge(e);
		if (arc) segments += (arc.radius * arc.radius * (arc.sweep - Math.sin(arc.sweep))) / 2;
	}
	return twice / 2 + segments;
}

/** Length round the outline in ticks. */
export function perimeter(outline: Outline): number {
	return edgesOf(outline).reduce((sum, e) => sum + edgeLength(e), 0);
}

/** The upright rectangle round the outline, to the grid outwards: nothing of it lies outside. */
export function bounds(outline: Outline): Rect {
	const bowed = outline.some((c) => (c.bulge ?? 0) !== 0);
	const exact = boundsOfPoints(bowed ? extremes(outline) : outline);
	// An arc's extreme is a computed figure: a hair of rounding must not cost a whole tick.
	const hair = 1e-4;
	const x = Math.floor(exact.x + hair);
	const y = Math.floor(exact.y + hair);
	return {
		x,
		y,
		length: Math.ceil(exact.x + exact.length - hair) - x,
		width: Math.ceil(exact.y + exact.width - hair) - y,
	};
}

/** Does a rectangle lie wholly in another, edges on edges allowed? */
export function rectHolds(outer: Rect, r: Rect): boolean {
	return (
		outer.x <= r.x &&
		outer.y <= r.y &&
		outer.x + outer.length >= r.x + r.length &&
		outer.y + outer.width >= r.y + r.width
	);
}

function extremes(outline: Outline): Point[] {
	return edgesOf(outline).flatMap((e) => {
		const b = edgeBounds(e);
		return [b, { x: b.x + b.length, y: b.y + b.width }];
	});
}
