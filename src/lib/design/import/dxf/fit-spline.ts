import { lastOf, nth } from '../../../measure';
import { type Curve, type Point, distance, minus, times, unit } from '../../../geometry';

/**
 * A spline that a file gives only by the points it passes through. The format leaves open how the
 * parameter runs between them and how the curve starts and ends, so between the points it is a
 * guess. It is drawn the usual way (cubic, the parameter running with the chords, no bend at its
 * ends) and beside it the other usual ways: where they part, the curve is not certain.
 */
export interface ThroughPoints {
	readonly points: readonly Point[];
	readonly closed: boolean;
	/** Headings at its ends where the file gives them. */
	readonly starts: Point | null;
	readonly ends: Point | null;
}

export interface Guess {
	readonly curve: Curve;
	/** Pieces between neighbouring points. */
	readonly spans: number;
	/** Farthest the usual ways to draw it lie apart, in the drawing's unit. */
	readonly doubt: number;
}

/** More points than any curve of a panel is given by. */
const MOST_POINTS = 2000;
/** Places looked at between two points. */
const STATIONS = 8;

/** Null when there are too few points, or far too many. */
export function curveThrough(asked: ThroughPoints): Guess | null {
	const points = apart(asked);
	if (points.length < (asked.closed ? 3 : 2) || points.length > MOST_POINTS) return null;
	const given = { ...asked, points };
	const usual = cubicThrough(given, 1, 'straight');
	const others = [cubicThrough(given, 0.5, 'straight'), cubicThrough(given, 1, 'round')];
	const spans = given.closed ? points.length : points.length - 1;
	const doubt = Math.max(...others.map((o) => farthestApart(usual, o, spans)));
	return { curve: usual, spans, doubt };
}

/**
 * Points given twice in a row stand for one; a closed curve does not give its first point again.
 */
function apart({ points, closed }: ThroughPoints): Point[] {
	const kept = points.filter((p, i) => i === 0 || distance(p, nth(points, i - 1)) > 0);
	if (closed && kept.length > 1 && distance(nth(kept, 0), lastOf(kept)) === 0) kept.pop();
	return kept;
}

/** Points of a closed curve run on past both ends: their pull is gone after a few. */
const RUN_ON = 12;

/**
 * The cubic spline through the points. `power` 1: the parameter runs with the length of the chords,
 * 0.5: with its square root. Ends without a heading run out straight, or go on as round as at the
 * next point.
 */
function cubicThrough(given: ThroughPoints, power: number, runOut: 'straight' | 'round'): Curve {
	const { points, closed } = given;
	const n = points.length;
	const ring = (i: number): Point => nth(points, ((i % n) + n) % n);
	const all = closed
		? Array.from({ length: n + 1 + 2 * RUN_ON }, (_, i) => ring(i - RUN_ON))
		: [...points];
	const h = all.slice(1).map((p, i) => distance(p, nth(all, i)) ** power);
	const bends = bendsOf(all, h, closed ? { ...given, starts: null, ends: null } : given, runOut);
	const first = closed ? RUN_ON : 0;
	const spans = closed ? n : n - 1;
	return (t) => {
		const k = Math.min(spans - 1, Math.floor(t * spans));
		const i = first + k;
		const knot = (j: number): Knot => ({ at: nth(all, j), bend: nth(bends, j) });
		return onSpan(knot(i), knot(i + 1), nth(h, i), t * spans - k);
	};
}

/** Second derivatives at the points, by elimination in a band of three. */
function bendsOf(
	p: readonly Point[],
	h: readonly number[],
	{ starts, ends }: ThroughPoints,
	runOut: 'straight' | 'round',
): Point[] {
	const last = p.length - 1;
	if (last === 1 && !starts && !ends) return [ZERO, ZERO];
	const slope = (i: number): Point => times(minus(nth(p, i + 1), nth(p, i)), 1 / nth(h, i));
	const rate = (i: number, heading: Point): Point =>
		times(unit(heading), distance(nth(p, i + 1), nth(p, i)) / nth(h, i));
	const inner = (i: number): Row => [
		nth(h, i - 1),
		2 * (nth(h, i - 1) + nth(h, i)),
		nth(h, i),
		times(minus(slope(i), slope(i - 1)), 6),
	];
	const free: Row = [0, 1, 0, ZERO];
	const round = runOut === 'round' && last > 1;
	const rows: Row[] = p.map((_, i) => (i === 0 || i === last ? free : inner(i)));
	if (starts) rows[0] = [0, 2 * nth(h, 0), nth(h, 0), times(minus(slope(0), rate(0, starts)), 6)];
	else if (round) rows[0] = [0, 1, -1, ZERO];
	const [l, s] = [nth(h, last - 1), slope(last - 1)];
	if (ends) rows[last] = [l, 2 * l, 0, times(minus(rate(last - 1, ends), s), 6)];
	else if (round) rows[last] = [-1, 1, 0, ZERO];
	return solved(rows);
}

const ZERO: Point = { x: 0, y: 0 };
/** below, on and above the diagonal, and what they come to. */
type Row = readonly [number, number, number, Point];

function solved(rows: readonly Row[]): Point[] {
	const above: number[] = [];
	const right: Point[] = [];
	rows.forEach(([below, on, over, sum], i) => {
		const pivot = on - (i > 0 ? below * nth(above, i - 1) : 0);
		above.push(over / pivot);
		right.push(times(minus(sum, i > 0 ? times(nth(right, i - 1), below) : ZERO), 1 / pivot));
	});
	const found: Point[] = [...right];
	for (let i = rows.length - 2; i >= 0; i--)
		found[i] = minus(nth(right, i), times(nth(found, i + 1), nth(above, i)));
	return found;
}

/** A point the curve runs through, and its second derivative there. */
interface Knot {
	readonly at: Point;
	readonly bend: Point;
}

function onSpan(a: Knot, b: Knot, h: number, t: number): Point {
	const s = 1 - t;
	const [u, v] = [((s * s * s - s) * h * h) / 6, ((t * t * t - t) * h * h) / 6];
	return {
		x: s * a.at.x + t * b.at.x + u * a.bend.x + v * b.bend.x,
		y: s * a.at.y + t * b.at.y + u * a.bend.y + v * b.bend.y,
	};
}

/**
 * Farthest any station of one curve lies from the other, looked for in the same span and its
 * neighbours.
 */
function farthestApart(a: Curve, b: Curve, spans: number): number {
	const step = 1 / (spans * STATIONS);
	let most = 0;
	for (let k = 0; k <= spans * STATIONS; k++) {
		const p = a(Math.min(1, k * step));
		let least = Infinity;
		for (let j = k - STATIONS; j < k + STATIONS; j++) {
			const [from, to] = [j * step, (j + 1) * step];
			if (from < -1e-9 || to > 1 + 1e-9) continue;
			least = Math.min(least, offLine(p, b(Math.max(0, from)), b(Math.min(1, to))));
		}
		most = Math.max(most, least);
	}
	return most;
}

function offLine(p: Point, a: Point, b: Point): number {
	const [dx, dy] = [b.x - a.x, b.y - a.y];
	const square = dx * dx + dy * dy;
	const t = square === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / square;
	const s = Math.min(1, Math.max(0, t));
	return Math.hypot(p.x - a.x - s * dx, p.y - a.y - s * dy);
}
