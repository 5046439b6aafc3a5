import { bulgeThrough } from '../arc';
import { nearestOnEdge } from '../edge';
import type { Corner, Point } from '../outline';
import { corner } from '../turn';
import { distance } from '../vector';

/** A smooth curve over 0..1. */
export type Curve = (t: number) => Point;

/**
 * The curve as a chain of arcs and lines that stays within `tolerance` (ticks) of it: the corners
 * from its start up to, but not with, its end. Arcs, not chords: a wrapped edge needs its radius,
 * and a router its tangent.
 */
export function arcsAlong(curve: Curve, tolerance: number, pieces = 1): Corner[] {
	const corners: Corner[] = [];
	for (let k = 0; k < pieces; k++)
		piece(curve, [k / pieces, (k + 1) / pieces], tolerance, DEPTH, corners);
	return corners;
}

/** Halved this often at most: a curve that still departs is no curve of any panel. */
const DEPTH = 10;

function piece(
	curve: Curve,
	[t0, t1]: readonly [number, number],
	tolerance: number,
	depth: number,
	into: Corner[],
): void {
	const at = (f: number): Point => curve(t0 + (t1 - t0) * f);
	const [from, to] = [at(0), at(1)];
	const bulge = straightened(bulgeThrough(from, at(0.5), to), distance(from, to), tolerance);
	const edge = { from, to, bulge };
	const off = [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875].map(
		(f) => nearestOnEdge(at(f), edge).distance,
	);
	if (depth === 0 || (Math.abs(bulge) < 0.7 && Math.max(...off) <= tolerance)) {
		into.push(corner(from, bulge));
		return;
	}
	const middle = (t0 + t1) / 2;
	piece(curve, [t0, middle], tolerance, depth - 1, into);
	piece(curve, [middle, t1], tolerance, depth - 1, into);
}

/** An arc that rises less than a tenth of the tolerance is a line. */
function straightened(bulge: number, chord: number, tolerance: number): number {
	return Math.abs(bulge) * (chord / 2) < tolerance / 10 ? 0 : bulge;
}

/**
 * An ellipse: centre, half axis as a vector, the other half axis as a part of it, from angle a0
 * through sweep.
 */
export function ellipse(
	centre: Point,
	axis: Point,
	ratio: number,
	a0 = 0,
	sweep = 2 * Math.PI,
): Curve {
	return (t) => {
		const u = Math.cos(a0 + sweep * t);
		const v = Math.sin(a0 + sweep * t) * ratio;
		return { x: centre.x + axis.x * u - axis.y * v, y: centre.y + axis.y * u + axis.x * v };
	};
}

/** A cubic curve between two points with two control points. */
export function cubic(a: Point, b: Point, c: Point, d: Point): Curve {
	return (t) => {
		const s = 1 - t;
		const [p, q, r, u] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
		return {
			x: p * a.x + q * b.x + r * c.x + u * d.x,
			y: p * a.y + q * b.y + r * c.y + u * d.y,
		};
	};
}
