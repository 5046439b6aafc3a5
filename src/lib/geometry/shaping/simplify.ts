import { nth } from '../../measure';
import { area } from '../extent';
import { orient } from '../orient';
import type { Outline, Point } from '../outline';

interface Change {
	readonly at: number; // first corner touched
	readonly corners: readonly Point[]; // what takes the place of `of` corners from `at` on
	readonly of: number;
	readonly adds: number; // area, twice
}

/**
 * A straight-edged, counter-clockwise outline with fewer corners that contains the given one, the
 * area grown by no more than `share`: inward corners are bridged, and an edge between two outward
 * corners gives way to the point where its neighbours meet; always what adds least. Exact: new
 * corners lie on the grid, on the outer side.
 */
export function simplifiedOutward(outline: Outline, share: number): Point[] {
	let points: Point[] = outline.map(({ x, y }) => ({ x, y }));
	let left = 2 * share * Math.abs(area(outline));
	while (points.length > 4) {
		const best = cheapest(points, left);
		if (best === null) return points;
		left -= best.adds;
		points = applied(points, best);
	}
	return points;
}

function cheapest(points: readonly Point[], most: number): Change | null {
	let best: Change | null = null;
	for (let k = 0; k < points.length; k++) {
		for (const change of [bridge(points, k), meeting(points, k)]) {
			if (change === null || change.adds > (best?.adds ?? most)) continue;
			if (isClear(points, change)) best = change;
		}
	}
	return best;
}

const NEIGHBOURS = [0, 1, -1, 2, -2].flatMap((dx) =>
	[0, 1, -1, 2, -2].map((dy) => [dx, dy] as const),
);

const corner = (points: readonly Point[], k: number): Point =>
	nth(points, ((k % points.length) + points.length) % points.length);

function twice(a: Point, b: Point, c: Point): number {
	return Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
}

/** Leave out corner k if it points inward. */
function bridge(points: readonly Point[], k: number): Change | null {
	const [a, b, c] = [corner(points, k - 1), corner(points, k), corner(points, k + 1)];
	if (orient(a, b, c) > 0) return null;
	return { at: k, corners: [], of: 1, adds: twice(a, b, c) };
}

/** The edge from corner k to the next gives way to where its neighbours, run on, meet. */
function meeting(points: readonly Point[], k: number): Change | null {
	const [a, b, c, d] = [-1, 0, 1, 2].map((n) => corner(points, k + n)) as [
		Point,
		Point,
		Point,
		Point,
	];
	if (orient(a, b, c) <= 0 || orient(b, c, d) <= 0) return null;
	const u = { x: b.x - a.x, y: b.y - a.y };
	const v = { x: c.x - d.x, y: c.y - d.y };
	const turn = u.x * v.y - u.y * v.x;
	if (turn >= 0) return null; // they run apart
	const t = ((c.x - b.x) * v.y - (c.y - b.y) * v.x) / turn;
	const at = snappedOut([a, b, c, d], { x: b.x + t * u.x, y: b.y + t * u.y });
	if (at === null) return null;
	return { at: k, corners: [at], of: 2, adds: twice(b, at, c) };
}

/**
 * The point on the grid so that the old corners b and c lie on the inner side of the new edges;
 * null when none is near.
 */
function snappedOut(
	[a, b, c, d]: readonly [Point, Point, Point, Point],
	exact: Point,
): Point | null {
	for (const [dx, dy] of NEIGHBOURS) {
		const at = { x: Math.round(exact.x) + dx, y: Math.round(exact.y) + dy };
		if (orient(a, at, b) >= 0 && orient(at, d, c) >= 0) return at;
	}
	return null;
}

/** Does no other corner lie in what a change adds? */
function isClear(points: readonly Point[], change: Change): boolean {
	const [a, b] = [corner(points, change.at), corner(points, change.at + 1)];
	const [p, q, r] =
		change.corners.length === 0
			? [corner(points, change.at - 1), b, a] // bridged: the corner lies inside the new edge
			: [a, nth(change.corners, 0), b];
	return points.every((s) => {
		if (s === a || s === b || s === p || s === q) return true;
		return !(orient(p, q, s) >= 0 && orient(q, r, s) >= 0 && orient(r, p, s) >= 0);
	});
}

function applied(points: readonly Point[], change: Change): Point[] {
	const n = points.length;
	const kept = points.filter((_, k) => (k - change.at + n) % n >= change.of);
	// The kept corners start after the change when it wraps round the end of the list; the loop is
	// the same.
	const before = change.at + change.of > n ? 0 : change.at;
	const wrapped = change.at + change.of > n;
	return wrapped
		? [...kept, ...change.corners]
		: [...kept.slice(0, before), ...change.corners, ...kept.slice(before)];
}
