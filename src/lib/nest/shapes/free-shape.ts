import {
	grown,
	convexParts,
	area,
	flatten,
	type Outline,
	type Point,
	simplifiedOutward,
	rectangle,
	turnedInBox,
} from '../../geometry';

/** How far a flattened arc may depart outward from the true one in the search, ticks: 0.25 mm. */
export const SEARCH_FLAT = 400;
/**
 * Added to half the gap all round: what the grid and the search's own rounding may lose. Eight
 * ticks are 5 micrometres.
 */
const SPARE = 8;
/**
 * Outlines of more corners than this are simplified outward: the tables of their pairs grow with
 * the square of the parts.
 */
const MANY_CORNERS = 16;
/** Area that simplifying may add, as a share. */
const SIMPLER = 0.002;
/** The same for first layouts, whose columns lose more than that. */
const COARSE = { corners: 12, share: 0.005 };

type Turn = 0 | 90 | 180 | 270;

/** What the free search needs to know of a piece. */
export interface FreePiece {
	readonly id: string;
	readonly length: number;
	readonly width: number;
	readonly count: number;
	readonly turns: readonly Turn[];
	readonly outline?: Outline;
	/** Only the holes that other pieces may lie in. */
	readonly holes?: readonly Outline[];
}

/**
 * A piece as turned, grown by half the gap and cut into convex parts, so that two pieces are far
 * enough apart exactly when no part of one overlaps a part of the other. Positions are those of the
 * corner of the true piece's bounding rectangle.
 */
export interface FreeShape {
	readonly n: number; // number of the shape, for tables
	readonly turn: Turn;
	readonly length: number; // of the true piece as turned
	readonly width: number;
	readonly parts: readonly (readonly Point[])[];
	readonly left: number; // extent of the grown piece
	readonly right: number;
	readonly bottom: number;
	readonly top: number;
}

export interface FreeKind {
	readonly id: string;
	readonly count: number;
	readonly area: number; // of the true piece, holes counted out
	readonly length: number; // as given
	readonly width: number;
	/** As given, not grown, from the corner of its bounding rectangle, in convex parts. */
	readonly parts: readonly (readonly Point[])[];
	readonly shapes: readonly FreeShape[];
}

export function readyShapes(pieces: readonly FreePiece[], gap: number): FreeKind[] {
	let n = 0;
	return pieces.map((piece) => {
		const seen = new Set<string>();
		const shapes: FreeShape[] = [];
		const own = piece.outline ?? rectangle(0, 0, piece.length, piece.width);
		const base = grownParts(piece, own, gap);
		for (const turn of piece.turns) {
			const look = lookOf(piece, own, turn);
			if (seen.has(look)) continue; // a symmetric piece turned looks the same
			seen.add(look);
			shapes.push(shapeOf(piece, base, turn, n++));
		}
		const holes = (piece.holes ?? []).reduce((sum, hole) => sum + Math.abs(area(hole)), 0);
		const { id, count, length, width } = piece;
		let parts: Point[][] | null = null; // what only fills columns never asks for them
		return {
			...{ id, count, length, width, shapes },
			area: Math.abs(area(own)) - holes,
			get parts() {
				return (parts ??= trueParts(piece, own));
			},
		};
	});
}

function lookOf(piece: FreePiece, own: Outline, turn: Turn): string {
	const all = [own, ...(piece.holes ?? [])].flatMap((o) => turnedInBox(o, piece, turn));
	const corners = all.map((c) => `${c.x} ${c.y} ${c.bulge ?? 0}`);
	return corners.sort().join(';');
}

/** The piece as given, grown and cut into parts: quarter turns of the parts are exact. */
function grownParts(piece: FreePiece, own: Outline, gap: number): Point[][] {
	const by = Math.ceil(gap / 2) + SPARE;
	const [outer] = grown([flatten(own, SEARCH_FLAT, 'outward')], by, 'sharp');
	if (outer === undefined) throw new Error(`bug: the outline of ${piece.id} has no area`);
	const holes = (piece.holes ?? []).flatMap((hole) =>
		grown([flatten(hole, SEARCH_FLAT, 'inward')], -by, 'sharp').map((region) => region.outline),
	);
	const many = outer.outline.length > COARSE.corners;
	return convexParts(many ? simplifiedOutward(outer.outline, COARSE.share) : outer.outline, holes);
}

function trueParts(piece: FreePiece, own: Outline): Point[][] {
	const outer = flatten(own, SEARCH_FLAT, 'outward');
	const holes = (piece.holes ?? []).map((hole) => flatten(hole, SEARCH_FLAT, 'inward'));
	const many = outer.length > MANY_CORNERS;
	return convexParts(many ? simplifiedOutward(outer, SIMPLER) : outer, holes);
}

function shapeOf(piece: FreePiece, base: readonly Point[][], turn: Turn, n: number): FreeShape {
	const parts = base.map((part) => turnedInBox(part, piece, turn));
	const all = parts.flat();
	const quarter = turn === 90 || turn === 270;
	return {
		n,
		turn,
		length: quarter ? piece.width : piece.length,
		width: quarter ? piece.length : piece.width,
		parts,
		left: Math.min(...all.map((p) => p.x)),
		right: Math.max(...all.map((p) => p.x)),
		bottom: Math.min(...all.map((p) => p.y)),
		top: Math.max(...all.map((p) => p.y)),
	};
}
