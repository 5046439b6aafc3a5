import { around, nth } from '../../../measure';
import {
	between,
	cross,
	distance,
	dot,
	leftOf,
	minus,
	type Point,
	plus,
	times,
	unit,
} from '../../../geometry';
import { type FittedLine, lineThrough } from './fit';

/*
 * The sheet of paper in a photograph: the brightest large patch with four corners. What is found is
 * offered to a person, who sees it over the picture; nothing is taken unseen.
 */

/** A picture in shades of grey, row by row, 0 black to 255 white. */
export interface GreyPicture {
	readonly width: number;
	readonly height: number;
	readonly shades: Uint8Array | Uint8ClampedArray;
}

export interface FoundPaper {
	/** Top left, top right, bottom right, bottom left, pixels. */
	readonly corners: readonly [Point, Point, Point, Point];
	/** Along the edges, three on each. */
	readonly along: readonly Point[];
}

/** A paper smaller than this share of the picture is too small to square it up by. */
const LEAST_SHARE = 0.005;
/** And one that nearly fills it is more likely a wall. */
const MOST_SHARE = 0.9;
/** A patch fills its four corners at least so far; bent edges and a pencil lying on it included. */
const FILLED = 0.93;
/** How far to each side of an edge, of the shorter one, the true edge is looked for. */
const LOOK = 0.03;
/** Looks along an edge, corners left out. */
const LOOKS = 40;
const RIM = 0.06;
/** Pixels along the edge that are looked at together, against noise. */
const STRETCH = [-3, -2, -1, 0, 1, 2, 3];
/** Steps in shade across the edge that are no edge. */
const FAINT = 8;

/** @returns null when no patch looks like a sheet of paper */
export function findPaper(picture: GreyPicture): FoundPaper | null {
	const patch = brightPatch(picture, thresholdOf(picture.shades));
	const { width, height } = picture;
	const share = patch.length / (width * height);
	if (share < LEAST_SHARE || share > MOST_SHARE) return null;
	const corners = fourCorners(
		hullOf(patch.map((i) => ({ x: i % width, y: Math.floor(i / width) }))),
	);
	if (!corners || patch.length < FILLED * Math.abs(areaOf(corners))) return null;
	const rough = sharpened(picture, corners);
	const sharp = rough && sharpened(picture, rough.corners);
	if (!sharp) return null;
	const [a, b, c, d] = fromTopLeft(sharp.corners).map(inPicture);
	if (!a || !b || !c || !d) return null;
	return { corners: [a, b, c, d], along: sharp.edges.flatMap(thirds).map(inPicture) };
}

interface Sharpened {
	readonly corners: readonly Point[];
	readonly edges: readonly (readonly Point[])[];
}

/** The corners where the edges seen between them meet; null when an edge is hardly seen. */
function sharpened(picture: GreyPicture, corners: readonly Point[]): Sharpened | null {
	const edges = corners.map((a, i) => edgeMarks(picture, a, around(corners, i + 1)));
	if (edges.some((marks) => marks.length < LOOKS / 2)) return null;
	return { corners: corners.map((_, i) => meeting(around(edges, i - 1), nth(edges, i))), edges };
}

/** A pixel's middle lies half a pixel from its corner, where the picture is counted from. */
const inPicture = (p: Point): Point => ({ x: p.x + 0.5, y: p.y + 0.5 });

/**
 * The shade that best parts dark from bright (Otsu, "A threshold selection method from gray-level
 * histograms", IEEE Transactions on Systems, Man and Cybernetics 9 (1979) 62-66), found twice: the
 * paper is the brighter part of the brighter part.
 */
function thresholdOf(shades: GreyPicture['shades']): number {
	const counts = new Array<number>(256).fill(0);
	for (const shade of shades) counts[shade] = nth(counts, shade) + 1;
	const first = parting(counts, 0);
	const second = parting(counts, first);
	const bright = counts.slice(second).reduce((a, b) => a + b, 0);
	return bright >= LEAST_SHARE * shades.length && second - first > 20 ? second : first;
}

