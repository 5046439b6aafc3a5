import { nth, around } from '../../../measure';
import type { Point } from '../../../geometry';
import { add3, angleBetween, cross3, dot3, middle3, scale3, sub3, unit3, type Point3 } from './vec';

/**
 * The body of a board: its outside face and its inside face, corner for corner, both run
 * counter-clockwise as seen from outside. Between corner k and k + 1 lies edge k, a plane face.
 */
export interface Solid {
	readonly outside: readonly Point3[];
	readonly inside: readonly Point3[];
}

/**
 * Where a board is looked at: `u` to the right and `v` up as seen from outside, `n` towards the
 * viewer.
 */
export interface Frame {
	readonly at: Point3;
	readonly u: Point3;
	readonly v: Point3;
	readonly n: Point3;
}

/** A frame whose outside looks along `n` and whose `v` points as far `up` as it can. */
export function frameOf(at: Point3, n: Point3, up: Point3): Frame {
	const flat = sub3(up, scale3(n, dot3(up, n)));
	const v = unit3(flat);
	return { at, u: cross3(v, n), v, n };
}

export function flat(p: Point3, f: Frame): Point {
	const d = sub3(p, f.at);
	return { x: dot3(d, f.u), y: dot3(d, f.v) };
}

/** Height of a point over the frame's plane. */
export function over(p: Point3, f: Frame): number {
	return dot3(sub3(p, f.at), f.n);
}

export function raised(p: Point, f: Frame, height = 0): Point3 {
	return add3(f.at, add3(scale3(f.u, p.x), add3(scale3(f.v, p.y), scale3(f.n, height))));
}

/** Volume in cubic ticks: sections change corner by corner, so the prismatoid formula is exact. */
export function volumeOf(s: Solid, f: Frame, thickness: number): number {
	const halfway = s.outside.map((p, i) => middle3(p, nth(s.inside, i)));
	return (
		(thickness / 6) * (faceArea(s.outside, f) + 4 * faceArea(halfway, f) + faceArea(s.inside, f))
	);
}

/** Volume of any body between two corresponding outlines, cubic ticks. */
export function bodyVolume(s: Solid): number {
	return weighBody(s).volume;
}

/** A volume, and the middle of each piece of it times the volume of that piece, summed. */
export interface Weighed {
	readonly volume: number;
	readonly moment: Point3;
}

/** Any body between two corresponding outlines, by cones from one corner to every face. */
export function weighBody(s: Solid): Weighed {
	const n = s.outside.length;
	const apex = nth(s.outside, 0);
	const sides = s.outside.map((p, i) => {
		const j = (i + 1) % n;
		return [nth(s.inside, i), nth(s.inside, j), nth(s.outside, j), p];
	});
	const faces = [s.outside, [...s.inside].reverse(), ...sides];
	const cones = faces.flatMap((face) => {
		const at = face.map((p) => sub3(p, apex));
		return at.slice(1, -1).map((p, i) => {
			const [a, b] = [nth(at, 0), nth(at, i + 2)];
			const volume = dot3(a, cross3(p, b)) / 6;
			return { volume, moment: scale3(add3(a, add3(p, b)), volume / 4) };
		});
	});
	const volume = cones.reduce((sum, c) => sum + c.volume, 0);
	return { volume, moment: cones.reduce((sum, c) => add3(sum, c.moment), scale3(apex, volume)) };
}

export function faceArea(face: readonly Point3[], f: Frame): number {
	return planeArea(face.map((p) => flat(p, f)));
}

/** Area of a plane polygon that need not lie on the grid; negative when clockwise. */
export function planeArea(points: readonly Point[]): number {
	const o = points[0];
	if (o === undefined) return 0;
	let twice = 0;
	points.forEach((p, i) => {
		const q = around(points, i + 1);
		twice += (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x);
	});
	return twice / 2;
}

/** How far edge `k` is tilted from square, degrees, and which face is the longer one there. */
export function edgeTilt(
	s: Solid,
	f: Frame,
	k: number,
): { tilt: number; long: 'outside' | 'inside' } {
	const n = s.outside.length;
	const a = nth(s.outside, k);
	const b = nth(s.outside, (k + 1) % n);
	const down = sub3(nth(s.inside, k), a);
	// points into the board or out of it, square to the edge face
	const side = cross3(unit3(sub3(b, a)), down);
	const tilt = Math.abs(90 - angleBetween(side, f.n));
	// Out of the board, in its plane: to the right of the edge as the outside is seen.
	const out = cross3(sub3(b, a), f.n);
	return { tilt, long: dot3(down, out) > 0 ? 'inside' : 'outside' };
}

/**
 * A straight piece of board: the same outline on both faces. `face` lies in the frame,
 * counter-clockwise.
 */
export function slab(face: readonly Point[], f: Frame, thickness: number): Solid {
	return {
		outside: face.map((p) => raised(p, f)),
		inside: face.map((p) => raised(p, f, -thickness)),
	};
}
