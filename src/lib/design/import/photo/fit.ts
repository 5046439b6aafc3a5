import { nth } from '../../../measure';
import { cross, distance, dot, minus, norm, type Point } from '../../../geometry';

/* Lines and circles through more marks than they need. */

/**
 * So many steps of the golden section leave less than a millionth of a millionth of the interval.
 */
const STEPS = 60;

/** Where a function with one valley is least. */
export function valleyOf(f: (at: number) => number, from: number, to: number): number {
	const golden = (Math.sqrt(5) - 1) / 2;
	let [a, b] = [from, to];
	let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
	let [fc, fd] = [f(c), f(d)];
	for (let i = 0; i < STEPS; i++) {
		if (fc < fd) {
			[b, d, fd] = [d, c, fc];
			c = b - golden * (b - a);
			fc = f(c);
		} else {
			[a, c, fc] = [c, d, fd];
			d = a + golden * (b - a);
			fd = f(d);
		}
	}
	return (a + b) / 2;
}

/** A line through a point, its direction of length 1. */
export interface FittedLine {
	readonly at: Point;
	readonly along: Point;
}

/**
 * The line with the least sum of squared distances to the points, measured square to it (Pearson,
 * "On lines and planes of closest fit", Philosophical Magazine 2 (1901) 559-572).
 */
export function lineThrough(points: readonly Point[]): FittedLine {
	const n = points.length;
	const at = {
		x: points.reduce((sum, p) => sum + p.x, 0) / n,
		y: points.reduce((sum, p) => sum + p.y, 0) / n,
	};
	const { xx, xy, yy } = spreadOf(points, at);
	const angle = Math.atan2(2 * xy, xx - yy) / 2;
	return { at, along: { x: Math.cos(angle), y: Math.sin(angle) } };
}

/** Distance of a point from a line, positive to its left. */
export const leftOfLine = ({ at, along }: FittedLine, p: Point): number =>
	cross(along, minus(p, at));

/** Sum of the squared distances to the closest line. */
export function offLine(points: readonly Point[]): number {
	const line = lineThrough(points);
	return points.reduce((sum, p) => sum + leftOfLine(line, p) ** 2, 0);
}

function spreadOf(
	points: readonly Point[],
	at: Point,
): { readonly xx: number; readonly xy: number; readonly yy: number } {
	let [xx, xy, yy] = [0, 0, 0];
	for (const p of points) {
		xx += (p.x - at.x) ** 2;
		xy += (p.x - at.x) * (p.y - at.y);
		yy += (p.y - at.y) ** 2;
	}
	return { xx, xy, yy };
}

export interface FittedCircle {
	readonly centre: Point;
	readonly radius: number;
}

const ROUNDS = 50;

/**
 * The circle with the least sum of squared distances to the points: an algebraic one to begin with
 * (Kasa, "A circle fitting procedure and its error analysis", IEEE Transactions on Instrumentation
 * and Measurement 25 (1976) 8-14), then Newton's steps with the Jacobian (Gauss-Newton) for the
 * true distances.
 *
 * @returns null when the points lie on a line
 */
export function circleThrough(points: readonly Point[]): FittedCircle | null {
	let circle = kasa(points);
	for (let i = 0; circle && i < ROUNDS; i++) {
		const next = closer(circle, points);
		if (!next) break;
		const moved = distance(next.centre, circle.centre);
		circle = next;
		if (moved < 1e-9 * circle.radius) break;
	}
	return circle;
}

const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;

function kasa(points: readonly Point[]): FittedCircle | null {
	const at = { x: mean(points.map((p) => p.x)), y: mean(points.map((p) => p.y)) };
	const { xx, xy, yy } = spreadOf(points, at);
	const cubes = { x: 0, y: 0 };
	for (const p of points) {
		const q = minus(p, at);
		cubes.x += (q.x * dot(q, q)) / 2;
		cubes.y += (q.y * dot(q, q)) / 2;
	}
	const det = xx * yy - xy * xy;
	// Less than a ten-thousandth as wide as long: a line.
	if (!(det > 1e-8 * (xx + yy) ** 2)) return null;
	const from = {
		x: (cubes.x * yy - cubes.y * xy) / det,
		y: (cubes.y * xx - cubes.x * xy) / det,
	};
	const radius = Math.sqrt(dot(from, from) + (xx + yy) / points.length);
	return { centre: { x: at.x + from.x, y: at.y + from.y }, radius };
}

/** One step; null when it leads nowhere. */
function closer({ centre }: FittedCircle, points: readonly Point[]): FittedCircle | null {
	const spokes = points.map((p) => minus(p, centre));
	const long = spokes.map((s) => Math.max(norm(s), 1e-12));
	const radius = mean(long);
	const ways = spokes.map((s, i) => ({ x: s.x / nth(long, i), y: s.y / nth(long, i) }));
	const way = { x: mean(ways.map((w) => w.x)), y: mean(ways.map((w) => w.y)) };
	const { xx, xy, yy } = spreadOf(ways, way);
	const pull = { x: 0, y: 0 };
	for (const [i, w] of ways.entries()) {
		pull.x += (w.x - way.x) * (nth(long, i) - radius);
		pull.y += (w.y - way.y) * (nth(long, i) - radius);
	}
	const det = xx * yy - xy * xy;
	if (!(det > 1e-15)) return null;
	const step = { x: (pull.x * yy - pull.y * xy) / det, y: (pull.y * xx - pull.x * xy) / det };
	const moved = { x: centre.x + step.x, y: centre.y + step.y };
	return { centre: moved, radius: mean(points.map((p) => distance(p, moved))) };
}