function parting(counts: readonly number[], from: number): number {
	const own = counts.map((n, i) => (i < from ? 0 : n));
	const all = own.reduce((a, b) => a + b, 0);
	const sum = own.reduce((total, n, i) => total + n * i, 0);
	let [best, most, below, light] = [from, -1, 0, 0];
	for (let i = from; i < 255; i++) {
		below += nth(own, i);
		light += nth(own, i) * i;
		if (below === 0 || below === all) continue;
		const gap = light / below - (sum - light) / (all - below);
		const spread = below * (all - below) * gap * gap;
		if (spread > most) [best, most] = [i + 1, spread];
	}
	return best;
}

/** Places of the largest connected patch at least so bright. */
function brightPatch({ width, height, shades }: GreyPicture, threshold: number): number[] {
	const seen = new Uint8Array(shades.length);
	const shadeOf = (i: number): number => shades[i] ?? 0;
	let largest: number[] = [];
	for (let start = 0; start < shades.length; start++) {
		if (seen[start] === 1 || shadeOf(start) < threshold) continue;
		const patch = [start];
		seen[start] = 1;
		for (let k = 0; k < patch.length; k++) {
			const i = nth(patch, k);
			const x = i % width;
			const near = [x > 0 ? i - 1 : -1, x < width - 1 ? i + 1 : -1, i - width, i + width];
			for (const j of near)
				if (j >= 0 && j < width * height && seen[j] === 0 && shadeOf(j) >= threshold) {
					seen[j] = 1;
					patch.push(j);
				}
		}
		if (patch.length > largest.length) largest = patch;
	}
	return largest;
}

/** Counter-clockwise with y up, by Andrew's monotone chain (1979). */
function hullOf(points: readonly Point[]): Point[] {
	const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
	const half = (list: readonly Point[]): Point[] => {
		const chain: Point[] = [];
		for (const p of list) {
			while (chain.length > 1) {
				const [a, b] = [around(chain, -2), around(chain, -1)];
				if (cross(minus(b, a), minus(p, b)) > 0) break;
				chain.pop();
			}
			chain.push(p);
		}
		return chain.slice(0, -1);
	};
	return [...half(sorted), ...half([...sorted].reverse())];
}

/**
 * The four points of a hull that enclose most: points are left out, the least loss first, then each
 * of the four is changed for the one that encloses most with the others.
 */
function fourCorners(hull: readonly Point[]): Point[] | null {
	const left = [...hull];
	while (left.length > 4) {
		const loss = left.map((p, i) =>
			cross(minus(p, around(left, i - 1)), minus(around(left, i + 1), p)),
		);
		left.splice(loss.indexOf(Math.min(...loss)), 1);
	}
	if (left.length < 4) return null;
	for (let moved = true; moved;) {
		moved = false;
		for (let i = 0; i < 4; i++) {
			const base = minus(around(left, i + 1), around(left, i - 1));
			const high = (p: Point): number => cross(minus(p, around(left, i - 1)), base);
			const best = hull.reduce((a, p) => (high(p) > high(a) ? p : a), nth(left, i));
			if (best !== left[i]) [left[i], moved] = [best, true];
		}
	}
	return left;
}

const areaOf = (corners: readonly Point[]): number =>
	corners.reduce((sum, p, i) => sum + cross(p, around(corners, i + 1)), 0) / 2;

/** Where the shade changes most, at many places along an edge. */
function edgeMarks(picture: GreyPicture, a: Point, b: Point): Point[] {
	const long = distance(a, b);
	const way = unit(minus(b, a));
	const reach = Math.max(3, LOOK * long);
	return Array.from({ length: LOOKS }, (_, i) => RIM + ((1 - 2 * RIM) * i) / (LOOKS - 1)).flatMap(
		(share) => {
			const at = between(a, b, share);
			const off = steepest(picture, at, way, reach);
			return off === null ? [] : [plus(at, times(leftOf(way), off))];
		},
	);
}

