import { arcOfEdge, headingAt, type Edge } from '../edge';
import { circleCircle, lineCircle, lineLine, type Circle, type Line } from '../meeting';
import type { Point } from '../outline';
import { cross, distance, dot, leftOf, minus, plus, times, unit } from '../vector';

/** An edge moved sideways: the endless line or whole circle it now lies on. */
export interface SetCurve {
	readonly edge: number; // index in the outline it comes from
	readonly from: Point; // the original corners
	readonly to: Point;
	readonly inward: number;
	readonly line: Line | null;
	readonly circle: Circle | null;
	readonly sweep: number; // of the original arc; 0 for a line
	readonly bulge: number; // likewise
	/**
	 * A rounding between edges that move by different distances: it touches both, wherever that is.
	 */
	readonly blend: boolean;
}

/** The edge moved `inward` ticks to its left; null when its radius vanishes. */
export function setCurve(e: Edge, edge: number, inward: number): SetCurve | null {
	const { from, to, bulge } = e;
	const arc = arcOfEdge(e);
	if (!arc) {
		const heading = unit(minus(to, from));
		const line = { at: plus(from, times(leftOf(heading), inward)), heading };
		return { edge, from, to, inward, line, circle: null, sweep: 0, bulge, blend: false };
	}
	const radius = arc.radius - Math.sign(arc.sweep) * inward;
	if (radius < 1) return null;
	const circle = { centre: arc.centre, radius };
	return { edge, from, to, inward, line: null, circle, sweep: arc.sweep, bulge, blend: false };
}

/**
 * A rounding between two straight edges that move by different distances: its radius follows their
 * mean, its centre keeps it touching both. Null when the radius vanishes or the edges run parallel.
 */
export function blendCurve(
	e: Edge,
	edge: number,
	before: SetCurve,
	after: SetCurve,
): SetCurve | null {
	const arc = arcOfEdge(e);
	if (!arc || !before.line || !after.line) return null;
	const side = Math.sign(arc.sweep);
	const inward = (before.inward + after.inward) / 2;
	const radius = arc.radius - side * inward;
	if (radius < 1) return null;
	const centre = lineLine(aside(before.line, side * radius), aside(after.line, side * radius));
	if (!centre) return null;
	const circle = { centre, radius };
	const { from, to, bulge } = e;
	return { edge, from, to, inward, line: null, circle, sweep: arc.sweep, bulge, blend: true };
}

function aside(line: Line, by: number): Line {
	return { at: plus(line.at, times(leftOf(line.heading), by)), heading: line.heading };
}

const SMOOTH = Math.sin((0.5 * Math.PI) / 180);
/**
 * Below this turn two edges with different distances are joined by a short jog: their lines would
 * meet far off.
 */
const SHALLOW = Math.sin((8 * Math.PI) / 180);

/**
 * Where the moved edges `a` and `b` join, `a` having led to `b` at `corner`: one point, or two with
 * a jog between them. Null when edges between them are gone and what is left does not meet.
 */
export function joint(
	a: SetCurve,
	b: SetCurve,
	corner: Point,
	headings: readonly [Point, Point] | null,
): readonly [Point, Point] | null {
	if (a.blend || b.blend) return touching(a, b);
	if (!headings) {
		const met = nearest(meetings(a, b), corner);
		return met && [met, met];
	}
	const [into, out] = headings;
	const turn = dot(into, out) > 0 ? Math.abs(cross(into, out)) : 1;
	if (turn < SMOOTH && a.inward === b.inward) {
		const p = plus(corner, times(unit(leftOf(plus(into, out))), a.inward));
		return [p, p];
	}
	const met = turn < SHALLOW && a.inward !== b.inward ? null : nearest(meetings(a, b), corner);
	if (met) return [met, met];
	return [plus(corner, times(leftOf(into), a.inward)), plus(corner, times(leftOf(out), b.inward))];
}

function touching(a: SetCurve, b: SetCurve): readonly [Point, Point] | null {
	const line = a.line ?? b.line;
	const circle = a.circle ?? b.circle;
	if (!line || !circle) return null;
	const foot = plus(line.at, times(line.heading, dot(minus(circle.centre, line.at), line.heading)));
	return [foot, foot];
}

function meetings(a: SetCurve, b: SetCurve): Point[] {
	if (a.line && b.line) {
		const p = lineLine(a.line, b.line);
		return p ? [p] : [];
	}
	if (a.circle && b.circle) return circleCircle(a.circle, b.circle);
	const line = a.line ?? b.line;
	const circle = a.circle ?? b.circle;
	return line && circle ? lineCircle(line, circle) : [];
}

function nearest(points: readonly Point[], to: Point): Point | null {
	let best: Point | null = null;
	for (const p of points) if (!best || distance(p, to) < distance(best, to)) best = p;
	return best;
}

/** The headings of two edges at the corner between them. */
export function headingsAt(into: Edge, out: Edge): readonly [Point, Point] {
	return [headingAt(into, 1), headingAt(out, 0)];
}
