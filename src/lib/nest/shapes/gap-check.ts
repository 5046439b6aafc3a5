import { around, nth } from '../../measure';
import { convexParts, flatten, orient, type Point, rectangle, turnedInBox } from '../../geometry';
import { SEARCH_FLAT, type FreePiece } from './free-shape';

/**
 * A piece laid down, by its place in the list: the corner of its bounding rectangle as turned,
 * whole ticks.
 */
export interface LaidPiece {
	readonly piece: number;
	readonly turn: 0 | 90 | 180 | 270;
	readonly x: number;
	readonly y: number;
}

interface Body {
	readonly parts: readonly Part[];
	readonly extent: Extent;
}

interface Part {
	readonly points: readonly Point[];
	readonly extent: Extent;
}

interface Extent {
	readonly left: number;
	readonly right: number;
	readonly bottom: number;
	readonly top: number;
}

/**
 * The free search's own last look at a layout. It moves pieces by fractions of a tick and lets them
 * overlap by a hair, so what it found counts only when the pieces as they are, not grown and not
 * simplified, keep the whole gap. On the grid this is decided in whole numbers; arcs by straight
 * edges that hold them, so that a doubt never ends in too small a gap.
 */
export class GapCheck {
	private readonly bodies = new Map<string, Body>();
	/** As given: a quarter turn of a part is exact. */
	private readonly parts = new Map<number, Point[][]>();

	constructor(
		private readonly pieces: readonly FreePiece[],
		private readonly gap: number,
	) {}

	passes(laid: readonly LaidPiece[]): boolean {
		const bodies = laid.map((one) => shifted(this.body(one), one.x, one.y));
		bodies.sort((a, b) => a.extent.left - b.extent.left);
		return bodies.every((a, i) => {
			for (let j = i + 1; j < bodies.length; j++) {
				const b = nth(bodies, j);
				if (b.extent.left >= a.extent.right + this.gap) break;
				if (!this.apart(a, b)) return false;
			}
			return true;
		});
	}

	/** A piece as turned, in convex parts, from the corner of its bounding rectangle. */
	private body({ piece, turn }: LaidPiece): Body {
		const key = `${piece} ${turn}`;
		const known = this.bodies.get(key);
		if (known !== undefined) return known;
		const { length, width } = nth(this.pieces, piece);
		const parts = this.partsOf(piece).map((part) => turnedInBox(part, { length, width }, turn));
		const body = bodyOf(parts);
		this.bodies.set(key, body);
		return body;
	}

	private partsOf(piece: number): Point[][] {
		const known = this.parts.get(piece);
		if (known !== undefined) return known;
		const { length, width, outline, holes } = nth(this.pieces, piece);
		const own = flatten(outline ?? rectangle(0, 0, length, width), SEARCH_FLAT, 'outward');
		const inner = (holes ?? []).map((hole) => flatten(hole, SEARCH_FLAT, 'inward'));
		const parts = convexParts(own, inner);
		this.parts.set(piece, parts);
		return parts;
	}

	private apart(a: Body, b: Body): boolean {
		const { gap } = this;
		if (isClear(a.extent, b.extent, gap)) return true;
		return a.parts.every((p) =>
			b.parts.every((q) => isClear(p.extent, q.extent, gap) || partsApart(p.points, q.points, gap)),
		);
	}
}

function bodyOf(parts: readonly (readonly Point[])[]): Body {
	return {
		parts: parts.map((points) => ({ points, extent: extentOf(points) })),
		extent: extentOf(parts.flat()),
	};
}

function extentOf(points: readonly Point[]): Extent {
	const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
	return {
		left: Math.min(...xs),
		right: Math.max(...xs),
		bottom: Math.min(...ys),
		top: Math.max(...ys),
	};
}

function shifted({ parts }: Body, x: number, y: number): Body {
	return bodyOf(parts.map(({ points }) => points.map((p) => ({ x: p.x + x, y: p.y + y }))));
}

/** Do the extents alone show that the gap is kept? */
function isClear(a: Extent, b: Extent, gap: number): boolean {
	const along = Math.max(a.left - b.right, b.left - a.right);
	return Math.max(along, a.bottom - b.top, b.bottom - a.top) >= gap;
}

/**
 * Convex parts that share no area, and no edge of one nearer than the gap to an edge of the other.
 */
function partsApart(a: readonly Point[], b: readonly Point[], gap: number): boolean {
	if (!isBeside(a, b) && !isBeside(b, a)) return false;
	return gap === 0 || a.every((p, i) => !isNear(p, around(a, i + 1), b, gap));
}

/** Does all of `b` lie on or right of some edge of `a`, which runs counter-clockwise? */
function isBeside(a: readonly Point[], b: readonly Point[]): boolean {
	return a.some((p, i) => b.every((q) => orient(p, around(a, i + 1), q) <= 0));
}

/**
 * Is any edge of a part nearer to the edge p, q than the gap? Edges that do not cross are nearest
 * at an end of one.
 */
function isNear(p: Point, q: Point, part: readonly Point[], gap: number): boolean {
	return part.some((r, i) => {
		const s = around(part, i + 1);
		const ends = [nearer(p, r, s, gap), nearer(q, r, s, gap), nearer(r, p, q, gap)];
		return ends.includes(true) || nearer(s, p, q, gap);
	});
}

/**
 * Is a point nearer to the edge a, b than the gap? Rounded numbers first, whole ones where those
 * leave a doubt.
 */
function nearer(p: Point, a: Point, b: Point, gap: number): boolean {
	const [dx, dy, px, py] = [b.x - a.x, b.y - a.y, p.x - a.x, p.y - a.y];
	const square = dx * dx + dy * dy;
	const along = px * dx + py * dy;
	const t = square === 0 ? 0 : Math.max(0, Math.min(1, along / square));
	const distance = Math.hypot(px - t * dx, py - t * dy);
	return Math.abs(distance - gap) > 0.01 ? distance < gap : isNearerExactly(p, a, b, gap);
}

function isNearerExactly(p: Point, a: Point, b: Point, gap: number): boolean {
	const [dx, dy] = [BigInt(b.x - a.x), BigInt(b.y - a.y)];
	const [px, py] = [BigInt(p.x - a.x), BigInt(p.y - a.y)];
	const least = BigInt(gap) ** 2n;
	const square = dx * dx + dy * dy;
	const along = px * dx + py * dy;
	if (along <= 0n) return px * px + py * py < least;
	if (along >= square) return (px - dx) ** 2n + (py - dy) ** 2n < least;
	return (dx * py - dy * px) ** 2n < least * square;
}
