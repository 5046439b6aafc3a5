import type { BoxSpot } from '../../../job';
import { distanceTo, flatten, type Point, whereIs } from '../../../geometry';
import { nth } from '../../../measure';
import { airHolds, type Air, flat, raised, type Frame, add3, scale3, type Point3 } from '../solid';
import type { Board, Hole } from './board';
import { dividerNumber } from './on-divider';

/** Somewhere on the outside of a wall, and the way in from there. */
export interface Place {
	readonly wall: Board;
	/** In the frame of the wall, from the lower left corner of its outside face. */
	readonly at: Point;
	readonly point: Point3;
	/** Straight in, square to the wall. */
	readonly inward: Point3;
	/** Thickness of the wall and of the layers inside it. */
	readonly stack: number;
	/** Thickness of the layers outside the wall, which a flange sits on. */
	readonly proud: number;
	/** Layers on that wall, inside and outside, which are cut through with it. */
	readonly layers: readonly Board[];
	/** Is it on the inside face of a divider, so that it goes in towards the outside face? */
	readonly reversed: boolean;
}

export const onDivider = ({ wall }: Pick<Place, 'wall'>): boolean => wall.role === 'divider';

/** Corners of the outside face in its own frame. */
export const faceOf = (board: Board): Point[] =>
	board.solid.outside.map((p) => flat(p, board.frame));

/** How far straight pieces may lie off the arcs of a hole when its place is looked at, ticks. */
const FINE = 16;

/** Does a hole lie within a face with all it has, arcs included? On the edge it does not. */
export function liesOn({ outline, centre, size }: Hole, face: readonly Point[]): boolean {
	if (size.length === 1) {
		const within = whereIs(centre, face) === 'inside';
		return within && distanceTo(centre, face) >= nth(size, 0) / 2;
	}
	const whole = flatten(outline, FINE).every((p) => whereIs(p, face) === 'inside');
	return whole && face.every((p) => whereIs(p, outline) !== 'inside');
}

/** Does a hole lie within its board? A divider may be smaller on one face than on the other. */
export function liesOnBoard(hole: Hole, board: Board): boolean {
	const faces = facesToFill(board);
	return faces.every((face) => liesOn(hole, face));
}

/** The faces a thing mounted on a board has to lie within. */
export function facesToFill(board: Board): Point[][] {
	const other = board.solid.inside.map((p) => flat(p, board.frame));
	return board.role === 'divider' ? [faceOf(board), other] : [faceOf(board)];
}

/** From any point of a hole to the nearest edge of the face it is cut in, ticks; 0 at least. */
export function edgeOfHole({ outline, centre, size }: Hole, face: readonly Point[]): number {
	if (size.length === 1) return Math.max(0, distanceTo(centre, face) - nth(size, 0) / 2);
	return Math.min(...flatten(outline, FINE).map((p) => distanceTo(p, face)));
}

/** The middle of a face: of the rectangle round it. */
export function middleOf(board: Board): Point {
	const face = faceOf(board);
	const x = face.map((p) => p.x);
	const y = face.map((p) => p.y);
	return { x: (Math.min(...x) + Math.max(...x)) / 2, y: (Math.min(...y) + Math.max(...y)) / 2 };
}

/**
 * A spot on a wall or a divider, shifted `along` it for the members of a row; null when the box has
 * no such board. On a divider it goes in to the side said.
 */
export function placeOn(
	boards: readonly Board[],
	key: string,
	spot: BoxSpot,
	along = 0,
	into: 'far' | 'near' = 'far',
): Place | null {
	if (dividerNumber(key) !== null) return placeOnDivider(boards, key, spot, along, into);
	const wall = boards.find((b) => b.key === key && (b.role === 'wall' || b.role === 'end'));
	if (!wall) return null;
	const middle = middleOf(wall);
	const at = { x: (spot.across ?? middle.x) + along, y: spot.up ?? middle.y };
	const layers = boards.filter(
		(b) => (b.role === 'doubler' || b.role === 'overlay') && b.wall === key,
	);
	const thick = (role: Board['role']): number =>
		layers.reduce((sum, b) => sum + (b.role === role ? b.material.measured : 0), 0);
	return {
		wall,
		at,
		point: raised(at, wall.frame),
		inward: scale3(wall.frame.n, -1),
		stack: wall.material.measured + thick('doubler'),
		proud: thick('overlay'),
		layers,
		reversed: false,
	};
}

function placeOnDivider(
	boards: readonly Board[],
	key: string,
	spot: BoxSpot,
	along: number,
	into: 'far' | 'near',
): Place | null {
	const [wall, ...more] = boards.filter((b) => b.divider === dividerNumber(key));
	if (!wall || more.length > 0) return null;
	const middle = middleOf(wall);
	const at = { x: (spot.across ?? middle.x) + along, y: spot.up ?? middle.y };
	const { n } = wall.frame;
	const stack = wall.material.measured;
	// Dividers stand square to an axis: their outside looks along it or against it.
	const reversed = n.x + n.y + n.z > 0 === (into === 'far');
	const point = raised(at, wall.frame, reversed ? -stack : 0);
	const inward = reversed ? n : scale3(n, -1);
	return { wall, at, point, inward, stack, proud: 0, layers: [], reversed };
}

/** The board a flange sits on: the wall, or the last layer glued on outside it. */
export function outermost({ wall, layers }: Place): Board {
	return layers.filter((b) => b.role === 'overlay').at(-1) ?? wall;
}

/** A point of the wall's frame in the frame of a layer behind it, straight through. */
export function through(p: Point, from: Frame, to: Frame): Point {
	return flat(raised(p, from), to);
}

/** The chamber that begins behind a place, or -1 when a board stands right there. */
export function roomBehind(rooms: readonly { air: Air }[], place: Place): number {
	const just = add3(place.point, scale3(place.inward, place.stack + 4));
	return rooms.findIndex((r) => airHolds(r.air, just));
}

/** The chamber a place on a divider opens into on its near end, or -1 when a board stands there. */
export function roomBefore(rooms: readonly { air: Air }[], place: Place): number {
	const just = add3(place.point, scale3(place.inward, -4));
	return rooms.findIndex((r) => airHolds(r.air, just));
}

/** Centres of a row of `count`, `pitch` apart, about its middle. */
export function rowOf(count: number, pitch: number): number[] {
	return Array.from({ length: count }, (_, i) => (i - (count - 1) / 2) * pitch);
}
