import { around, nth } from '../measure';
import { arcOf, arcTangent, onArc, type Arc } from './arc';
import type { Corner, Outline, Point, Rect } from './outline';
import { between, distance, dot, minus, unit } from './vector';

/** One edge of an outline, from corner to corner. */
export interface Edge {
	readonly from: Point;
	readonly to: Point;
	readonly bulge: number;
}

/** The edges of an outline; the edge at index i leaves corner i. */
export function edgesOf(outline: Outline): Edge[] {
	const last = outline.length - 1;
	return outline.map((c, i) => ({
		from: c,
		to: nth(outline, i === last ? 0 : i + 1),
		bulge: c.bulge ?? 0,
	}));
}

/** Corner `i` counted round and round. */
export function cornerAt(outline: Outline, i: number): Corner {
	return around(outline, i);
}

/** The arc of a curved edge, or null for a straight one. */
export function arcOfEdge(e: Edge): Arc | null {
	return e.bulge === 0 || distance(e.from, e.to) === 0 ? null : arcOf(e.from, e.to, e.bulge);
}

export function edgeLength(e: Edge): number {
	const arc = arcOfEdge(e);
	return arc ? arc.radius * Math.abs(arc.sweep) : distance(e.from, e.to);
}

/** The point a fraction `t` (0..1) of the way along. */
export function alongEdge(e: Edge, t: number): Point {
	const arc = arcOfEdge(e);
	if (!arc || t === 0 || t === 1) return t === 1 ? e.to : between(e.from, e.to, t);
	return onArc(arc, arc.start + arc.sweep * t);
}

/** Direction of travel a fraction `t` of the way along, length 1. */
export function headingAt(e: Edge, t: number): Point {
	const arc = arcOfEdge(e);
	return arc ? arcTangent(arc, arc.start + arc.sweep * t) : unit(minus(e.to, e.from));
}

/** Which fraction of the edge lies nearest to `p`, and how far away it is. */
export function nearestOnEdge(
	p: Point,
	e: Edge,
): { readonly t: number; readonly distance: number } {
	const arc = arcOfEdge(e);
	if (!arc) {
		const along = minus(e.to, e.from);
		const square = dot(along, along);
		const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(p, e.from), along) / square));
		return { t, distance: distance(p, between(e.from, e.to, t)) };
	}
	const t = fractionOnArc(arc, p);
	if (t <= 1) return { t, distance: Math.abs(distance(p, arc.centre) - arc.radius) };
	const a = distance(p, e.from);
	const b = distance(p, e.to);
	return a < b ? { t: 0, distance: a } : { t: 1, distance: b };
}

/**
 * How far round the arc the direction of `p` lies, as a fraction of its sweep; past 1 when it is
 * beside the arc.
 */
export function fractionOnArc(arc: Arc, p: Point): number {
	const turn = 2 * Math.PI;
	const angle = Math.atan2(p.y - arc.centre.y, p.x - arc.centre.x) - arc.start;
	const forward = arc.sweep > 0 ? angle : -angle;
	return (((forward % turn) + turn) % turn) / Math.abs(arc.sweep);
}

export function edgeBounds(e: Edge): Rect {
	const points: Point[] = [e.from, e.to];
	const arc = arcOfEdge(e);
	if (arc) {
		for (const quarter of [0, Math.PI / 2, Math.PI, -Math.PI / 2]) {
			const p = onArc(arc, quarter);
			if (fractionOnArc(arc, p) < 1) points.push(p);
		}
	}
	return boundsOfPoints(points);
}

export function boundsOfPoints(points: readonly Point[]): Rect {
	let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
	for (const p of points) {
		x0 = Math.min(x0, p.x);
		y0 = Math.min(y0, p.y);
		x1 = Math.max(x1, p.x);
		y1 = Math.max(y1, p.y);
	}
	return { x: x0, y: y0, length: x1 - x0, width: y1 - y0 };
}
