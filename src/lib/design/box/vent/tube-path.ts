import type { RoundVent } from '../../../job';
import { nth } from '../../../measure';
import type { Place } from '../board';
import { add3, cross3, dot3, type Point3, scale3 } from '../solid';

/** A straight piece or a quarter bend of a tube's middle line, ticks. */
interface Piece {
	readonly from: Point3;
	readonly heading: Point3;
	readonly length: number;
	/** Which way it bends, and how tightly; null for a straight one. */
	readonly bend: { readonly to: Point3; readonly radius: number } | null;
}

/** The middle line of a tube from the outer face of its board on; the last piece has no end. */
export interface TubePath {
	readonly pieces: readonly Piece[];
	/** Length of all but the last straight piece: no tube is shorter. */
	readonly fixed: number;
}

/** Null where an elbow turns on or back along the way the tube runs already. */
export function tubePath(
	{ elbows }: RoundVent,
	{ wall, point, inward, proud }: Place,
): TubePath | null {
	const { u, v, n } = wall.frame;
	const ways = { right: u, left: scale3(u, -1), up: v, down: scale3(v, -1), in: inward, out: n };
	const pieces: Piece[] = [];
	let from = add3(point, scale3(inward, -proud));
	let heading = inward;
	for (const { after, radius, turn } of elbows) {
		const to = ways[turn];
		if (Math.abs(dot3(to, heading)) > 0.5) return null;
		pieces.push({ from, heading, length: after, bend: null });
		from = add3(from, scale3(heading, after));
		pieces.push({ from, heading, length: (Math.PI / 2) * radius, bend: { to, radius } });
		from = add3(from, scale3(add3(heading, to), radius));
		heading = to;
	}
	const fixed = pieces.reduce((sum, p) => sum + p.length, 0);
	return { pieces: [...pieces, { from, heading, length: Infinity, bend: null }], fixed };
}

export const lastPiece = ({ pieces }: TubePath): Piece => nth(pieces, pieces.length - 1);

/** A point of the middle line so far along it, and the way it heads there. */
export function alongPath(path: TubePath, far: number): { point: Point3; heading: Point3 } {
	let left = far;
	for (const piece of path.pieces) {
		if (left > piece.length) {
			left -= piece.length;
			continue;
		}
		const { from, heading, bend } = piece;
		if (!bend) return { point: add3(from, scale3(heading, left)), heading };
		const turn = left / bend.radius;
		const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
		const off = add3(scale3(heading, bend.radius * sin), scale3(bend.to, bend.radius * (1 - cos)));
		return { point: add3(from, off), heading: add3(scale3(heading, cos), scale3(bend.to, sin)) };
	}
	throw new Error('bug: a tube has no last piece');
}

/** Two directions square to a heading and to each other. */
export function squareOf(heading: Point3): readonly [Point3, Point3] {
	const across = Math.abs(heading.x) < 0.9 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
	const a = cross3(heading, across);
	const one = scale3(a, 1 / Math.sqrt(dot3(a, a)));
	return [one, cross3(heading, one)];
}
