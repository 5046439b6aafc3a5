import type { Arc } from './arc';
import { arcOfEdge, cornerAt, edgesOf, nearestOnEdge, type Edge } from './edge';
import { orient } from './orient';
import type { Outline, Point } from './outline';
import { distance } from './vector';

export type Where = 'inside' | 'on' | 'outside';

/** Where a point lies; 'on' within half a tick of an edge. */
export function whereIs(p: Point, outline: Outline): Where {
	let inside = false;
	let from = outline.at(-1);
	if (!from) return 'outside';
	for (const to of outline) {
		const bulge = from.bulge ?? 0;
		// Most edges of a long outline are nowhere near: they cost two comparisons.
		if (bulge !== 0 || touchesRow(p, from, to)) {
			const e: Edge = { from, to, bulge };
			if (nearestOnEdge(p, e).distance < 0.5) return 'on';
			// A ray to +x crosses the chord; between the chord and its arc the answer is the other one.
			const left = leftOfChord(p, e);
			if (from.y > p.y !== to.y > p.y && left === to.y > from.y) inside = !inside;
			const arc = arcOfEdge(e);
			if (arc && inSegment(p, e, arc, left)) inside = !inside;
		}
		from = to;
	}
	return inside ? 'inside' : 'outside';
}

/** Can a straight edge touch the point, or be crossed by a ray from it to +x? */
function touchesRow(p: Point, a: Point, b: Point): boolean {
	if (a.x < p.x - 1 && b.x < p.x - 1) return false;
	return !((a.y < p.y - 1 && b.y < p.y - 1) || (a.y > p.y + 1 && b.y > p.y + 1));
}

/** A point on the chord of an arc counts as the ray test takes it: as if it lay a hair higher, then a hair to the left. */
function leftOfChord(p: Point, e: Edge): boolean {
	const side = orient(e.from, e.to, p);
	if (side !== 0) return side > 0;
	return e.from.y === e.to.y ? e.to.x > e.from.x : true;
}

/** Between the chord and its arc: inside the circle, on the arc's side of the chord. */
function inSegment(p: Point, e: Edge, arc: Arc, left: boolean): boolean {
	return distance(p, arc.centre) < arc.radius && left === e.bulge < 0;
}

/** Distance from a point to the nearest edge, ticks. */
export function distanceTo(p: Point, outline: Outline): number {
	return Math.min(...edgesOf(outline).map((e) => nearestOnEdge(p, e).distance));
}

/** Does every corner and every arc's middle of `inner` lie inside or on `outer`? Enough where the two do not cross. */
export function cornersInside(inner: Outline, outer: Outline): boolean {
	return inner.every((_, i) => whereIs(cornerAt(inner, i), outer) !== 'outside');
}
