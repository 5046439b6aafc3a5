import { nth } from '../../../measure';
import type { Meeting } from '../inside';
import {
	sidesAround,
	ENDS,
	faceWithin,
	level,
	stretch,
	type Across,
	type Planes,
	frameOf,
	type Frame,
	type Solid,
	p3,
	type Point3,
} from '../solid';

/*
 * Dividers, frames and shelves in a double-tapered box. A board across one axis is plain as long as
 * it stands clear of the two sides at the ends of that axis: then it is cut by the other four
 * alone.
 */

/** A board of thickness `t` across an axis, from `at` on. */
export interface Slice {
	readonly solid: Solid;
	readonly frame: Frame;
	readonly meets: readonly Meeting[];
}

export const FACING: Readonly<Record<Across, { readonly n: Point3; readonly up: Point3 }>> = {
	width: { n: p3(-1, 0, 0), up: p3(0, 0, 1) },
	height: { n: p3(0, 0, 1), up: p3(0, 1, 0) },
	depth: { n: p3(0, -1, 0), up: p3(0, 0, 1) },
};

export function sliceAcross(sides: Planes, across: Across, at: number, t: number): Slice | null {
	const [from, to] = stretch(sides, across);
	if (at <= from || at + t >= to) return null;
	const ring = sidesAround(ENDS[across].low).map((side) => sides[side]);
	const faces = [at, at + t].map((d) => faceWithin(level('', across, d, 1), ring));
	// Of a level board the upper face is the outside; of an upright one the face to the left or the
	// front.
	const [outside, inside] =
		across === 'height' ? [nth(faces, 1), nth(faces, 0)] : [nth(faces, 0), nth(faces, 1)];
	const { n, up } = FACING[across];
	return {
		solid: { outside, inside },
		frame: frameOf(nth(outside, 0), n, up),
		meets: ring.map((side, i) => ({
			other: side.key,
			from: nth(outside, i),
			to: nth(outside, (i + 1) % ring.length),
		})),
	};
}
