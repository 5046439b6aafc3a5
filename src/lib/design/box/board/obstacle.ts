import { nth } from '../../../measure';
import { whereIs } from '../../../geometry';
import type { Board } from './board';
import {
	flat,
	over,
	add3,
	cross3,
	dot3,
	length3,
	p3,
	scale3,
	sub3,
	unit3,
	type Point3,
} from '../solid';

/** Something that stands in the air of a box. */
export interface Obstacle {
	readonly name: string;
	readonly low: Point3;
	readonly high: Point3;
	/** Is the point in it, or nearer than `margin` to it? */
	has(p: Point3, margin: number): boolean;
}

/** A board with its windows: a driver may reach through a window. */
export function boardObstacle(board: Board): Obstacle {
	const points = [...board.solid.outside, ...board.solid.inside];
	const t = board.material.measured;
	const { outside, inside } = board.solid;
	// The frame of a board may stand off its outside face.
	const face = over(nth(outside, 0), board.frame);
	return {
		name: board.name,
		...boundsOf(points),
		has(p, margin) {
			const h = over(p, board.frame) - face;
			if (h > margin || h < -t - margin) return false;
			const share = Math.min(1, Math.max(0, -h / t));
			const section = outside.map((o, i) =>
				flat(add3(o, scale3(sub3(nth(inside, i), o), share)), board.frame),
			);
			const q = flat(p, board.frame);
			if (whereIs(q, section) === 'outside') return false;
			return !board.holes.some((hole) => whereIs(q, hole.outline) === 'inside');
		},
	};
}

/** A round thing: a tube, a rod, a driver's magnet. */
export function rodObstacle(name: string, from: Point3, to: Point3, radius: number): Obstacle {
	const axis = unit3(sub3(to, from));
	const long = length3(sub3(to, from));
	const r = p3(radius, radius, radius);
	const ends = boundsOf([from, to]);
	return {
		name,
		low: sub3(ends.low, r),
		high: add3(ends.high, r),
		has(p, margin) {
			const d = sub3(p, from);
			const t = dot3(d, axis);
			return t > -margin && t < long + margin && length3(cross3(d, axis)) < radius + margin;
		},
	};
}

/** Walks the points: an absurd driver has more of them than one call takes arguments. */
export function boundsOf(points: readonly Point3[]): { low: Point3; high: Point3 } {
	const of = (pick: (p: Point3) => number, least: (a: number, b: number) => number): number =>
		points.map(pick).reduce((a, b) => least(a, b));
	return {
		low: p3(
			of((p) => p.x, Math.min),
			of((p) => p.y, Math.min),
			of((p) => p.z, Math.min),
		),
		high: p3(
			of((p) => p.x, Math.max),
			of((p) => p.y, Math.max),
			of((p) => p.z, Math.max),
		),
	};
}

export function mayTouch(a: Obstacle, low: Point3, high: Point3): boolean {
	return (
		a.low.x < high.x &&
		a.high.x > low.x &&
		a.low.y < high.y &&
		a.high.y > low.y &&
		a.low.z < high.z &&
		a.high.z > low.z
	);
}
