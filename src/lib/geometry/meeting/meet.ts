import type { Arc } from '../arc';
import type { Point } from '../outline';
import { cross, distance, dot, minus, plus, times, unit, leftOf } from '../vector';

/* Where endless lines and whole circles meet. */

export interface Line {
	readonly at: Point;
	/** Length 1. */
	readonly heading: Point;
}

export type Circle = Pick<Arc, 'centre' | 'radius'>;

/** Where two lines meet, or null when they run parallel. */
export function lineLine(a: Line, b: Line): Point | null {
	const sine = cross(a.heading, b.heading);
	if (Math.abs(sine) < 1e-9) return null;
	return plus(a.at, times(a.heading, cross(minus(b.at, a.at), b.heading) / sine));
}

/**
 * Where a line meets a circle; one point when it only touches (to `slack`), none when it passes by.
 */
export function lineCircle(line: Line, circle: Circle, slack = 1): Point[] {
	const along = dot(minus(circle.centre, line.at), line.heading);
	const foot = plus(line.at, times(line.heading, along));
	const off = distance(foot, circle.centre);
	if (off > circle.radius + slack) return [];
	if (off >= circle.radius) return [foot];
	const half = Math.sqrt(circle.radius ** 2 - off ** 2);
	return [plus(foot, times(line.heading, -half)), plus(foot, times(line.heading, half))];
}

/** Where two circles meet; one point when they only touch (to `slack`). */
export function circleCircle(a: Circle, b: Circle, slack = 1): Point[] {
	const d = distance(a.centre, b.centre);
	if (d === 0) return [];
	const towards = unit(minus(b.centre, a.centre));
	const along = (d * d + a.radius ** 2 - b.radius ** 2) / (2 * d);
	const square = a.radius ** 2 - along ** 2;
	const foot = plus(a.centre, times(towards, along));
	if (square <= 0) {
		const gap = Math.max(d - a.radius - b.radius, Math.abs(a.radius - b.radius) - d);
		return gap <= slack ? [foot] : [];
	}
	const half = times(leftOf(towards), Math.sqrt(square));
	return [plus(foot, half), minus(foot, half)];
}
