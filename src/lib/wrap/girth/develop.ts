import { nth, around } from '../../measure';
import {
	alongEdge,
	headingAt,
	lineLine,
	type Point,
	cross,
	distance,
	dot,
	minus,
	norm,
	plus,
	times,
} from '../../geometry';
import type { Flap } from './flap';
import { shift, smoothShift, type Climb } from './girth';
import { breaks, outOf, turnTo, type Span } from './span';

/*
 * From the board to the flat cloth, edge by edge: every edge moves out by what the cloth climbs on
 * its side, and then by its own turn-under.
 */

/**
 * One straight stretch of the cloth's edge: the board's edge moved by the steps, and how far beyond
 * it the cloth goes.
 */
interface Stretch {
	readonly from: Point;
	readonly to: Point;
	readonly heading: Point;
	readonly out: Point;
	readonly beyond: number;
	readonly corner: Point; // of the board, where it ends
}

/**
 * The edge of the cloth as a path round the board. It may cross itself where flaps overlap; the
 * union of what it winds round is the cloth.
 */
export function clothEdge(flaps: readonly Flap[], climb: Climb): Point[] {
	const all = flaps.flatMap((f) => stretches(f, climb));
	return all.flatMap((s, i) => join(s, around(all, i + 1)));
}

function stretches(flap: Flap, climb: Climb): Stretch[] {
	const parts = breaks(flap.span);
	// Outside a curve that bows out lie its tangents, outside a hollow one its chords: either way
	// the cloth covers.
	if (flap.span.arc && flap.span.arc.sweep > 0)
		return parts.map((part) => stretch(flap, climb, part, part));
	return parts.slice(1).map((part, i) => stretch(flap, climb, nth(parts, i), part));
}

function stretch(flap: Flap, climb: Climb, start: number, end: number): Stretch {
	const { span } = flap;
	const heading = headingAt(span, (start + end) / 2);
	const by = shift(climb, outOf(heading));
	return {
		from: plus(alongEdge(span, start), by),
		to: plus(alongEdge(span, end), by),
		heading,
		out: outOf(heading),
		beyond: flap.total,
		corner: alongEdge(span, end),
	};
}

/** The points of the cloth's edge from the end of one stretch to the start of the next. */
function join(a: Stretch, b: Stretch): Point[] {
	const end = plus(a.to, times(a.out, a.beyond));
	const start = plus(b.from, times(b.out, b.beyond));
	const meet = lineLine({ at: end, heading: a.heading }, { at: start, heading: b.heading });
	if (!meet) return distance(end, start) < 1 ? [end] : [end, start];
	const on = dot(minus(meet, end), a.heading);
	const back = dot(minus(start, meet), b.heading);
	if (turnTo(a.heading, b.heading) > 0) return outside({ end, start, meet, on, back }, a, b);
	const trimmed = -on <= distance(a.from, a.to) / 2 && -back <= distance(b.from, b.to) / 2;
	if (on <= 0 && back <= 0 && trimmed) return [meet];
	// Back along both flaps to the corner: the union then closes whatever they lap.
	const apart = distance(a.to, b.from) < 1 ? [a.to] : [a.to, a.corner, b.from];
	return [end, ...apart, start];
}

/**
 * Longest point an outside corner keeps beyond its flaps, as a multiple of their width; past it the
 * corner is cut off.
 */
const SPIKE = 2;

/**
 * Where one flap ends and the next starts, where both run on to meet, and how far that is along
 * each.
 */
interface Meeting {
	readonly end: Point;
	readonly start: Point;
	readonly meet: Point;
	readonly on: number;
	readonly back: number;
}

function outside({ end, start, meet, on, back }: Meeting, a: Stretch, b: Stretch): Point[] {
	if (on < 0 || back < 0) return [end, ...beyondChord(end, start, a, b), start];
	const climbed = Math.max(norm(minus(a.to, a.corner)), norm(minus(b.from, a.corner)));
	const longest = SPIKE * Math.max(a.beyond, b.beyond, climbed);
	if (Math.max(on, back) <= longest) return [meet];
	return [
		plus(end, times(a.heading, Math.min(on, longest))),
		plus(start, times(b.heading, -Math.min(back, longest))),
	];
}

/**
 * Where flaps differ much the straight way from one to the other may pass inside of where the steps
 * push the corner to.
 */
function beyondChord(end: Point, start: Point, a: Stretch, b: Stretch): Point[] {
	const [p, q] = [minus(a.to, a.corner), minus(b.from, a.corner)];
	const larger = (m: number, n: number) => (Math.abs(m) > Math.abs(n) ? m : n);
	const both = { x: larger(p.x, q.x), y: larger(p.y, q.y) };
	const chord = minus(start, end);
	return [a.to, plus(a.corner, both), b.from].filter((c) => cross(chord, minus(c, end)) < -1);
}

/** Where the corner before a span lies on the fold, the steps counted. */
export function foldCorner(before: Span, after: Span, climb: Climb): Point {
	const corner = after.from;
	const a = plus(corner, smoothShift(climb, outOf(before.arrives)));
	const b = plus(corner, smoothShift(climb, outOf(after.leaves)));
	if (distance(a, b) < 1) return a;
	const meet = lineLine({ at: a, heading: before.arrives }, { at: b, heading: after.leaves });
	const reach = SPIKE * distance(a, b);
	return meet && distance(meet, a) < reach ? meet : { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** The fold of one span on the flat cloth, from corner to corner. */
export function foldLine(line: readonly Span[], i: number, climb: Climb): Point[] {
	const span = nth(line, i);
	const n = line.length;
	const first = foldCorner(nth(line, (i + n - 1) % n), span, climb);
	const last = foldCorner(span, nth(line, (i + 1) % n), climb);
	const inner = breaks(span)
		.slice(1, -1)
		.flatMap((part) => foldPoint(span, part, climb));
	return [first, ...inner, last];
}

/**
 * A point of a curved fold; two where the fold runs along an axis and the steps on both sides part
 * it.
 */
function foldPoint(span: Span, part: number, climb: Climb): Point[] {
	const at = alongEdge(span, part);
	const nudge = 1e-4;
	const before = plus(at, smoothShift(climb, outOf(headingAt(span, part - nudge))));
	const after = plus(at, smoothShift(climb, outOf(headingAt(span, part + nudge))));
	return distance(before, after) < 1 ? [before] : [before, after];
}

/**
 * The flaps of an outline without steps as areas, each counter-clockwise: the cloth past the fold.
 */
export function flapAreas(flaps: readonly Flap[]): Point[][] {
	return flaps.flatMap(({ span, total }) => {
		const parts = breaks(span);
		const far = parts.map((part) =>
			plus(alongEdge(span, part), times(outOf(headingAt(span, part)), total)),
		);
		return parts
			.slice(1)
			.map((part, i) => [
				alongEdge(span, nth(parts, i)),
				nth(far, i),
				nth(far, i + 1),
				alongEdge(span, part),
			]);
	});
}
