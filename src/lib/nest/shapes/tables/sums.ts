import { forbidden, type Point } from '../../../geometry';

/**
 * Where one kind of piece may not lie beside another: the convex sums of their parts, flat. Sum s
 * has the edges `first[s]` to `first[s + 1]`, three numbers each: its normal nx, ny and the c with
 * n . t < c inside; its box is four numbers of `boxes`: left, right, bottom, top.
 */
export interface Sums {
	readonly count: number;
	readonly first: Int32Array;
	readonly edges: Float64Array;
	readonly boxes: Float64Array;
}

/** All edges of the sums lie `margin` ticks farther out than the parts alone ask for. */
export function sumsOf(
	a: readonly (readonly Point[])[],
	b: readonly (readonly Point[])[],
	margin: number,
): Sums {
	const all = a.flatMap((one) => b.map((other) => forbidden(one, other)));
	const first = new Int32Array(all.length + 1);
	all.forEach((sum, s) => (first[s + 1] = first[s]! + sum.edges.length / 3));
	const edges = new Float64Array(3 * first[all.length]!);
	const boxes = new Float64Array(4 * all.length);
	all.forEach((sum, s) => {
		edges.set(sum.edges, 3 * first[s]!);
		boxes.set(
			[sum.left - margin, sum.right + margin, sum.bottom - margin, sum.top + margin],
			4 * s,
		);
	});
	for (let e = 2; e < edges.length; e += 3) edges[e]! += margin;
	return { count: all.length, first, edges, boxes };
}

/** How deep x, y lies in one of the sums; 0 where that is no more than `least`. */
export function depthInSum(sums: Sums, s: number, x: number, y: number, least: number): number {
	const { first, edges } = sums;
	let depth = Infinity;
	for (let e = 3 * first[s]!, end = 3 * first[s + 1]!; e < end; e += 3) {
		const d = edges[e + 2]! - edges[e]! * x - edges[e + 1]! * y;
		if (d <= least) return 0;
		if (d < depth) depth = d;
	}
	return depth;
}

/**
 * How far a piece at x, y may go along dx, dy (of length one) before it enters the sum; 0 inside,
 * Infinity when it never does.
 */
export function freeRun(
	sums: Sums,
	s: number,
	[x, y]: readonly [number, number],
	[dx, dy]: readonly [number, number],
): number {
	let enter = -Infinity;
	let leave = Infinity;
	for (let e = 3 * sums.first[s]!; e < 3 * sums.first[s + 1]!; e += 3) {
		const [nx, ny, c] = [sums.edges[e]!, sums.edges[e + 1]!, sums.edges[e + 2]!];
		const inside = c - nx * x - ny * y;
		const towards = nx * dx + ny * dy; // how fast it comes out
		if (towards === 0) {
			if (inside <= 0) return Infinity;
		} else if (towards < 0) enter = Math.max(enter, inside / towards);
		else leave = Math.min(leave, inside / towards);
	}
	return enter >= leave || leave <= 0 ? Infinity : Math.max(0, enter);
}
