import type { Point } from './outline';
import { between, cross, distance, dot, leftOf, minus, plus, times } from './vector';

/**
 * A circular arc: it starts at angle `start` (radians from +x) and runs through `sweep`, positive
 * to the left.
 */
export interface Arc {
	readonly centre: Point;
	readonly radius: number;
	readonly start: number;
	readonly sweep: number;
}

/**
 * The arc from `a` to `b` whose bulge is tan(sweep / 4). Throws `bug:` for a bulge of 0 or a chord
 * of no length.
 */
export function arcOf(a: Point, b: Point, bulge: number): Arc {
	const chord = distance(a, b);
	if (bulge === 0 || chord === 0) throw new Error('bug: no arc without a bulge and a chord');
	const rise = (1 - bulge * bulge) / (4 * bulge);
	const centre = plus(between(a, b, 0.5), times(leftOf(minus(b, a)), rise));
	return {
		centre,
		radius: (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
		start: Math.atan2(a.y - centre.y, a.x - centre.x),
		sweep: 4 * Math.atan(bulge),
	};
}

export function onArc(arc: Arc, angle: number, radius = arc.radius): Point {
	return {
		x: arc.centre.x + radius * Math.cos(angle),
		y: arc.centre.y + radius * Math.sin(angle),
	};
}

export const bulgeOf = (sweep: number): number => Math.tan(sweep / 4);

/** Bulge of the arc from `a` through `via` to `b`; 0 when the three lie on one line. */
export function bulgeThrough(a: Point, via: Point, b: Point): number {
	const p = minus(a, via);
	const q = minus(b, via);
	const side = cross(minus(b, a), minus(via, a));
	if (side === 0) return 0;
	// The angle at `via` stands on the rest of the circle, so the arc through it is 2 pi - 2 angle.
	const angle = Math.atan2(Math.abs(cross(p, q)), dot(p, q));
	return -Math.sign(side) * Math.tan((Math.PI - angle) / 2);
}

/**
 * Radius of the circle whose chord is `chord` long and rises `rise` in its middle: (c2 + 4 h2) / 8
 * h. Machinery's Handbook, 31st edition, p. 83, segments of a circle.
 */
export function radiusFromRise(chord: number, rise: number): number {
	return (chord * chord + 4 * rise * rise) / (8 * rise);
}

/** How far the chord of `sweep` radians departs from its arc: the sagitta. */
export function riseOf(radius: number, sweep: number): number {
	return radius * (1 - Math.cos(sweep / 2));
}

/**
 * The widest sweep whose chord departs from its arc by no more than `rise`; a whole turn when the
 * rise allows it.
 */
export function sweepForRise(radius: number, rise: number): number {
	if (radius <= 0 || rise >= 2 * radius) return 2 * Math.PI;
	return 2 * Math.acos(1 - rise / radius);
}

/** Direction of travel at one angle of an arc, length 1. */
export function arcTangent(arc: Arc, angle: number): Point {
	return times(leftOf({ x: Math.cos(angle), y: Math.sin(angle) }), Math.sign(arc.sweep));
}
