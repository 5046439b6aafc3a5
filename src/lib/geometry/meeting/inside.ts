import type { Arc } from '../arc';
import { arcOfEdge, edgesOf, nearestOnEdge, type Edge } from '../edge';
import { orient } from '../orient';
import type { Corner, Outline, Point } from '../outline';
import { distance } from '../vector';

export type Where = 'inside' | 'on' | 'outside';

/** Where a point lies; 'on' within half a tick of an edge. */
export function whereIs(p: Point, outline: Outline): Where {
	let inside = false;
	let from = outline.at(-1);
	if (!from) return 'outside';
	for (const to of outline) {
		const met = meets(p, from, to);
		if (met === 'on') return 'on';
		if (met === 'crossed') inside = !inside;
		from = to;
	}
	return inside ? 'inside' : 'outside';
}

/**
 * Does the point lie on the edge that leaves `from`, or does the edge part it from the far right?
 */
export function meets(p: Point, from: Corner, to: Corner): 'on' | 'crossed' | null {
	const bulge = from.bulge ?? 0;
	if (bulge === 0) return meetsStraight(p, from, to);
	const e: Edge = { from, to, bulge };
	if (nearestOnEdge(p, e).distance < 0.5) return 'on';
	// A ray to +x crosses the chord; between the chord and its arc the answer is the other one.
	const left = leftOfChord(p, e);
	const chord = from.y > p.y !== to.y > p.y && left === to.y > from.y;
	const arc = arcOfEdge(e);
	const between = arc !== null && inSegment(p, e, arc, left);
	return chord !== between ? 'crossed' : null;
}

/** Most edges of a long outline are nowhere near: they cost a few comparisons. */
function meetsStraight(p: Point, a: Corner, b: Corner): 'on' | 'crossed' | null {
	if (a.x < p.x - 1 && b.x < p.x - 1) return null;
	if ((a.y < p.y - 1 && b.y < p.y - 1) || (a.y > p.y + 1 && b.y > p.y + 1)) return null;
	const beside = a.x > p.x + 1 && b.x > p.x + 1;
	const e: Edge = { from: a, to: b, bulge: 0 };
	if (!beside && nearestOnEdge(p, e).distance < 0.5) return 'on';
	const up = b.y > a.y;
	if (a.y > p.y === b.y > p.y) return null;
	return beside || leftOfChord(p, e) === up ? 'crossed' : null;
}

/**
 * A point on the chord of an arc counts as the ray test takes it: as if it lay a hair higher, then
 * a hair to the left.
 */
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
