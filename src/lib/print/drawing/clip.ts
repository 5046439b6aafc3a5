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
	for (const [a, b] of segments(steps)) {
		const part = clipSegment(a, b, box);
		if (part === null) {
			pen = null;
			continue;
		}
		const [from, to] = part;
		if (pen === null || Math.hypot(pen.x - from.x, pen.y - from.y) > 1e-9)
			out.push(['M', from.x, from.y]);
		out.push(['L', to.x, to.y]);
		pen = to;
	}
	return out;
}

function* segments(steps: readonly PathStep[]): Generator<readonly [Spot, Spot]> {
	let start: Spot = { x: 0, y: 0 };
	let at = start;
	for (const step of steps) {
		if (step[0] === 'M') {
			start = at = { x: step[1], y: step[2] };
		} else if (step[0] === 'Z') {
			if (at.x !== start.x || at.y !== start.y) yield [at, start];
			at = start;
		} else {
			const spots = step[0] === 'L' ? [{ x: step[1], y: step[2] }] : chords(at, step);
			for (const spot of spots) {
				yield [at, spot];
				at = spot;
			}
		}
	}
}

function chords(from: Spot, step: Extract<PathStep, readonly ['C', ...number[]]>): Spot[] {
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
	let enter = 0;
	let leave = 1;
	const d = { x: b.x - a.x, y: b.y - a.y };
	for (const [p, q] of [
		[-d.x, a.x - box.x],
		[d.x, box.x + box.width - a.x],
		[-d.y, a.y - box.y],
		[d.y, box.y + box.height - a.y],
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
