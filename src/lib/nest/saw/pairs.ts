import type { Piece } from '../types';

/*
 * Tapered pieces, such as the end boards of a slanted box. Two alike, one turned by half, lie head
 * to tail in one rectangle: one slanted cut parts them, and the rectangle is shorter than two of
 * their own.
 */

/** A point of the pair's rectangle, which starts at 0,0. */
export interface PairPoint {
	readonly x: number;
	readonly y: number;
}

export interface Pair {
	readonly length: number; // of the rectangle that holds both, without turning
	readonly width: number;
	/** The slanted cut's edge on the first piece. */
	readonly from: PairPoint;
	readonly to: PairPoint;
	/** Corner of the bounding rectangle of the second piece; the first lies at 0,0 as given. */
	readonly second: PairPoint;
}

/**
 * A trapezoid (or triangle) in its rectangle. `key` tells equal shapes, whatever corner their
 * outline starts at.
 */
export interface Taper {
	readonly key: string;
	/** Null when a half turn is not allowed or nothing is gained. */
	pair(piece: Piece, kerf: number): Pair | null;
}

interface Sides {
	readonly along: 'x' | 'y'; // direction of the two parallel sides
	readonly length: number; // of the rectangle, along
	readonly depth: number; // across
	/** Where the far (upper or right) and near (lower or left) sides start and end. */
	readonly near: readonly [number, number];
	readonly far: readonly [number, number];
}

function sidesAlong(piece: Piece, along: 'x' | 'y'): Sides | null {
	const outline = piece.outline ?? [];
	const [length, depth] = along === 'x' ? [piece.length, piece.width] : [piece.width, piece.length];
	const spots = outline.map((c) => (along === 'x' ? { a: c.x, b: c.y } : { a: c.y, b: c.x }));
	if (spots.some((s) => s.b !== 0 && s.b !== depth)) return null;
	const range = (b: number): [number, number] | null => {
		const on = spots.filter((s) => s.b === b).map((s) => s.a);
		return on.length === 0 ? null : [Math.min(...on), Math.max(...on)];
	};
	const near = range(0);
	const far = range(depth);
	return near && far ? { along, length, depth, near, far } : null;
}

function sidesOf(piece: Piece): Sides | null {
	const outline = piece.outline;
	if (!outline || outline.length < 3 || outline.length > 4) return null;
	if (outline.some((c) => c.bulge)) return null;
	const sides = sidesAlong(piece, 'x') ?? sidesAlong(piece, 'y');
	if (!sides) return null;
	const { near, far, length } = sides;
	const rectangle = near[0] === far[0] && near[1] === far[1];
	const fills = Math.min(near[0], far[0]) === 0 && Math.max(near[1], far[1]) === length;
	return rectangle || !fills ? null : sides;
}

/**
 * The pair in coordinates of `sides`. The first piece's end side runs from near[1] to far[1]; the
 * second's, after its half turn, is parallel to it, one kerf away square to the slant.
 */
function pairUp(sides: Sides, kerf: number): Pair {
	const { near, far, length, depth } = sides;
	const lean = far[1] - near[1];
	const gap = Math.ceil((kerf * Math.hypot(depth, lean)) / depth);
	// Turned by half, the second piece's near side ends where the first one's far side ends: its
	// slanted side starts at length - far[1].
	const shift = near[1] + gap - (length - far[1]);
	const spot = (a: number, b: number): PairPoint =>
		sides.along === 'x' ? { x: a, y: b } : { x: b, y: a };
	const rect = spot(shift + length, depth);
	return {
		length: rect.x,
		width: rect.y,
		from: spot(near[1], 0),
		to: spot(far[1], depth),
		second: spot(shift, 0),
	};
}

/**
 * A slanted side of a piece that lies alone in its rectangle; the triangle out to `corner` falls
 * off.
 */
export interface SlantedSide {
	/** At the left or lower end of the piece, or at its other end. */
	readonly end: 0 | 1;
	readonly from: PairPoint;
	readonly to: PairPoint;
	readonly corner: PairPoint;
}

/**
 * The slanted sides of a tapered piece in its own rectangle, one or two; none for any other piece.
 */
export function slantedSides(piece: Piece): SlantedSide[] {
	const sides = sidesOf(piece);
	if (!sides) return [];
	const { near, far, length, depth, along } = sides;
	const spot = (a: number, b: number): PairPoint =>
		along === 'x' ? { x: a, y: b } : { x: b, y: a };
	return ([0, 1] as const)
		.filter((end) => near[end] !== far[end])
		.map((end) => {
			const outer = end === 0 ? 0 : length;
			const corner = spot(outer, near[end] === outer ? depth : 0);
			return { end, from: spot(near[end], 0), to: spot(far[end], depth), corner };
		});
}

/** The same piece seen from its other end, so that the pair may meet there: turned by half. */
function reversed(sides: Sides): Sides {
	const flip = ([a, b]: readonly [number, number]): [number, number] => [
		sides.length - b,
		sides.length - a,
	];
	return { ...sides, near: flip(sides.far), far: flip(sides.near) };
}

/**
 * Which of the two ends should meet: the one that leans more. Returned with whether the first piece
 * is turned by half.
 */
export function meeting(piece: Piece): { sides: Sides; turned: boolean } | null {
	const sides = sidesOf(piece);
	if (!sides) return null;
	const right = Math.abs(sides.far[1] - sides.near[1]);
	const left = Math.abs(sides.far[0] - sides.near[0]);
	return right >= left ? { sides, turned: false } : { sides: reversed(sides), turned: true };
}

export function taperOf(piece: Piece): Taper | null {
	const meet = meeting(piece);
	if (!meet) return null;
	const { along, near, far } = meet.sides;
	return {
		key: `${along} ${near.join()} ${far.join()}`,
		pair: (p, kerf) => (p.turns === 'none' ? null : pairUp(meet.sides, kerf)),
	};
}
