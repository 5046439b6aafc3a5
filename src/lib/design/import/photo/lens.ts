import { around, nth } from '../../../measure';
import { between, distance, dot, minus, type Point } from '../../../geometry';
import { valleyOf, leftOfLine, lineThrough, offLine } from './fit';

/*
 * How a lens bends what is straight. The edges of a sheet of paper are straight; marks along them
 * that do not lie on one line tell by how much the picture is bent, and then every point can be
 * taken back to where a lens without a fault would have shown it.
 *
 * One coefficient of radial distortion about the middle of the picture, from lines known to be
 * straight: Brown, "Close-range camera calibration", Photogrammetric Engineering 37 (1971) 855-866.
 */

/** Size of the picture, pixels. */
export interface PictureSize {
	readonly width: number;
	readonly height: number;
}

/**
 * A lens: a point at `r` from the middle, in half diagonals of the picture, belongs at
 * `r (1 + bend r^2)`. 0 for none; below 0 the picture is barrel-shaped less than it should be.
 */
export interface Lens {
	readonly frame: PictureSize;
	readonly bend: number;
}

/** More than a phone's widest lens bends; from memory. */
const MOST = 0.5;

/** Where a lens without a fault would have shown the point. */
export function straightened({ frame, bend }: Lens, p: Point): Point {
	const [x, y] = [p.x - frame.width / 2, p.y - frame.height / 2];
	const by = 1 + bend * ((2 * Math.hypot(x, y)) / Math.hypot(frame.width, frame.height)) ** 2;
	return { x: frame.width / 2 + x * by, y: frame.height / 2 + y * by };
}

/**
 * The lens that makes these edges straightest.
 *
 * @param edges points along each edge in the picture, pixels; an edge of fewer than three tells
 * nothing
 * @returns null when no edge has three points
 */
export function lensOf(edges: readonly (readonly Point[])[], frame: PictureSize): Lens | null {
	const telling = edges.filter((edge) => edge.length > 2);
	if (telling.length === 0) return null;
	const crooked = (bend: number): number =>
		telling.reduce((sum, edge) => sum + crookedness(edge, { frame, bend }), 0);
	return { frame, bend: valleyOf(crooked, -MOST, MOST) };
}

/** Against the length of the edge, or a lens that only makes the picture smaller would win. */
function crookedness(edge: readonly Point[], lens: Lens): number {
	const points = edge.map((p) => straightened(lens, p));
	const { at } = lineThrough(points);
	return offLine(points) / points.reduce((sum, p) => sum + distance(p, at) ** 2, 0);
}

/** How far off a line the edges still are, pixels: the worst mark. */
export const crookedBy = (edges: readonly (readonly Point[])[], lens: Lens): number =>
	Math.max(0, ...edges.flatMap((edge) => offsFrom(edge, lens)).map(Math.abs));

/** The squares of all their distances from the lines, added up. */
export const crookedSquares = (edges: readonly (readonly Point[])[], lens: Lens): number =>
	edges.flatMap((edge) => offsFrom(edge, lens)).reduce((sum, off) => sum + off * off, 0);

function offsFrom(edge: readonly Point[], lens: Lens): number[] {
	const points = edge.map((p) => straightened(lens, p));
	const line = lineThrough(points);
	return points.map((p) => leftOfLine(line, p));
}

/**
 * The marks along the paper's edges, each with the edge it lies nearest to, and that edge's
 * corners: four lists of points for {@link lensOf}.
 */
export function edgesOfPaper(corners: readonly Point[], along: readonly Point[]): Point[][] {
	const edges = corners.map((p, i) => [p, around(corners, i + 1)]);
	for (const mark of along) {
		const off = corners.map((p, i) => fromEdge(mark, p, around(corners, i + 1)));
		nth(edges, off.indexOf(Math.min(...off))).push(mark);
	}
	return edges;
}

function fromEdge(p: Point, a: Point, b: Point): number {
	const edge = minus(b, a);
	const share = dot(minus(p, a), edge) / Math.max(dot(edge, edge), 1e-9);
	return distance(p, between(a, b, Math.min(1, Math.max(0, share))));
}
