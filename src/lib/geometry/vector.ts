import type { Outline, Point } from './outline';

/* Plane vectors. Results may be fractions of a tick; `snap` puts a point back on the grid. */

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (a: Point, k: number): Point => ({ x: a.x * k, y: a.y * k });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** Positive when `b` lies to the left of `a`. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
export const norm = (a: Point): number => Math.hypot(a.x, a.y);
export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
/** A quarter turn to the left: the inside of a counter-clockwise outline as seen along an edge. */
export const leftOf = (a: Point): Point => ({ x: -a.y, y: a.x });
export const between = (a: Point, b: Point, t: number): Point => ({
	x: a.x + (b.x - a.x) * t,
	y: a.y + (b.y - a.y) * t,
});
export const same = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

/** Length 1 in the same direction; the zero vector stays zero. */
export function unit(a: Point): Point {
	const n = norm(a);
	return n === 0 ? a : { x: a.x / n, y: a.y / n };
}

/** The nearest point of the grid. */
export function snapPoint(a: Point): Point {
	return { x: Math.round(a.x) + 0, y: Math.round(a.y) + 0 };
}

/** Straight edges through the nearest points of the grid. */
export function snapOutline(points: readonly Point[]): Outline {
	return points.map(snapPoint);
}

/** The direction at `degrees` counter-clockwise from +x; quarter turns are exact. */
export function direction(degrees: number): Point {
	const turn = ((degrees % 360) + 360) % 360;
	if (turn === 0) return { x: 1, y: 0 };
	if (turn === 90) return { x: 0, y: 1 };
	if (turn === 180) return { x: -1, y: 0 };
	if (turn === 270) return { x: 0, y: -1 };
	const a = (turn * Math.PI) / 180;
	return { x: Math.cos(a), y: Math.sin(a) };
}
