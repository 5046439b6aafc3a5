import { add3, type Air, airHolds, type Point3, scale3 } from '../solid';
import { boundsOf, mayTouch, type Obstacle, type Place } from '../board';
import { TICKS_PER_MM } from '../../../measure';

/** The skin of a tube is looked at in points no farther apart than this, ticks. */
const STEP = 2 * TICKS_PER_MM;

/** A tube as it is built: from its place straight in, `length` from the outer face, ticks. */
interface Tube {
	readonly place: Place;
	readonly length: number;
	readonly radius: number; // outside
}

/**
 * What a tube runs into behind its board: names, each once. A window it passes through whole is
 * not in its way; a wall beside it is 'a wall'.
 */
export function tubeMeets(tube: Tube, air: Air, obstacles: readonly Obstacle[]): string[] {
	const points = skin(tube);
	if (points.length === 0) return [];
	const { low, high } = boundsOf(points);
	const met = obstacles
		.filter((o) => mayTouch(o, low, high) && points.some((p) => o.has(p, 0)))
		.map((o) => o.name);
	if (points.some((p) => !airHolds(air, p))) met.unshift('a wall');
	return [...new Set(met)];
}

/** Points on the outside of the tube, from behind its board to its end. */
function skin({ place, length, radius }: Tube): Point3[] {
	const { u, v } = place.wall.frame;
	const from = place.stack + 4;
	const to = length - place.proud;
	const rings = to <= from ? 0 : Math.ceil((to - from) / STEP) + 1;
	const around = Math.max(24, Math.ceil((2 * Math.PI * radius) / STEP));
	// A tick inside the skin: a tube that only touches runs into nothing.
	const r = radius - 1;
	return Array.from({ length: rings }, (_, i) => {
		const deep = Math.min(to, from + i * STEP);
		const middle = add3(place.point, scale3(place.inward, deep));
		return Array.from({ length: around }, (_, k) => {
			const turn = (2 * Math.PI * k) / around;
			return add3(middle, add3(scale3(u, r * Math.cos(turn)), scale3(v, r * Math.sin(turn))));
		});
	}).flat();
}
