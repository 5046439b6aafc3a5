import type { Point } from '../outline';

/**
 * Where a convex part B may not lie beside a convex part A: with B moved by t against A they
 * overlap exactly when t lies strictly inside this convex polygon, the sum of A and B turned about
 * the origin. Kept as half planes n . t < c, flat: nx, ny, c for each edge, then the box for a
 * quick no.
 */
export interface Forbidden {
	readonly edges: Float64Array;
	readonly left: number;
	readonly right: number;
	readonly bottom: number;
	readonly top: number;
}

/** Both counter-clockwise, convex, whole ticks. */
export function forbidden(a: readonly Point[], b: readonly Point[]): Forbidden {
	const corners = sum(fromLowest(a), fromLowest(b.map((p) => ({ x: -p.x, y: -p.y }))));
	const edges: number[] = [];
	corners.forEach((p, i) => {
		const q = corners[(i + 1) % corners.length]!;
		const length = Math.hypot(q.x - p.x, q.y - p.y);
		if (length === 0) return;
		const nx = (q.y - p.y) / length;
		const ny = (p.x - q.x) / length;
		edges.push(nx, ny, nx * p.x + ny * p.y);
	});
	return {
		edges: Float64Array.from(edges),
		left: Math.min(...corners.map((p) => p.x)),
		right: Math.max(...corners.map((p) => p.x)),
		bottom: Math.min(...corners.map((p) => p.y)),
		top: Math.max(...corners.map((p) => p.y)),
	};
}

function fromLowest(part: readonly Point[]): Point[] {
	const k = part.reduce((best, p, i) => {
		const q = part[best]!;
		return p.y < q.y || (p.y === q.y && p.x < q.x) ? i : best;
	}, 0);
	return [...part.slice(k), ...part.slice(0, k)];
}

/** The edges of both in one round by their direction. */
function sum(a: readonly Point[], b: readonly Point[]): Point[] {
	const corners: Point[] = [];
	let i = 0;
	let j = 0;
	while (i < a.length || j < b.length) {
		const p = a[i % a.length]!;
		const q = b[j % b.length]!;
		corners.push({ x: p.x + q.x, y: p.y + q.y });
		const u = a[(i + 1) % a.length]!;
		const v = b[(j + 1) % b.length]!;
		const turn = (u.x - p.x) * (v.y - q.y) - (u.y - p.y) * (v.x - q.x);
		const takeA = j >= b.length || (i < a.length && turn >= 0);
		const takeB = i >= a.length || (j < b.length && turn <= 0);
		if (takeA) i += 1;
		if (takeB) j += 1;
	}
	return corners;
}

/**
 * How deep t lies inside, the way out through the nearest edge; 0 or less when it lies outside or
 * on the border.
 */
export function depthIn(f: Forbidden, x: number, y: number): number {
	if (x <= f.left || x >= f.right || y <= f.bottom || y >= f.top) return 0;
	const { edges } = f;
	let depth = Infinity;
	for (let e = 0; e < edges.length; e += 3) {
		const d = edges[e + 2]! - edges[e]! * x - edges[e + 1]! * y;
		if (d <= 0) return 0;
		if (d < depth) depth = d;
	}
	return depth;
}
