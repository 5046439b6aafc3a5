import { nth } from '../../measure';
/*
 * Dual feasible functions: weights f of a size x out of a whole W, nondecreasing, f(W) = 1, and
 * never more for parts than for their sum (f(a) + f(b) <= f(a + b)). Weighing lengths by one and
 * widths by another turns a layout on a sheet into a layout on a smaller or equal one, so the
 * weighed areas of all pieces need no more than the weighed areas of the sheets. S. P. Fekete, J.
 * Schepers, "New classes of fast lower bounds for bin packing problems", Math. Programming 91
 * (2001); J. Carlier, F. Clautiaux, A. Moukrim, "New reduction procedures and lower bounds for the
 * two-dimensional bin packing problem with fixed orientation", Computers & Oper. Res. 34 (2007).
 */

export type DualFeasible = (x: number) => number;

function plainShare(whole: number): DualFeasible {
	return (x) => x / whole;
}

/** Rounds to k-ths: (k + 1) x / W is kept where whole, else rounded down and divided by k. */
export function rounding(whole: number, k: number): DualFeasible {
	return (x) => {
		const steps = (k + 1) * x;
		return steps % whole === 0 ? x / whole : Math.floor(steps / whole) / k;
	};
}

/**
 * Sizes below eps weigh nothing, sizes that leave less than eps weigh all. eps up to half of the
 * whole.
 */
export function threshold(whole: number, eps: number): DualFeasible {
	return (x) => (x > whole - eps ? 1 : x < eps ? 0 : x / whole);
}

/** Counts how many of size k fit into it, or no longer fit beside it. k up to half of the whole. */
export function counting(whole: number, k: number): DualFeasible {
	const all = Math.floor(whole / k);
	return (x) => {
		if (2 * x > whole) return (all - Math.floor((whole - x) / k)) / all;
		if (2 * x === whole) return 0.5;
		return Math.floor(x / k) / all;
	};
}

/** Every function worth trying for these sizes; at most about 2 * most + 8 of them. */
export function functionsFor(
	whole: number,
	sizes: readonly number[],
	most: number,
): DualFeasible[] {
	const useful = new Set<number>();
	for (const x of sizes) {
		if (2 * x <= whole) useful.add(x);
		else if (x < whole) {
			useful.add(whole - x);
			if (2 * (whole - x + 1) <= whole) useful.add(whole - x + 1);
		}
	}
	const all = [...useful].sort((a, b) => a - b);
	const step = Math.max(1, all.length / most);
	const picked: number[] = [];
	for (let i = 0; i < all.length && picked.length < most; i++)
		picked.push(all[Math.floor(i * step)] ?? nth(all, all.length - 1));
	return [
		plainShare(whole),
		...[1, 2, 3, 4, 5, 6].map((k) => rounding(whole, k)),
		...picked.map((eps) => threshold(whole, eps)),
		...picked.map((k) => counting(whole, k)),
	];
}
