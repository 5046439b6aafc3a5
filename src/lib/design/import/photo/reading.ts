import { nth } from '../../../measure';
import type { Point } from '../../../geometry';
import {
	crookedBy,
	crookedSquares,
	edgesOfPaper,
	type PictureSize,
	type Lens,
	lensOf,
	straightened,
} from './lens';
import { SLIP, squareUp, type PhotographedPaper, type Squared } from './square-up';

type Four = readonly [Point, Point, Point, Point];

/** A sheet of paper as it was marked in a picture, pixels. */
export interface MarkedPaper {
	/** Top left, top right, bottom right, bottom left. */
	readonly corners: Four;
	/** Further marks along its edges: they tell how the lens bends. */
	readonly along: readonly Point[];
	/** Size of the picture; null when it is not known, and then the lens cannot be. */
	readonly frame: PictureSize | null;
	readonly paper: PhotographedPaper;
}

/** What a picture can be read by. */
export interface PictureReading {
	/** From pixels of the picture as it is, the bending of the lens taken out. */
	readonly squared: Squared;
	/** Null when nothing tells of it. */
	readonly lens: Lens | null;
	/** How far a mark lies off its edge of the paper when the lens is allowed for, pixels. */
	readonly crooked: number;
}

export function readPicture(marked: MarkedPaper): PictureReading {
	const { corners, along, frame, paper } = marked;
	const edges = edgesOfPaper(corners, along);
	const lens = frame ? lensOf(edges, frame) : null;
	if (!lens) return { squared: squareUp(corners, paper), lens, crooked: 0 };
	const squared = squaredBy(lens, corners, paper);
	if (!squared.ok) return { squared, lens, crooked: crookedBy(edges, lens) };
	const others = slipped(marked, slipOf(edges, lens)).flatMap((other) => {
		const made = squaredBy(other, corners, paper);
		return made.ok ? [made.toMm] : [];
	});
	const errorAt = (p: Point, slip?: number): number => {
		const home = squared.toMm(p);
		const moved = others.map((toMm) => toMm(p)).map((q) => Math.hypot(q.x - home.x, q.y - home.y));
		return Math.hypot(squared.errorAt(p, slip), ...moved);
	};
	return { squared: { ...squared, errorAt }, lens, crooked: crookedBy(edges, lens) };
}

/** Straightened first, then squared up. */
function squaredBy(lens: Lens, corners: Four, paper: PhotographedPaper): Squared {
	const straight = (p: Point): Point => straightened(lens, p);
	const [a, b, c, d] = corners;
	const found = squareUp([straight(a), straight(b), straight(c), straight(d)], paper);
	if (!found.ok) return found;
	return {
		...found,
		toMm: (p) => found.toMm(straight(p)),
		errorAt: (p, slip) => found.errorAt(straight(p), slip),
	};
}

/** So many marks more than the lines and the lens need tell how well they were set. */
const ENOUGH = 6;
/** Nothing is marked better than this, pixels. */
const FINEST = 0.3;

/**
 * How far off its edge a mark lies: by what is left over of the marks when there are enough of
 * them, else what a hand may slip.
 */
function slipOf(edges: readonly (readonly Point[])[], lens: Lens): number {
	const over = edges.reduce((sum, edge) => sum + edge.length - 2, 0) - 1;
	if (over < ENOUGH) return SLIP;
	return Math.min(SLIP, Math.max(FINEST, Math.sqrt(crookedSquares(edges, lens) / over)));
}

/** The lens as it would be found with each mark along an edge a little off, square to the edge. */
function slipped({ corners, along, frame }: MarkedPaper, slip: number): Lens[] {
	if (!frame) return [];
	return along.flatMap((_, i) => {
		const off = along.map((p, k) => (k === i ? offEdge(corners, p, slip) : p));
		const lens = lensOf(edgesOfPaper(corners, off), frame);
		return lens ? [lens] : [];
	});
}

/** Away from the middle of the paper. */
function offEdge(corners: Four, p: Point, slip: number): Point {
	const middle = {
		x: corners.reduce((sum, c) => sum + c.x, 0) / 4,
		y: corners.reduce((sum, c) => sum + c.y, 0) / 4,
	};
	const edge = nth(
		edgesOfPaper(corners, [p]).filter((list) => list.length > 2),
		0,
	);
	const [a, b] = [nth(edge, 0), nth(edge, 1)];
	const long = Math.max(Math.hypot(b.x - a.x, b.y - a.y), 1e-9);
	const [nx, ny] = [(b.y - a.y) / long, (a.x - b.x) / long];
	const out = nx * (p.x - middle.x) + ny * (p.y - middle.y) < 0 ? -slip : slip;
	return { x: p.x + out * nx, y: p.y + out * ny };
}
