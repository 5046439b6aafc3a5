import type { Point } from './outline';

/**
 * 1 when `c` lies left of the line from `a` to `b`, -1 right of it, 0 on it. Exact for points of
 * the grid: where the floating product might have lost its last digits, whole numbers of any size
 * decide.
 */
export function orient(a: Point, b: Point, c: Point): -1 | 0 | 1 {
	const left = (b.x - a.x) * (c.y - a.y);
	const right = (b.y - a.y) * (c.x - a.x);
	const det = left - right;
	// Twice the rounding of both products and their difference.
	const doubt = (Math.abs(left) + Math.abs(right)) * 4.5e-16;
	if (det > doubt) return 1;
	if (det < -doubt) return -1;
	return whole(a) && whole(b) && whole(c) ? exact(a, b, c) : (Math.sign(det) as -1 | 0 | 1);
}

const whole = (p: Point): boolean => Number.isSafeInteger(p.x) && Number.isSafeInteger(p.y);

function exact(a: Point, b: Point, c: Point): -1 | 0 | 1 {
	const det = BigInt(b.x - a.x) * BigInt(c.y - a.y) - BigInt(b.y - a.y) * BigInt(c.x - a.x);
	return det > 0n ? 1 : det < 0n ? -1 : 0;
}
