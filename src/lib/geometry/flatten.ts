import { onArc, sweepForRise, type Arc } from './arc';
import { arcOfEdge, edgesOf } from './edge';
import type { Outline, Point } from './outline';
import { same, snapPoint } from './vector';

/**
 * Which way a flattened outline may depart from the true one: a part outward, stock inward, a
 * drawing either way.
 */
export type FlattenSide = 'outward' | 'inward' | 'nearest';

/**
 * The outline with straight edges only, on the grid, nowhere farther than `tolerance` (ticks) from
 * the true one; outward it contains the true outline, inward it lies inside it (the outline being
 * counter-clockwise). One tick of the tolerance goes to the grid.
 */
export function flatten(
	outline: Outline,
	tolerance: number,
	side: FlattenSide = 'nearest',
): Outline {
	const points: Point[] = [];
	for (const e of edgesOf(outline)) {
		push(points, { x: e.from.x, y: e.from.y });
		const arc = arcOfEdge(e);
		if (arc) for (const p of insideArc(arc, Math.max(tolerance, 2), side)) push(points, p);
	}
	const [first] = points;
	const last = points.at(-1);
	if (points.length > 1 && first && last && same(first, last)) points.pop();
	return points;
}

function push(points: Point[], p: Point): void {
	const last = points.at(-1);
	if (!last || !same(last, p)) points.push(p);
}

/** The corners between the ends of an arc. */
function insideArc(arc: Arc, tolerance: number, side: FlattenSide): Point[] {
	if (side === 'nearest') return chords(arc, tolerance, 0);
	// A left-turning arc bows out of the outline: its chords lie inside, its tangents outside.
	return (side === 'outward') === arc.sweep > 0
		? tangents(arc, tolerance - 1)
		: chords(arc, tolerance, -1);
}

function steps(arc: Arc, widest: number): number {
	return Math.max(1, Math.ceil(Math.abs(arc.sweep) / Math.min(widest, Math.PI / 2) - 1e-9));
}

/** Points on the arc; `side` is -1 to lie a tick within the circle, where its chords are. */
function chords(arc: Arc, tolerance: number, side: -1 | 0): Point[] {
	const n = steps(arc, sweepForRise(arc.radius, tolerance - Math.abs(side)));
	return Array.from({ length: n - 1 }, (_, k) => {
		const p = onArc(arc, arc.start + (arc.sweep * (k + 1)) / n, arc.radius + side);
		return snapPoint(p);
	});
}

/** The corners of the tangents round the outside of the arc. */
function tangents(arc: Arc, tolerance: number): Point[] {
	// r / cos(d / 2) - r <= tolerance
	const widest = 2 * Math.acos(arc.radius / (arc.radius + Math.max(tolerance - 1, 0.5)));
	const n = steps(arc, widest);
	const step = arc.sweep / n;
	const radius = arc.radius / Math.cos(step / 2) + 1;
	return Array.from({ length: n }, (_, k) =>
		snapPoint(onArc(arc, arc.start + step * (k + 0.5), radius)),
	);
}