/**
 * How far to the left of a place on an edge the shade falls or rises most steeply, each step the
 * mean of a short stretch along the edge; between pixels by a parabola.
 */
function steepest(picture: GreyPicture, at: Point, way: Point, reach: number): number | null {
	const count = 2 * Math.ceil(reach) + 1;
	const step = (2 * reach) / (count - 1);
	const shades = Array.from({ length: count }, (_, k) =>
		shadeAlong(picture, plus(at, times(leftOf(way), k * step - reach)), way),
	);
	const slopes = shades.map((_, k) =>
		k === 0 || k === count - 1 ? 0 : Math.abs(nth(shades, k + 1) - nth(shades, k - 1)),
	);
	const most = Math.max(...slopes);
	if (!(most >= FAINT)) return null;
	const k = slopes.indexOf(most);
	const [before, after] = [slopes[k - 1] ?? 0, slopes[k + 1] ?? 0];
	const bow = before - 2 * most + after;
	return (k + (bow === 0 ? 0 : (before - after) / (2 * bow))) * step - reach;
}

function shadeAlong(picture: GreyPicture, at: Point, way: Point): number {
	const shades = STRETCH.map((by) => shadeAt(picture, plus(at, times(way, by))));
	return shades.reduce((a, b) => a + b, 0) / shades.length;
}

/** Between pixels in proportion; a pixel's shade stands at its middle. */
function shadeAt({ width, height, shades }: GreyPicture, { x, y }: Point): number {
	const [u, v] = [
		Math.min(width - 1.001, Math.max(0, x)),
		Math.min(height - 1.001, Math.max(0, y)),
	];
	const [i, j] = [Math.floor(u), Math.floor(v)];
	const [s, t] = [u - i, v - j];
	const shade = (dx: number, dy: number): number => shades[(j + dy) * width + i + dx] ?? 0;
	const top = shade(0, 0) * (1 - s) + shade(1, 0) * s;
	const bottom = shade(0, 1) * (1 - s) + shade(1, 1) * s;
	return top * (1 - t) + bottom * t;
}

/** A corner by the ends of its two edges nearest to it: a bent edge is nearly straight so far. */
function meeting(before: readonly Point[], after: readonly Point[]): Point {
	const part = (list: readonly Point[]): number => Math.max(3, Math.ceil(list.length * 0.3));
	const a = withoutStrays(before.slice(-part(before)));
	const b = withoutStrays(after.slice(0, part(after)));
	const turn = cross(a.along, b.along);
	return plus(a.at, times(a.along, cross(minus(b.at, a.at), b.along) / turn));
}

/** The line through the marks, those left out that lie farthest off a first one. */
function withoutStrays(marks: readonly Point[]): FittedLine {
	const first = lineThrough(marks);
	const off = (p: Point): number => Math.abs(cross(first.along, minus(p, first.at)));
	const near = [...marks].sort((a, b) => off(a) - off(b)).slice(0, Math.ceil(marks.length * 0.75));
	return lineThrough(near.length > 1 ? near : marks);
}

/** A quarter, a half and three quarters of the way: each the middle one of five by its offset. */
function thirds(marks: readonly Point[]): Point[] {
	const line = lineThrough(marks);
	const off = (p: Point): number => cross(line.along, minus(p, line.at));
	return [0.25, 0.5, 0.75].map((share) => {
		const middle = Math.round(share * (marks.length - 1));
		const five = marks.slice(Math.max(0, middle - 2), middle + 3);
		return nth(
			[...five].sort((a, b) => off(a) - off(b)),
			Math.floor(five.length / 2),
		);
	});
}

/** Clockwise as seen (y down), from the corner nearest to the top left of all. */
function fromTopLeft(corners: readonly Point[]): readonly Point[] {
	const middle = times(corners.reduce(plus), 1 / corners.length);
	const way = { x: -Math.SQRT1_2, y: -Math.SQRT1_2 };
	const first = corners.map((p) => dot(unit(minus(p, middle)), way));
	const at = first.indexOf(Math.max(...first));
	return corners.map((_, i) => around(corners, at + i));
}
