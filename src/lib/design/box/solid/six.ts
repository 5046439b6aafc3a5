import { nth } from '../../../measure';
import type { Plane } from './plane';
import { add3, cross3, dot3, middle3, p3, scale3, type Point3 } from './vec';

/*
 * The body inside six planes: front and back stand parallel, the other four may lean. Every corner
 * is where three of them meet, and every section parallel to the front is a rectangle.
 */

export type Six = 'front' | 'back' | 'top' | 'bottom' | 'left' | 'right';
export const SIX: readonly Six[] = ['bottom', 'back', 'top', 'front', 'left', 'right'];
/** The four that lean, counter-clockwise as seen from the front. */
export const ROUND: readonly [Six, Six, Six, Six] = ['bottom', 'right', 'top', 'left'];

/** What closes each of the six sides: a wall, a layer on it, a divider. */
export type Planes = Readonly<Record<Six, Plane>>;

export function mapPlanes(planes: Planes, change: (f: Plane, key: Six) => Plane): Planes {
	return Object.fromEntries(SIX.map((key) => [key, change(planes[key], key)])) as Planes;
}

/** Where three planes meet. */
export function meet3(a: Plane, b: Plane, c: Plane): Point3 {
	const bc = cross3(b.n, c.n);
	const det = dot3(a.n, bc);
	if (Math.abs(det) < 1e-9) throw new Error('bug: three planes without a common point');
	const sum = add3(
		scale3(bc, a.d),
		add3(scale3(cross3(c.n, a.n), b.d), scale3(cross3(a.n, b.n), c.d)),
	);
	return scale3(sum, 1 / det);
}

/**
 * Front bottom left, front bottom right, front top right, front top left, then the same at the
 * back.
 */
export function hexCorners(f: Planes): Point3[] {
	return [f.front, f.back].flatMap((face) => [
		meet3(face, f.bottom, f.left),
		meet3(face, f.bottom, f.right),
		meet3(face, f.top, f.right),
		meet3(face, f.top, f.left),
	]);
}

/** Which corners lie on each side. */
export const ON: Readonly<Record<Six, readonly number[]>> = {
	front: [0, 1, 2, 3],
	back: [4, 5, 6, 7],
	bottom: [0, 1, 4, 5],
	right: [1, 2, 5, 6],
	top: [2, 3, 6, 7],
	left: [0, 3, 4, 7],
};

/** Are all corners on their own sides, so that there is something inside? */
export function opens(c: readonly Point3[]): boolean {
	return (
		[0, 4].every(
			(k) =>
				nth(c, k + 1).x - nth(c, k).x > 1 &&
				nth(c, k + 3).z - nth(c, k).z > 1 &&
				nth(c, k + 2).x - nth(c, k + 3).x > 1,
		) && nth(c, 4).y - nth(c, 0).y > 1
	);
}

/**
 * Volume between two parallel rectangles: the prismatoid formula (Moscow papyrus, problem 14; Kern
 * and Bland 1948, p. 75). The frustum formula would be right only for similar rectangles.
 */
export function hexVolume(c: readonly Point3[]): number {
	const area = (k: number, other: number): number => {
		const p = [0, 1, 2, 3].map((i) => middle3(nth(c, k + i), nth(c, other + i)));
		return (nth(p, 1).x - nth(p, 0).x) * (nth(p, 3).z - nth(p, 0).z);
	};
	return prismatoid(area(0, 0), area(0, 4), area(4, 4), nth(c, 4).y - nth(c, 0).y);
}

/**
 * h / 6 (A1 + 4 Am + A2): exact for anything whose section changes as a square of the height or
 * less.
 */
export function prismatoid(first: number, middle: number, last: number, height: number): number {
	return (height / 6) * (first + 4 * middle + last);
}

/** The four sides round one of the six, each beside the next. */
export function sidesAround(key: Six): readonly [Six, Six, Six, Six] {
	if (key === 'front' || key === 'back') return ROUND;
	const i = ROUND.indexOf(key);
	return [nth(ROUND, (i + 3) % 4), 'back', nth(ROUND, (i + 1) % 4), 'front'];
}

/** Corners of a plane within four sides: corner `i` lies where side `i - 1` meets side `i`. */
export function faceWithin(plane: Plane, ring: readonly Plane[]): Point3[] {
	return ring.map((side, i) => meet3(plane, side, nth(ring, (i + 3) % 4)));
}

export type Across = 'width' | 'height' | 'depth';

/** The axis a board stands across, and the sides at its two ends. */
export const ENDS: Readonly<
	Record<Across, { readonly axis: 'x' | 'y' | 'z'; readonly low: Six; readonly high: Six }>
> = {
	width: { axis: 'x', low: 'left', high: 'right' },
	height: { axis: 'z', low: 'bottom', high: 'top' },
	depth: { axis: 'y', low: 'front', high: 'back' },
};

const UNIT = { x: p3(1, 0, 0), y: p3(0, 1, 0), z: p3(0, 0, 1) } as const;

/**
 * An upright or level plane, what lies beyond it cut off: `sign` 1 keeps what is below `at` on the
 * axis, -1 what is above.
 */
export function level(key: string, across: Across, at: number, sign: 1 | -1): Plane {
	return { key, n: scale3(UNIT[ENDS[across].axis], sign), d: sign * at };
}

/**
 * The stretch of an axis where a straight board can stand without meeting the sides at its ends.
 */
export function stretch(planes: Planes, across: Across): [from: number, to: number] {
	const { axis, low, high } = ENDS[across];
	const c = hexCorners(planes);
	return [
		Math.max(...ON[low].map((i) => nth(c, i)[axis])),
		Math.min(...ON[high].map((i) => nth(c, i)[axis])),
	];
}

/** Least of an axis over all corners: what places inside are measured from. */
export function leastOf(planes: Planes, across: Across): number {
	const { axis, low } = ENDS[across];
	const c = hexCorners(planes);
	return Math.min(...ON[low].map((i) => nth(c, i)[axis]));
}
