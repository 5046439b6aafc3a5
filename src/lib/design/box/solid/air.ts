import { around } from '../../../measure';
import { whereIs, distanceTo, type Point } from '../../../geometry';
import type { Plane } from './plane';
import type { Planes } from './six';
import { planeArea } from './solid';
import { dot3, type Point3 } from './vec';

/*
 * The air of one chamber: a polygon of the side view swept from x0 to x1, or, in a tapered box,
 * what lies inside six planes.
 */

export interface SweptAir {
	readonly kind: 'swept';
	readonly corners: readonly Point[];
	/** What stands along each side: a wall, or a divider's name. */
	readonly keys: readonly string[];
	readonly x0: number;
	readonly x1: number;
	/** What closes it at x0 and x1. */
	readonly left: string;
	readonly right: string;
}

export interface TaperedAir {
	readonly kind: 'tapered';
	/** By the side they close: a wall, a layer on it, a divider. */
	readonly sides: Planes;
	readonly planes: readonly Plane[];
	/** Cubic ticks. */
	readonly volume: number;
}

export type Air = SweptAir | TaperedAir;

/** Cubic ticks. */
export function volumeOfAir(air: Air): number {
	return air.kind === 'tapered' ? air.volume : planeArea(air.corners) * (air.x1 - air.x0);
}

/** Is a point in the air, at least `margin` ticks from every wall? */
export function airHolds(air: Air, p: Point3, margin = 0): boolean {
	if (air.kind === 'tapered') return air.planes.every((f) => dot3(f.n, p) <= f.d - margin);
	if (p.x < air.x0 + margin || p.x > air.x1 - margin) return false;
	const q = { x: p.y, y: p.z };
	if (whereIs(q, air.corners) === 'outside') return false;
	return margin === 0 || distanceTo(q, air.corners) >= margin;
}

/**
 * How far something round of this radius can go from `from` along `heading` before any point of its
 * front touches a wall. `from` lies on a wall; that wall is left behind at once. Exact for the
 * walls; what stands inside is looked for elsewhere.
 */
export function reach(air: Air, from: Point3, heading: Point3, radius: number): number {
	if (air.kind === 'tapered') return reachPlanes(air.planes, from, heading, radius);
	if (Math.abs(heading.x) > 0.999) return heading.x > 0 ? air.x1 - from.x : from.x - air.x0;
	return reachSides(air.corners, { x: from.y, y: from.z }, { x: heading.y, y: heading.z }, radius);
}

function reachPlanes(
	planes: readonly Plane[],
	from: Point3,
	heading: Point3,
	radius: number,
): number {
	return Math.min(
		...planes.map((f) => {
			const closing = dot3(f.n, heading);
			if (closing <= 1e-9) return Infinity;
			const across = Math.sqrt(Math.max(0, 1 - closing * closing));
			return (f.d - dot3(f.n, from) - radius * across) / closing;
		}),
	);
}

/**
 * In the side view: the nearest side inside a lane as wide as the thing. Only sides that would be
 * left through count: the wall it starts from is passed inward.
 */
export function reachSides(
	corners: readonly Point[],
	from: Point,
	heading: Point,
	radius: number,
): number {
	const lane = corners.map((c) => {
		const d = { x: c.x - from.x, y: c.y - from.y };
		return { deep: d.x * heading.x + d.y * heading.y, off: heading.x * d.y - heading.y * d.x };
	});
	let nearest = Infinity;
	lane.forEach((a, i) => {
		const b = around(lane, i + 1);
		// Counter-clockwise, a side met from inside runs from right to left across the lane.
		if (b.off - a.off < 1e-6) return;
		const low = Math.max(-radius, a.off);
		const high = Math.min(radius, b.off);
		if (low > high) return;
		for (const off of [low, high]) {
			const deep = a.deep + ((off - a.off) / (b.off - a.off)) * (b.deep - a.deep);
			if (deep > 2) nearest = Math.min(nearest, deep);
		}
	});
	return nearest;
}
