import { nth } from '../../../measure';
import type { Curve, Point } from '../../../geometry';

export interface Spline {
	readonly degree: number;
	readonly knots: readonly number[];
	readonly points: readonly Point[];
	/** One per point; empty when they are all 1. */
	readonly weights: readonly number[];
}

/**
 * A B-spline, rational where it has weights, over 0..1; null when its knots do not fit its points.
 */
export function splineCurve(s: Spline): Curve | null {
	const { degree, knots, points } = s;
	const n = points.length;
	const fits = degree >= 1 && degree <= 10 && n > degree && knots.length === n + degree + 1;
	if (!fits || knots.some((k, i) => i > 0 && k < nth(knots, i - 1))) return null;
	const from = nth(knots, degree);
	const to = nth(knots, n);
	if (!(to > from)) return null;
	return (t) => at(s, from + (to - from) * t);
}

/** Spans between different knots: where the curve may bend afresh. */
export function spansOf(s: Spline): number {
	return new Set(s.knots).size - 1;
}

/** De Boor's scheme on weighted points. */
function at(s: Spline, u: number): Point {
	const { degree: p, knots } = s;
	const last = s.points.length - 1;
	let k = p;
	while (k < last && nth(knots, k + 1) <= u) k++;
	const d = Array.from({ length: p + 1 }, (_, j) => {
		const point = nth(s.points, j + k - p);
		const w = s.weights[j + k - p] ?? 1;
		return { x: point.x * w, y: point.y * w, w };
	});
	for (let r = 1; r <= p; r++)
		for (let j = p; j >= r; j--) {
			const low = nth(knots, j + k - p);
			const span = nth(knots, j + 1 + k - r) - low;
			const a = span === 0 ? 0 : (u - low) / span;
			const [b, c] = [nth(d, j - 1), nth(d, j)];
			d[j] = { x: b.x + (c.x - b.x) * a, y: b.y + (c.y - b.y) * a, w: b.w + (c.w - b.w) * a };
		}
	const end = nth(d, p);
	return { x: end.x / end.w, y: end.y / end.w };
}
