import { add3, type BoxBoard, pointOnBoard, type Point3, scale3, sub3 } from '../../../design';
import { liesIn, type Outline, type Point, whereIs, without } from '../../../geometry';
import { nth, around } from '../../../measure';
import {
	type Body,
	chorded,
	sharpCorners,
	type Facet,
	facet,
	inMm,
	lineOutside,
	type Raise,
	ringInside,
	turnedOver,
	walls,
} from './body';

/** A hole right through a board, from its depth under the outside face to that of its other end. */
interface Through {
	readonly outline: Outline;
	readonly high: number;
	readonly low: number;
}

/** A seat cut in a face: the outline, the face it is cut from and its depth. */
interface Seat {
	readonly outline: Outline;
	readonly inside: boolean;
	readonly depth: number;
}

/**
 * A board of a box as a body, its bevels, holes and seats cut. Rabbets are drawn as lines: what is
 * cut away there is filled by the neighbour, and shows only when the boards are drawn apart.
 */
export function boardBody(b: BoxBoard, away: Point3, covered: boolean): Body {
	const holes = holesOf(b);
	const tone = covered ? 'cloth' : 'face';
	const pieces = [
		...faceOf(b, holes, 'outside', tone),
		...faceOf(b, holes, 'inside', 'face'),
		...sides(b, holes),
		...bores(b, holes),
		...floors(b, holes),
	];
	return {
		key: b.key,
		mark: b.label,
		name: b.name,
		facets: pieces,
		lines: [...edgeLines(b), ...holeLines(b, holes), ...rabbetLines(b)],
		away: inMm(away),
	};
}

interface Holes {
	readonly through: readonly Through[];
	readonly seats: readonly Seat[];
}

function holesOf(b: BoxBoard): Holes {
	const seats = b.holes.flatMap((h): Seat[] =>
		h.recess === null
			? []
			: [{ outline: chorded(h.outline), inside: h.face === 'inside', depth: h.recess }],
	);
	const deep = (outline: Outline, inside: boolean): number =>
		Math.max(
			0,
			...seats.filter((s) => s.inside === inside && liesIn(outline, s.outline)).map((s) => s.depth),
		);
	const through = b.holes
		.filter((h) => h.recess === null)
		.map((h) => {
			const outline = chorded(h.outline);
			return { outline, high: -deep(outline, false), low: -b.thickness + deep(outline, true) };
		});
	return { through, seats };
}

/** Places in the drawing of the board's outside, so many ticks over it. */
const planeOf =
	(b: BoxBoard): Raise =>
	(p, height) =>
		inMm(add3(pointOnBoard(b, p), scale3(b.frame.n, height)));

/** A face, without what is cut from it. */
function faceOf(
	b: BoxBoard,
	holes: Holes,
	side: 'outside' | 'inside',
	tone: 'face' | 'cloth',
): Facet[] {
	const inside = side === 'inside';
	const cut = [
		...holes.through.map((h) => h.outline),
		...holes.seats.filter((s) => s.inside === inside).map((s) => s.outline),
	];
	const plane = planeOf(b);
	const height = inside ? -b.thickness : 0;
	return without([b[side]], cut, COARSE).map((r) => {
		const seen = facet(r.outline, r.holes, (p) => plane(p, height), tone);
		return inside ? turnedOver(seen) : seen;
	});
}

/** As coarse as the chords of the view: there are no arcs left. */
const COARSE = 400;

/** The edges of a board, parted where a slot runs out through them. */
function sides(b: BoxBoard, holes: Holes): Facet[] {
	const cut = holes.through.map((h) => h.outline);
	return b.outside.flatMap((from, k) => {
		const to = around(b.outside, k + 1);
		const [low, lowTo] = [nth(b.solid.inside, k), around(b.solid.inside, k + 1)];
		const [high, highTo] = [nth(b.solid.outside, k), around(b.solid.outside, k + 1)];
		return lineOutside([from, to], cut).map((line): Facet => {
			const [s, t] = along(from, to, line);
			const ring = [
				mix(low, lowTo, s),
				mix(low, lowTo, t),
				mix(high, highTo, t),
				mix(high, highTo, s),
			];
			return { ring: ring.map(inMm), holes: [], tone: 'edge' };
		});
	});
}

