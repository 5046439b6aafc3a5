import type { PathStep } from './drawing';
import type { Spot } from './path';
import type { Bounds } from './bounds';

/**
 * Strokes cut off at the edges of a box; curves become chords that depart from them by less than
 * 0.02 mm.
 */
export function clipped(steps: readonly PathStep[], box: Bounds): PathStep[] {
	const out: PathStep[] = [];
	let pen: Spot | null = null;
	someSegment(steps, box, (a, b) => {
		const [from, to] = clipSegment(a, b, box) ?? [null, null];
		if (from === null) {
			pen = null;
			return false;
		}
		if (pen === null || Math.hypot(pen.x - from.x, pen.y - from.y) > 1e-9)
			out.push(['M', from.x, from.y]);
		out.push(['L', to.x, to.y]);
		pen = to;
		return false;
	});
	return out;
}

/** Does anything of these strokes lie in the box? */
export function runsInto(steps: readonly PathStep[], box: Bounds): boolean {
	return someSegment(steps, box, (a, b) => clipSegment(a, b, box) !== null);
}

/** Does anything of a closed ring's line lie in the box? */
export function ringRunsInto(ring: readonly Spot[], box: Bounds): boolean {
	let a = ring.at(-1);
	// A plain loop: this is asked of thousands of spots.
	for (const b of ring) {
		if (a && a !== b && clipSegment(a, b, box) !== null) return true;
		a = b;
	}
	return false;
}

type Visit = (a: Spot, b: Spot) => boolean;

/**
 * Visits the segments of a path until one is what is looked for. A curve that passes the box is one
 * chord, which passes it too.
 */
function someSegment(steps: readonly PathStep[], box: Bounds, visit: Visit): boolean {
	let start: Spot = { x: 0, y: 0 };
	let at = start;
	for (const step of steps) {
		const from = at;
		if (step[0] === 'M') {
			start = at = { x: step[1], y: step[2] };
		} else if (step[0] === 'L') {
			at = { x: step[1], y: step[2] };
			if (visit(from, at)) return true;
		} else if (step[0] === 'Z') {
			at = start;
			if ((from.x !== at.x || from.y !== at.y) && visit(from, at)) return true;
		} else {
			const spots = passes(from, step, box) ? [{ x: step[5], y: step[6] }] : chords(from, step);
			for (const spot of spots) {
				if (visit(at, spot)) return true;
				at = spot;
			}
		}
	}
	return false;
}

type Curve = Extract<PathStep, readonly ['C', ...number[]]>;

/** A curve all of whose handles lie on one side of the box. */
function passes(from: Spot, [, x1, y1, x2, y2, x, y]: Curve, box: Bounds): boolean {
	return (
		Math.max(from.x, x1, x2, x) < box.x ||
		Math.min(from.x, x1, x2, x) > box.x + box.width ||
		Math.max(from.y, y1, y2, y) < box.y ||
		Math.min(from.y, y1, y2, y) > box.y + box.height
	);
}

function chords(from: Spot, step: Curve): Spot[] {
	const [, x1, y1, x2, y2, x, y] = step;
	const long =
		Math.hypot(x1 - from.x, y1 - from.y) +
		Math.hypot(x2 - x1, y2 - y1) +
		Math.hypot(x - x2, y - y2);
	// A quarter turn of radius r in n chords departs by r (pi / 4n)^2 / 2; its control polygon is
	// about 1.7 r long.
	const n = Math.max(4, Math.ceil(Math.sqrt((long * 0.37) / (2 * 0.02)) * 1.4));
	return [...Array(n).keys()].map((i) => {
		const t = (i + 1) / n;
		const s = 1 - t;
		const mix = (a: number, b: number, c: number, d: number) =>
			s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
		return { x: mix(from.x, x1, x2, x), y: mix(from.y, y1, y2, y) };
	});
}

/** The part of a segment inside the box (Liang and Barsky 1984), or null. */
function clipSegment(a: Spot, b: Spot, box: Bounds): readonly [Spot, Spot] | null {
	const [right, low] = [box.x + box.width, box.y + box.height];
	// Most lie wholly to one side of it.
	if ((a.x < box.x && b.x < box.x) || (a.x > right && b.x > right)) return null;
	if ((a.y < box.y && b.y < box.y) || (a.y > low && b.y > low)) return null;
	let enter = 0;
	let leave = 1;
	const d = { x: b.x - a.x, y: b.y - a.y };
	for (const [p, q] of [
		[-d.x, a.x - box.x],
		[d.x, right - a.x],
		[-d.y, a.y - box.y],
		[d.y, low - a.y],
	] as const) {
		if (p === 0) {
			if (q < 0) return null;
			continue;
		}
		const t = q / p;
		if (p < 0) enter = Math.max(enter, t);
		else leave = Math.min(leave, t);
	}
	if (enter >= leave) return null;
	const at = (t: number) => ({ x: a.x + d.x * t, y: a.y + d.y * t });
	return [enter === 0 ? a : at(enter), leave === 1 ? b : at(leave)];
}
