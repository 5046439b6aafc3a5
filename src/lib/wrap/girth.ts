import type { Covering } from '../design/covering';
import { common } from '../geometry/clip';
import { boundsOfPoints } from '../geometry/edge';
import { area } from '../geometry/extent';
import { flatten } from '../geometry/flatten';
import type { Point } from '../geometry/outline';
import { CHORD_ERROR } from './span';

/*
 * The tape laid over the steps. Along any line across the panel the cloth climbs every step it meets, up and down, so it has
 * to be longer than the panel by the sum of those heights. The cloth is laid from the largest layer outwards, and
 * what the longest line needs is shared out to both sides as it is climbed there.
 */

/** What the cloth climbs on each side of where it is laid first, in ticks. */
export interface Climb {
	readonly left: number;
	readonly right: number;
	readonly down: number;
	readonly up: number;
}

/** A panel without steps. */
export const STILL: Climb = { left: 0, right: 0, down: 0, up: 0 };

/** Where the edge of the cloth moves because of the steps, at an edge whose outward normal is `n`. */
export function shift(climb: Climb, n: Point): Point {
	return {
		x: n.x > 1e-9 ? climb.right : n.x < -1e-9 ? -climb.left : 0,
		y: n.y > 1e-9 ? climb.up : n.y < -1e-9 ? -climb.down : 0,
	};
}

/** The most that any line through the panel climbs, across and upwards, shared out to its two sides. */
export function climbOf(covering: Pick<Covering, 'outline' | 'steps'>): Climb {
	if (covering.steps.length === 0) return STILL;
	const wide = scan(covering);
	const [left, right] = mostClimbed(wide);
	const [down, up] = mostClimbed(upright(wide));
	return { left, right, down, up };
}

/** How far a point of the panel moves on the flat cloth: what the cloth climbs on the way to it from the middle. */
export function displacement(covering: Pick<Covering, 'outline' | 'steps'>, p: Point): Point {
	if (covering.steps.length === 0) return { x: 0, y: 0 };
	const wide = scan(covering);
	return { x: climbed(wide, p), y: climbed(upright(wide), swapped(p)) };
}

function climbed(s: Scan, p: Point): number {
	const lo = Math.min(p.x, s.middle.x);
	const hi = Math.max(p.x, s.middle.x);
	const met = climbsOnRow(s, p.y).filter((c) => c.at > lo && c.at < hi);
	return Math.sign(p.x - s.middle.x) * met.reduce((sum, c) => sum + c.height, 0);
}

/** A panel to be crossed by level lines. */
interface Scan {
	readonly board: readonly Point[];
	readonly steps: readonly { readonly points: readonly Point[]; readonly height: number }[];
	readonly middle: Point;
}

function scan(covering: Pick<Covering, 'outline' | 'steps'>): Scan {
	const board = flatten(covering.outline, CHORD_ERROR);
	// What of a layer lies beyond the board is not there.
	const steps = covering.steps.flatMap((s) =>
		common([s.outline], [board], CHORD_ERROR).map((r) => ({ points: r.outline, height: s.height })),
	);
	const b = boundsOfPoints(largest(steps.map((s) => s.points)) ?? board);
	return { board, steps, middle: { x: b.x + b.length / 2, y: b.y + b.width / 2 } };
}

function largest(outlines: readonly (readonly Point[])[]): readonly Point[] | undefined {
	return [...outlines].sort((a, b) => area(b) - area(a))[0];
}

const swapped = (p: Point): Point => ({ x: p.y, y: p.x });

/** The same panel laid on its side: level lines then run up the panel. */
function upright(s: Scan): Scan {
	return {
		board: s.board.map(swapped),
		steps: s.steps.map((step) => ({ ...step, points: step.points.map(swapped) })),
		middle: swapped(s.middle),
	};
}

/** The most a level line climbs within the board, shared out to both sides of the middle. */
function mostClimbed(s: Scan): [number, number] {
	let total = 0;
	let before = 0;
	let after = 0;
	for (const y of rows(s)) {
		const climbs = climbsOnRow(s, y);
		const here = climbs.reduce((sum, c) => (c.at < s.middle.x ? sum + c.height : sum), 0);
		const all = climbs.reduce((sum, c) => sum + c.height, 0);
		before = Math.max(before, here);
		after = Math.max(after, all - here);
		total = Math.max(total, all);
	}
	if (total === 0) return [0, 0];
	const share = Math.round((total * before) / (before + after));
	return [share, total - share];
}

/** Heights of lines worth trying: one between any two heights at which something changes. */
function rows(s: Scan): number[] {
	const levels = s.steps.flatMap(({ points }) =>
		points.flatMap((p, i) => {
			const q = points[(i + 1) % points.length]!;
			const passes = (p.x - s.middle.x) * (q.x - s.middle.x) < 0;
			return passes ? [p.y, p.y + ((s.middle.x - p.x) / (q.x - p.x)) * (q.y - p.y)] : [p.y];
		}),
	);
	const sorted = [...new Set(levels)].sort((a, b) => a - b);
	return sorted.slice(1).map((y, i) => (y + sorted[i]!) / 2);
}

/** A step that ends at the board's edge is climbed there as part of the edge; this near (ticks), it ends there. */
const AT_THE_EDGE = 160;

/** The steps a level line climbs within the board. */
function climbsOnRow(s: Scan, y: number): { at: number; height: number }[] {
	const edges = crossings(s.board, y);
	return s.steps.flatMap(({ points, height }) =>
		crossings(points, y)
			.filter((c) => !edges.some((e) => Math.abs(c.at - e.at) * e.steep < AT_THE_EDGE))
			.map((c) => ({ at: c.at, height })),
	);
}

/** Where a level line meets an outline, and the sine of the angle at which it does. */
function crossings(points: readonly Point[], y: number): { at: number; steep: number }[] {
	const found: { at: number; steep: number }[] = [];
	for (let i = 0; i < points.length; i++) {
		const p = points[i]!;
		const q = points[(i + 1) % points.length]!;
		if (p.y <= y === q.y <= y) continue;
		const rise = q.y - p.y;
		found.push({
			at: p.x + ((y - p.y) / rise) * (q.x - p.x),
			steep: Math.abs(rise) / Math.hypot(rise, q.x - p.x),
		});
	}
	return found;
}
