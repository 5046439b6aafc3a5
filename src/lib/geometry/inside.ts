import type { Arc } from './arc';
import { arcOfEdge, cornerAt, edgesOf, nearestOnEdge, type Edge } from './edge';
import { orient } from './orient';
import type { Outline, Point } from './outline';
import { distance } from './vector';

export type Where = 'inside' | 'on' | 'outside';

/** Where a point lies; 'on' within half a tick of an edge. */
export function whereIs(p: Point, outline: Outline): Where {
	let inside = false;
	for (const e of edgesOf(outline)) {
		if (nearestOnEdge(p, e).distance < 0.5) return 'on';
		// A ray to +x crosses the chord; between the chord and its arc the answer is the other one.
		const left = leftOfChord(p, e);
		if (e.from.y > p.y !== e.to.y > p.y && left === e.to.y > e.from.y) inside = !inside;
		const arc = arcOfEdge(e);
		if (arc && inSegment(p, e, arc, left)) inside = !inside;
	}
	return inside ? 'inside' : 'outside';
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
