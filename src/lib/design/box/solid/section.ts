import { nth } from '../../../measure';
import {
	cornerAt,
	crossings,
	lineLine,
	type Line,
	type Point,
	dot,
	leftOf,
	minus,
	plus,
	times,
	unit,
	whereIs,
} from '../../../geometry';
import { planeArea } from './solid';

/*
 * Cross-sections: the profile set in by the thickness of each of its boards, and the quadrilateral
 * each board shows when the box is sawn through.
 */

/** Side `i` of a polygon as an endless line, shifted inward (to the left) by `by`. */
export function sideLine(corners: readonly Point[], i: number, by = 0): Line {
	const a = cornerAt(corners, i);
	const heading = unit(minus(cornerAt(corners, i + 1), a));
	return { at: plus(a, times(leftOf(heading), by)), heading };
}

/**
 * Each side shifted inward by its own distance (negative: outward). Null when a side vanishes or
 * the result crosses itself.
 */
export function sidesSetIn(corners: readonly Point[], by: readonly number[]): Point[] | null {
	const lines = corners.map((_, i) => sideLine(corners, i, by[i] ?? 0));
	const moved: Point[] = [];
	for (let i = 0; i < corners.length; i++) {
		const p = lineLine(at2(lines, i - 1), at2(lines, i));
		if (!p) return null;
		moved.push(p);
	}
	const kept = moved.every(
		(p, i) => dot(minus(cornerAt(moved, i + 1), p), nth(lines, i).heading) > 1,
	);
	return kept && planeArea(moved) > 0 && crossings(moved, 1).length === 0 ? moved : null;
}

function at2(lines: readonly Line[], i: number): Line {
	return nth(lines, ((i % lines.length) + lines.length) % lines.length);
}

/**
 * The two boards that meet at a corner: the one whose side ends there, the one whose side starts
 * there, or neither runs past.
 */
export type Past = 'before' | 'after' | 'mitre';

/**
 * One board seen in section: outside from start to end, inside from start to end, in the direction
 * of its side.
 */
export interface Quad {
	readonly outside: readonly [Point, Point];
	readonly inside: readonly [Point, Point];
}

/**
 * The quadrilaterals of all boards between two polygons that correspond corner by corner. At an
 * outward corner the board that runs past ends flush with its neighbour's outside and the neighbour
 * stops at its inside; at an inward corner (of a step) it is the other way about. Neither changes
 * the air inside.
 */
export function quads(
	inner: readonly Point[],
	outer: readonly Point[],
	joints: readonly Past[],
): Quad[] {
	return inner.map((_, i) => {
		const [insideStart, outsideStart] = cut(inner, outer, i, i, joints);
		const [insideEnd, outsideEnd] = cut(inner, outer, i, i + 1, joints);
		return { outside: [outsideStart, outsideEnd], inside: [insideStart, insideEnd] };
	});
}

/** Inside and outside point where side `i` is cut at corner `k` (its start or its end). */
function cut(
	inner: readonly Point[],
	outer: readonly Point[],
	i: number,
	k: number,
	joints: readonly Past[],
): [Point, Point] {
	const n = inner.length;
	const joint = nth(joints, k % n);
	if (joint === 'mitre') return [cornerAt(inner, k), cornerAt(outer, k)];
	const starts = k === i;
	const past = starts ? joint === 'after' : joint === 'before';
	const stopsOutside = past === convex(inner, k);
	const line = sideLine(stopsOutside ? outer : inner, starts ? i - 1 : i + 1);
	return [crossed(sideLine(inner, i), line), crossed(sideLine(outer, i), line)];
}

export function crossed(a: Line, b: Line): Point {
	const p = lineLine(a, b);
	if (!p) throw new Error('bug: two neighbouring sides run parallel');
	return p;
}

export function convex(corners: readonly Point[], k: number): boolean {
	const before = minus(cornerAt(corners, k), cornerAt(corners, k - 1));
	const after = minus(cornerAt(corners, k + 1), cornerAt(corners, k));
	return before.x * after.y - before.y * after.x > 0;
}

/** Degrees between the inside faces at corner `k`, 0 to 360; past 180 at an inward corner. */
export function insideAngle(corners: readonly Point[], k: number): number {
	const a = minus(cornerAt(corners, k + 1), cornerAt(corners, k));
	const b = minus(cornerAt(corners, k - 1), cornerAt(corners, k));
	const angle = (Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y) * 180) / Math.PI;
	return angle < 0 ? angle + 360 : angle;
}

/** Corners of a quadrilateral, counter-clockwise. */
function aroundQuad(q: Quad): Point[] {
	return [q.outside[0], q.outside[1], q.inside[1], q.inside[0]];
}

/**
 * Boards that cannot be made: a side so short that its two cuts cross, or two boards in one place.
 * Indexes of sides.
 */
export function clashingQuads(all: readonly Quad[]): [number, number][] {
	const found: [number, number][] = [];
	all.forEach((q, i) => {
		if (!forward(q)) found.push([i, i]);
		for (let j = i + 1; j < all.length; j++) {
			if (overlap(aroundQuad(q), aroundQuad(nth(all, j)))) found.push([i, j]);
		}
	});
	return found;
}

/** Do two boards seen in section stand in one place? Faces that touch share no more than a tick. */
export const quadsOverlap = (a: Quad, b: Quad): boolean => overlap(aroundQuad(a), aroundQuad(b));

/** Does a board seen in section lie within a polygon? No side of it may cut into the board. */
export function quadWithin(q: Quad, corners: readonly Point[]): boolean {
	const own = aroundQuad(q);
	const middle = times(
		own.reduce((sum, p) => plus(sum, p)),
		1 / own.length,
	);
	if (whereIs(middle, corners) === 'outside') return false;
	return !corners.some((a, i) => overlap(own, [a, cornerAt(corners, i + 1)]));
}

/** Do both faces run the same way? */
function forward(q: Quad): boolean {
	const out = minus(q.outside[1], q.outside[0]);
	const into = minus(q.inside[1], q.inside[0]);
	return dot(out, into) > 0;
}

/**
 * Do two convex shapes share more than an edge? True unless a side of one has the other wholly
 * beyond it.
 */
function overlap(a: readonly Point[], b: readonly Point[]): boolean {
	return !separates(a, b) && !separates(b, a);
}

function separates(a: readonly Point[], b: readonly Point[]): boolean {
	return a.some((_, i) => {
		const line = sideLine(a, i);
		return b.every(
			(p) => line.heading.x * (p.y - line.at.y) - line.heading.y * (p.x - line.at.x) < 1,
		);
	});
}
