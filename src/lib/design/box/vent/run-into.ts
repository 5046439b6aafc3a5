import { add3, type Air, airHolds, apart, type Point3, scale3, type Solid } from '../solid';
import { boundsOf, mayTouch, type Obstacle, type Place } from '../board';
import { alongPath, squareOf, type TubePath } from './tube-path';
import { nth, TICKS_PER_MM } from '../../../measure';
import { bodyAt } from './slot-setup';
import type { SlotSetup } from './vent';

/** The skin of a tube is looked at in points no farther apart than this, ticks. */
const STEP = 2 * TICKS_PER_MM;

/** A tube as it is built: from its place in, `length` along its middle, ticks. */
interface Tube {
	readonly place: Place;
	readonly path: TubePath;
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
function skin({ place, path, length, radius }: Tube): Point3[] {
	const from = place.proud + place.stack + 4;
	const rings = length <= from ? 0 : Math.ceil((length - from) / STEP) + 1;
	const around = Math.max(24, Math.ceil((2 * Math.PI * radius) / STEP));
	// A tick inside the skin: a tube that only touches runs into nothing.
	const r = radius - 1;
	return Array.from({ length: rings }, (_, i) => {
		const { point, heading } = alongPath(path, Math.min(length, from + i * STEP));
		const [a, b] = squareOf(heading);
		return Array.from({ length: around }, (_, k) => {
			const turn = (2 * Math.PI * k) / around;
			return add3(point, add3(scale3(a, r * Math.cos(turn)), scale3(b, r * Math.sin(turn))));
		});
	}).flat();
}

/** A slot leg by leg, each with its air and its board, its cheek in it: convex bodies. */
export function slotLegs(setup: SlotSetup, length: number): Solid[] {
	const { plane, run, size, cheek } = setup;
	const { cheek: round, legs } = bodyAt(setup, length);
	const far = run[1] + (cheek ? size.board : 0);
	const n = round.length;
	return legs.map((_, k): Solid => {
		const corners = [k, k + 1, n - 2 - k, n - 1 - k].map((i) => nth(round, i));
		return {
			outside: corners.map((p) => plane.to3(p, run[0])),
			inside: corners.map((p) => plane.to3(p, far)),
		};
	});
}

/** What of these a slot runs into: names, each once. */
export function slotMeets(
	legs: readonly Solid[],
	others: readonly { readonly name: string; readonly solid: Solid }[],
): string[] {
	const met = others.filter((o) => legs.some((leg) => !apart(leg, o.solid)));
	return [...new Set(met.map((o) => o.name))];
}