/** How far along an edge a stretch of it begins and ends, 0 to 1. */
function along(from: Point, to: Point, line: readonly Point[]): [number, number] {
	const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
	const at = (p: Point): number => Math.hypot(p.x - from.x, p.y - from.y) / length;
	const ends = [at(nth(line, 0)), at(nth(line, line.length - 1))];
	return [Math.min(...ends), Math.max(...ends)];
}

const mix = (a: Point3, b: Point3, t: number): Point3 => add3(a, scale3(sub3(b, a), t));

/** The walls of holes and seats. */
function bores(b: BoxBoard, holes: Holes): Facet[] {
	const plane = planeOf(b);
	const wall = (outline: Outline, low: number, high: number): Facet[] =>
		ringInside(outline, [b.outside])
			.map((line) => leaving(line, outline))
			.flatMap((line) => walls(line, plane, low, high, 'edge'));
	return [
		...holes.through.flatMap((h) => wall(h.outline, h.low, h.high)),
		...holes.seats.flatMap((s) =>
			s.inside
				? wall(s.outline, -b.thickness, s.depth - b.thickness)
				: wall(s.outline, -s.depth, 0),
		),
	];
}

/** A stretch of a hole's rim, run along so that the hole lies to its right. */
function leaving(line: readonly Point[], hole: Outline): readonly Point[] {
	const [a, b] = [nth(line, 0), nth(line, 1)];
	const beside = 4 / (Math.hypot(b.x - a.x, b.y - a.y) || 1);
	const left = {
		x: (a.x + b.x) / 2 - (b.y - a.y) * beside,
		y: (a.y + b.y) / 2 + (b.x - a.x) * beside,
	};
	return whereIs(left, hole) === 'inside' ? [...line].reverse() : line;
}

/** The floors of the seats, with the holes through them. */
function floors(b: BoxBoard, holes: Holes): Facet[] {
	const plane = planeOf(b);
	const through = holes.through.map((h) => h.outline);
	return holes.seats.flatMap((s) => {
		const height = s.inside ? s.depth - b.thickness : -s.depth;
		return without([s.outline], through, COARSE).map((r) => {
			const seen = facet(r.outline, r.holes, (p) => plane(p, height), 'edge');
			return s.inside ? turnedOver(seen) : seen;
		});
	});
}

function edgeLines(b: BoxBoard): Point3[][] {
	const { outside, inside } = b.solid;
	const ring = (points: readonly Point3[]): Point3[] => closed3(points).map(inMm);
	return [ring(outside), ring(inside), ...outside.map((p, k) => [p, nth(inside, k)].map(inMm))];
}

const closed3 = (points: readonly Point3[]): Point3[] => [...points, ...points.slice(0, 1)];

function holeLines(b: BoxBoard, holes: Holes): Point3[][] {
	const plane = planeOf(b);
	const round = (outline: Outline, heights: readonly number[]): Point3[][] =>
		ringInside(outline, [b.outside]).flatMap((line) => [
			...heights.map((h) => line.map((p) => plane(p, h))),
			...sharpCorners(outline).map((p) => heights.map((h) => plane(p, h))),
		]);
	return [
		...holes.through.flatMap((h) => round(h.outline, [h.low, h.high])),
		...holes.seats.flatMap((s) =>
			round(s.outline, s.inside ? [-b.thickness, s.depth - b.thickness] : [-s.depth, 0]),
		),
	];
}

function rabbetLines(b: BoxBoard): Point3[][] {
	return b.rabbets.flatMap((r) => [r.outside, r.inside].map((ring) => closed3(ring).map(inMm)));
}
