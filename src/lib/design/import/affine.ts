import {
	type EdgeRun,
	arcsAlong,
	alongEdge,
	type Corner,
	type Point,
	corner,
} from '../../geometry';

/** x' = a x + c y + e, y' = b x + d y + f. */
export interface Affine {
	readonly a: number;
	readonly b: number;
	readonly c: number;
	readonly d: number;
	readonly e: number;
	readonly f: number;
}

export const SAME: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const apply = (m: Affine, p: Point): Point => ({
	x: m.a * p.x + m.c * p.y + m.e,
	y: m.b * p.x + m.d * p.y + m.f,
});

/** First `inner`, then `outer`. */
export function after(inner: Affine, outer: Affine): Affine {
	const origin = apply(outer, { x: inner.e, y: inner.f });
	return {
		a: outer.a * inner.a + outer.c * inner.b,
		b: outer.b * inner.a + outer.d * inner.b,
		c: outer.a * inner.c + outer.c * inner.d,
		d: outer.b * inner.c + outer.d * inner.d,
		e: origin.x,
		f: origin.y,
	};
}

/** The most a length grows under it. */
export function stretchOf(m: Affine): number {
	return Math.max(Math.hypot(m.a, m.b), Math.hypot(m.c, m.d));
}

/** Is it flattened to next to nothing, or drawn out past all measure in one direction? */
export function isFlat(m: Affine): boolean {
	const most = stretchOf(m);
	return !(Math.abs(m.a * m.d - m.b * m.c) > most * most * 1e-3);
}

/**
 * A run as it lies once moved; arcs stay arcs unless they are drawn out into ellipses, which are
 * followed to `fine`.
 */
export function movedRun(run: EdgeRun, m: Affine, fine: number): EdgeRun {
	const at = (p: Point): Point => apply(m, p);
	const turnedOver = m.a * m.d - m.b * m.c < 0 ? -1 : 1;
	if (keepsCircles(m))
		return {
			...run,
			corners: run.corners.map((c) => corner(at(c), turnedOver * (c.bulge ?? 0))),
		};
	const corners = run.corners.flatMap((c, i): Corner[] => {
		const to = run.corners[i + 1] ?? (run.closed ? run.corners[0] : undefined);
		if (!c.bulge || !to) return [corner(at(c))];
		const edge = { from: c, to, bulge: c.bulge };
		return arcsAlong((t) => at(alongEdge(edge, t)), fine, 2);
	});
	return { ...run, corners };
}

/** Turned, mirrored and scaled alike in all directions, but not drawn out in one. */
function keepsCircles({ a, b, c, d }: Affine): boolean {
	const size = Math.hypot(a, b);
	return (
		Math.abs(Math.hypot(c, d) - size) <= 1e-9 * size &&
		Math.abs(a * c + b * d) <= 1e-9 * size * size
	);
}
