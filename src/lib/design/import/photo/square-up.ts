import { nth } from '../../../measure';
import type { Point } from '../../../geometry';

/*
 * A sheet of paper of known size lies in a photograph; its four corners fix how the plane of the
 * template was seen, and every other point of that plane can be taken back to its true place. Four
 * points fix the view exactly, so nothing is left over that would show an error; what the picture
 * is worth is told by how far the result moves when each corner is marked a little wrong.
 */

type Four<T> = readonly [T, T, T, T];
/** Row by row, the last entry 1. */
type View = readonly [number, number, number, number, number, number, number, number];

export interface PhotographedPaper {
	readonly width: number; // along the top of the picture, mm
	readonly height: number;
}

export type Squared =
	| {
			readonly ok: true;
			/**
			 * Picture (pixels, y down) to millimetres, y up, the paper's lower left corner at 0,0.
			 */
			readonly toMm: (p: Point) => Point;
			/**
			 * Expected error there, mm: every corner of the paper, and the point itself, marked
			 * `slip` pixels off.
			 */
			readonly errorAt: (p: Point, slip?: number) => number;
			/**
			 * How much shorter the paper looks one way than the other way, 1 for a picture from
			 * straight above.
			 */
			readonly squash: number;
	  }
	| { readonly ok: false; readonly why: 'corners' | 'oblique'; readonly squash: number };

/**
 * A steady hand on a screen marks a corner to about this many pixels. Common practice, no source.
 */
export const SLIP = 1.5;

/**
 * Below this the picture was taken more than about 55 degrees from straight above: the far end is
 * guesswork.
 */
const FLATTEST = 0.57;

/** @param corners of the paper in the picture: top left, top right, bottom right, bottom left. */
export function squareUp(corners: Four<Point>, paper: PhotographedPaper): Squared {
	if (!convex(corners)) return { ok: false, why: 'corners', squash: 0 };
	const view = viewOf(corners, paper);
	const squash = view ? flatness(view, corners) : 0;
	if (!view) return { ok: false, why: 'corners', squash };
	if (squash < FLATTEST) return { ok: false, why: 'oblique', squash };
	return {
		ok: true,
		squash,
		toMm: (p) => through(view, p),
		errorAt: (p, slip = SLIP) => errorAt(corners, paper, view, p, slip),
	};
}

/** Marked in order clockwise as seen, with no corner inside the others. */
function convex(c: Four<Point>): boolean {
	return c.every((p, i) => {
		const a = nth(c, (i + 1) % 4);
		const b = nth(c, (i + 2) % 4);
		return (a.x - p.x) * (b.y - a.y) - (a.y - p.y) * (b.x - a.x) > 1;
	});
}

/**
 * The view that takes the four corners to those of the paper; null when the corners do not fix one.
 */
function viewOf(c: Four<Point>, paper: PhotographedPaper): View | null {
	const to: Four<Point> = [
		{ x: 0, y: paper.height },
		{ x: paper.width, y: paper.height },
		{ x: paper.width, y: 0 },
		{ x: 0, y: 0 },
	];
	// Picture coordinates are first brought near 1, or the equations lose their digits.
	const scale = Math.max(...c.flatMap((p) => [Math.abs(p.x), Math.abs(p.y)]), 1);
	const rows = c.flatMap((p, i) => {
		const [x, y, u, v] = [p.x / scale, p.y / scale, nth(to, i).x, nth(to, i).y];
		return [
			[x, y, 1, 0, 0, 0, -u * x, -u * y, u],
			[0, 0, 0, x, y, 1, -v * x, -v * y, v],
		];
	});
	const h = solve(rows);
	if (!h) return null;
	const entry = (i: number): number => nth(h, i);
	const scaled = (i: number): number => entry(i) / scale;
	return [scaled(0), scaled(1), entry(2), scaled(3), scaled(4), entry(5), scaled(6), scaled(7)];
}

/**
 * Gauss with pivots; each row holds its right side last. Null when the rows do not fix the
 * unknowns.
 */
function solve(rows: readonly (readonly number[])[]): number[] | null {
	const m = rows.map((r) => [...r]);
	const n = m.length;
	for (let col = 0; col < n; col++) {
		let pivot = col;
		for (let r = col + 1; r < n; r++)
			if (Math.abs(nth(nth(m, r), col)) > Math.abs(nth(nth(m, pivot), col))) pivot = r;
		const row = nth(m, pivot);
		if (Math.abs(nth(row, col)) < 1e-12) return null;
		[m[col], m[pivot]] = [row, nth(m, col)];
		for (let r = 0; r < n; r++) {
			if (r === col) continue;
			const k = nth(nth(m, r), col) / nth(row, col);
			const other = nth(m, r);
			for (let j = col; j <= n; j++) other[j] = nth(other, j) - k * nth(row, j);
		}
	}
	return m.map((r, i) => nth(r, n) / nth(r, i));
}

function through(v: View, p: Point): Point {
	const w = v[6] * p.x + v[7] * p.y + 1;
	return { x: (v[0] * p.x + v[1] * p.y + v[2]) / w, y: (v[3] * p.x + v[4] * p.y + v[5]) / w };
}

/**
 * How flat the paper was seen, worst of its four corners: the ratio of the two directions in which
 * a small circle of the plane is longest and shortest in the picture.
 */
function flatness(v: View, corners: Four<Point>): number {
	return Math.min(...corners.map((p) => axisRatio(slopeAt(v, p))));
}

/** How the view moves points near `p`: [dx/dpx, dx/dpy, dy/dpx, dy/dpy]. */
function slopeAt(v: View, p: Point): Four<number> {
	const w = v[6] * p.x + v[7] * p.y + 1;
	const q = through(v, p);
	return [
		(v[0] - q.x * v[6]) / w,
		(v[1] - q.x * v[7]) / w,
		(v[3] - q.y * v[6]) / w,
		(v[4] - q.y * v[7]) / w,
	];
}

function axisRatio([a, b, c, d]: Four<number>): number {
	const sum = a * a + b * b + c * c + d * d;
	const det = Math.abs(a * d - b * c);
	const spread = Math.sqrt(Math.max(0, sum * sum - 4 * det * det));
	const long = Math.sqrt((sum + spread) / 2);
	return long === 0 ? 0 : det / (long * long);
}

/**
 * Root of the summed squares of what each mark, off by `slip` pixels in x and in y, does to the
 * point.
 */
function errorAt(
	c: Four<Point>,
	paper: PhotographedPaper,
	view: View,
	p: Point,
	slip: number,
): number {
	const home = through(view, p);
	let square = 0;
	for (let i = 0; i < 4; i++)
		for (const [dx, dy] of [
			[slip, 0],
			[0, slip],
		] as const) {
			const marked = (k: 0 | 1 | 2 | 3): Point =>
				k === i ? { x: c[k].x + dx, y: c[k].y + dy } : c[k];
			const other = viewOf([marked(0), marked(1), marked(2), marked(3)], paper);
			if (!other) return Infinity;
			const q = through(other, p);
			square += (q.x - home.x) ** 2 + (q.y - home.y) ** 2;
		}
	const [a, b, d, e] = slopeAt(view, p);
	square += slip * slip * (a * a + b * b + d * d + e * e);
	return Math.sqrt(square);
}
