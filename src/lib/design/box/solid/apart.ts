import { nth } from '../../../measure';
import type { Solid } from './solid';
import { cross3, dot3, length3, sub3, unit3, type Point3 } from './vec';

/** Bodies that touch share no more than this, ticks. */
const TOUCH = 2;

/**
 * Have two convex bodies nothing but a face, an edge or a corner in common? The separating axis
 * test: square to a face of either, or to an edge of both.
 */
export function apart(a: Solid, b: Solid): boolean {
	const [pa, pb] = [a, b].map((s) => [...s.outside, ...s.inside]) as [Point3[], Point3[]];
	const [ea, eb] = [edgesOf(a), edgesOf(b)];
	const crossings = ea.flatMap((e) => eb.map((f) => cross3(e, f)));
	const axes = [...facesOf(a), ...facesOf(b), ...crossings].filter((n) => length3(n) > 1e-6);
	return axes.map(unit3).some((n) => {
		const [p, q] = [spanOf(pa, n), spanOf(pb, n)];
		return p[1] <= q[0] + TOUCH || q[1] <= p[0] + TOUCH;
	});
}

function spanOf(points: readonly Point3[], n: Point3): [number, number] {
	const at = points.map((p) => dot3(p, n));
	return [Math.min(...at), Math.max(...at)];
}

/** Directions of all edges, of length 1. */
function edgesOf({ outside, inside }: Solid): Point3[] {
	const n = outside.length;
	const rings = [outside, inside].flatMap((f) => f.map((p, i) => sub3(nth(f, (i + 1) % n), p)));
	const down = outside.map((p, i) => sub3(nth(inside, i), p));
	return [...rings, ...down].filter((e) => length3(e) > 1).map(unit3);
}

function facesOf({ outside, inside }: Solid): Point3[] {
	const n = outside.length;
	const normal = (a: Point3, b: Point3, c: Point3): Point3 => cross3(sub3(b, a), sub3(c, a));
	const sides = outside.map((p, i) => normal(p, nth(outside, (i + 1) % n), nth(inside, i)));
	return [
		normal(nth(outside, 0), nth(outside, 1), nth(outside, 2)),
		normal(nth(inside, 0), nth(inside, 1), nth(inside, 2)),
		...sides,
	];
}
