import { mm } from '../../../measure';
import { mayTouch, boundsOf, type Obstacle, type Place } from '../board';
import { add3, scale3, type Point3 } from '../solid';

/** What lies on a divider is looked at this far before its face, in points this far apart. */
const BEFORE = mm(1);
const STEP = mm(8);
/** No disc is looked at in more rings than this. */
const MOST = 100;

/** What stands on the near side of a divider within a radius of a place on it: names, each once. */
export function standsBefore(
	place: Place,
	radius: number,
	obstacles: readonly Obstacle[],
): string[] {
	const points = disc(place, radius);
	const { low, high } = boundsOf(points);
	const met = obstacles
		.filter((o) => mayTouch(o, low, high) && points.some((p) => o.has(p, 0)))
		.map((o) => o.name);
	return [...new Set(met)];
}

function disc({ wall, point, inward }: Place, radius: number): Point3[] {
	const { u, v } = wall.frame;
	const middle = add3(point, scale3(inward, -BEFORE));
	const rings = Math.min(MOST, Math.ceil(radius / STEP));
	const points = [middle];
	for (let i = 1; i <= rings; i++) {
		// A tick within: what only touches is not under it.
		const r = (radius * i) / rings - 1;
		const around = Math.max(8, Math.min(6 * MOST, Math.ceil((2 * Math.PI * r) / STEP)));
		for (let k = 0; k < around; k++) {
			const turn = (2 * Math.PI * k) / around;
			const off = add3(scale3(u, r * Math.cos(turn)), scale3(v, r * Math.sin(turn)));
			points.push(add3(middle, off));
		}
	}
	return points;
}
