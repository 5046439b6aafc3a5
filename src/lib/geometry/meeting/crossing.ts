import { nth } from '../../measure';
import { arcOfEdge, edgeBounds, edgesOf, fractionOnArc, type Edge } from '../edge';
import { circleCircle, lineCircle } from './meet';
import { orient } from '../orient';
import type { Outline, Point, Rect } from '../outline';
import { cross, distance, dot, minus, plus, same, times, unit } from '../vector';

/** Two edges of an outline that meet where they should not, and where. */
export interface Crossing {
	readonly edges: readonly [number, number];
	readonly at: Point;
}

/**
 * Where an outline crosses or touches itself, at most `most` places. Exact between straight edges
 * on the grid; with arcs to a tick. A sweep from left to right: edges that are apart in x are never
 * compared.
 */
export function crossings(outline: Outline, most = 20): Crossing[] {
	const edges = edgesOf(outline);
	const boxes = edges.map(edgeBounds);
	const order = edges.map((_, i) => i).sort((a, b) => nth(boxes, a).x - nth(boxes, b).x || a - b);
	const found: Crossing[] = [];
	let active: number[] = [];
	for (const i of order) {
		active = active.filter((j) => nth(boxes, j).x + nth(boxes, j).length >= nth(boxes, i).x);
		for (const j of active) {
			if (!nearInY(nth(boxes, i), nth(boxes, j))) continue;
			const at = meeting(edges, Math.min(i, j), Math.max(i, j));
			if (at) found.push({ edges: [Math.min(i, j), Math.max(i, j)], at });
			if (found.length >= most) return found;
		}
		active.push(i);
	}
	return found;
}

/** Do all corners lie on one straight line, so that it encloses nothing and crosses nothing? */
export function onOneLine(outline: Outline): boolean {
	if (outline.some((c) => c.bulge)) return false;
	const from = nth(outline, 0);
	const to = outline.find((c) => !same(c, from));
	return !to || outline.every((c) => orient(from, to, c) === 0);
}

function nearInY(a: Rect, b: Rect): boolean {
	return a.y <= b.y + b.width && b.y <= a.y + a.width;
}

function meeting(edges: readonly Edge[], i: number, j: number): Point | null {
	const a = nth(edges, i);
	const b = nth(edges, j);
	if (a.bulge === 0 && b.bulge === 0)
		return straightMeeting(a, b, sharedCorners(edges.length, i, j));
	const shared = sharedPoints(a, b, sharedCorners(edges.length, i, j));
	return curvedMeetings(a, b).find((p) => shared.every((s) => !grazes(p, s, a, b))) ?? null;
}

interface Shared {
	readonly next: boolean; // the second edge starts where the first one ends
	readonly previous: boolean;
}

function sharedCorners(n: number, i: number, j: number): Shared {
	return { next: j === i + 1, previous: j === n - 1 && i === 0 };
}

function sharedPoints(a: Edge, b: Edge, shared: Shared): Point[] {
	const points: Point[] = [];
	if (shared.next && same(a.to, b.from)) points.push(a.to);
	if (shared.previous && same(b.to, a.from)) points.push(a.from);
	return points;
}

/** Do two straight edges share a point that is not their common corner? */
function straightMeeting(a: Edge, b: Edge, shared: Shared): Point | null {
	if (shared.next || shared.previous) return foldedBack(a, b, shared);
	const o1 = orient(a.from, a.to, b.from);
	const o2 = orient(a.from, a.to, b.to);
	const o3 = orient(b.from, b.to, a.from);
	const o4 = orient(b.from, b.to, a.to);
	if (o1 * o2 < 0 && o3 * o4 < 0) return properMeeting(a, b);
	if (o1 === 0 && within(b.from, a)) return b.from;
	if (o2 === 0 && within(b.to, a)) return b.to;
	if (o3 === 0 && within(a.from, b)) return a.from;
	if (o4 === 0 && within(a.to, b)) return a.to;
	return null;
}

/** Neighbours run over each other only when the second turns straight back. */
function foldedBack(a: Edge, b: Edge, shared: Shared): Point | null {
	const [first, second] = shared.next ? [a, b] : [b, a];
	// two edges only: a digon has no inside to cross
	if (shared.next && shared.previous) return null;
	if (orient(first.from, first.to, second.to) !== 0) return null;
	return dot(minus(first.to, first.from), minus(second.to, second.from)) < 0 ? first.to : null;
}

function within(p: Point, e: Edge): boolean {
	return (
		p.x >= Math.min(e.from.x, e.to.x) &&
		p.x <= Math.max(e.from.x, e.to.x) &&
		p.y >= Math.min(e.from.y, e.to.y) &&
		p.y <= Math.max(e.from.y, e.to.y)
	);
}

function properMeeting(a: Edge, b: Edge): Point {
	const u = minus(a.to, a.from);
	const v = minus(b.to, b.from);
	return plus(a.from, times(u, cross(minus(b.from, a.from), v) / cross(u, v)));
}

/** Points two edges have in common when one of them at least is an arc. */
function curvedMeetings(a: Edge, b: Edge): Point[] {
	const arcA = arcOfEdge(a);
	const arcB = arcOfEdge(b);
	if (arcA && arcB) return circleCircle(arcA, arcB).filter((p) => onEdge(p, a) && onEdge(p, b));
	const [line, arc] = arcA ? [b, arcA] : [a, arcB];
	if (!arc) return [];
	const heading = unit(minus(line.to, line.from));
	return lineCircle({ at: line.from, heading }, arc).filter((p) => onEdge(p, a) && onEdge(p, b));
}

/** Is a point of the edge's line or circle on the edge itself, to a tick? */
function onEdge(p: Point, e: Edge): boolean {
	if (distance(p, e.from) <= 1 || distance(p, e.to) <= 1) return true;
	const arc = arcOfEdge(e);
	if (arc) return fractionOnArc(arc, p) <= 1;
	return (
		dot(minus(p, e.from), minus(e.to, e.from)) >= 0 && dot(minus(p, e.to), minus(e.from, e.to)) >= 0
	);
}

/**
 * Where a rounding runs into its neighbour on the grid, the two graze each other for a stretch: no
 * deeper than a few ticks, which no bench can see, but long when the radius is large.
 */
function grazes(p: Point, corner: Point, a: Edge, b: Edge): boolean {
	const radii = [arcOfEdge(a)?.radius, arcOfEdge(b)?.radius].filter((r) => r !== undefined);
	const d = distance(p, corner);
	return d <= 2 || radii.some((r) => (d * d) / (8 * r) < 4);
}
