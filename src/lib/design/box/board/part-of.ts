import { lastOf, nth, ticks, TICKS_PER_MM, type Length, snap } from '../../../measure';
import {
	area,
	bounds,
	perimeter,
	rectangle,
	without,
	type Corner,
	type Outline,
	type Point,
} from '../../../geometry';
import type { Bevel, FaceSize, Part } from '../../part';
import { workOf } from './face-work';
import { type Board, type Hole, isDrilled } from './board';
import { shiftOf } from './shift';
import { bodyVolume, flat, planeArea, volumeOf } from '../solid';

/**
 * A length of this many ticks or a hair more is the length itself: rounding noise must not cost a
 * tick.
 */
const HAIR = 1e-3;
/** Bevels under this many degrees are square to any saw. */
const SQUARE = 0.02;

/** Where a point of the board's frame lies on the part: `length` runs along the grain. */
export interface PartRect {
	readonly turned: boolean;
	readonly low: Point;
	readonly length: Length;
	readonly width: Length;
}

/**
 * Smallest rectangle, on the grid outward, that holds both faces; this is what is cut from the
 * sheet.
 */
export function partRectOf(board: Board): PartRect {
	const points = [...board.solid.outside, ...board.solid.inside].map((p) => flat(p, board.frame));
	const low = {
		x: down(Math.min(...points.map((p) => p.x))),
		y: down(Math.min(...points.map((p) => p.y))),
	};
	const u = ticks(up(Math.max(...points.map((p) => p.x))) - low.x);
	const v = ticks(up(Math.max(...points.map((p) => p.y))) - low.y);
	const turned = board.grain === 'across';
	return { turned, low, length: turned ? v : u, width: turned ? u : v };
}

const down = (x: number): number => Math.floor(x + HAIR) + 0;
const up = (x: number): number => Math.ceil(x - HAIR) + 0;

/**
 * A point of the board's frame on the part, corner at 0, 0. Turned a quarter when the grain runs up
 * the board.
 */
function onPart(p: Point, rect: PartRect): Point {
	const x = p.x - rect.low.x;
	const y = p.y - rect.low.y;
	return rect.turned ? { x: y, y: rect.width - x } : { x, y };
}

export interface PartMark {
	readonly id: string;
	readonly label: string;
	readonly owner: string;
	readonly count: number;
}

export function partOf(board: Board, mark: PartMark, show: boolean): Part {
	const rect = partRectOf(board);
	const { outline, holes } = shapeOf(board, rect);
	const bevels = bevelsOf(board, rect);
	const faceWork = workOf(board, (o) => holeOn(o, rect));
	return {
		...mark,
		name: board.name,
		material: board.material.id,
		thickness: board.material.measured,
		length: rect.length,
		width: rect.width,
		...(bevels.length > 0 ? facesOf(board, rect) : {}),
		...(outline ? { outline } : {}),
		holes,
		...(faceWork.length > 0 ? { faceWork } : {}),
		grain: board.grain === 'any' || !board.material.grain ? 'any' : 'length',
		bevels,
		face: 'outside',
		show,
		routed: routedOf(board),
		mass: massOf(board),
		notes: board.notes,
	};
}

/** The shorter face in each direction, and both where they lie one beside the other. */
function facesOf(board: Board, rect: PartRect): Pick<Part, 'short' | 'shift'> {
	const [outside, inside] = facesOn(board, rect);
	const spread = (face: readonly Point[], axis: 'x' | 'y'): number =>
		Math.max(...face.map((p) => p[axis])) - Math.min(...face.map((p) => p[axis]));
	const least = (axis: 'x' | 'y'): Length =>
		snap(Math.min(spread(outside, axis), spread(inside, axis)));
	const short = { length: least('x'), width: least('y') };
	const shift = shiftOf(outside, inside);
	if (!shift) return { short };
	const size = ({ x, y }: { x: Length; y: Length }): FaceSize => ({ length: x, width: y });
	return {
		short,
		shift: {
			outside: size(shift.outside),
			inside: size(shift.inside),
			offset: size(shift.offset),
		},
	};
}

/** Outside and inside of a board on its part. */
function facesOn(board: Board, rect: PartRect): [outside: Point[], inside: Point[]] {
	const face = (points: Board['solid']['outside']): Point[] =>
		points.map((p) => onPart(flat(p, board.frame), rect));
	return [face(board.solid.outside), face(board.solid.inside)];
}

/**
 * What is cut: its outline, null for a rectangle, and its holes. Slots open at an edge are part of
 * the outline, and so is a window that one of them runs into.
 */
function shapeOf(
	board: Board,
	rect: PartRect,
): { readonly outline: Outline | null; readonly holes: Outline[] } {
	const outline = outlineOf(board, rect);
	const through = board.holes.filter((h) => h.recess === null);
	const holes = through.map((h) => holeOn(h.outline, rect));
	if (!through.some((h) => h.halving)) return { outline, holes };
	const whole = outline ?? rectangle(0, 0, rect.length, rect.width);
	const left = without([whole], holes).sort((a, b) => area(b.outline) - area(a.outline));
	const { outline: cut, holes: kept } = nth(left, 0);
	return { outline: cut, holes: [...kept] };
}

/**
 * The outline to cut, or null for a rectangle. Of a board with bevels all round: both faces
 * together.
 */
function outlineOf(board: Board, rect: PartRect): Outline | null {
	const [outside, inside] = facesOn(board, rect);
	const same = outside.every(
		(p, i) => Math.hypot(p.x - nth(inside, i).x, p.y - nth(inside, i).y) < 0.5,
	);
	const shape = same ? outside : hull([...outside, ...inside]);
	const onGrid = shape.map((p) => ({
		x: Math.min(rect.length, Math.max(0, Math.round(p.x))),
		y: Math.min(rect.width, Math.max(0, Math.round(p.y))),
	}));
	return isRectangle(onGrid, rect) ? null : onGrid;
}

function isRectangle(outline: readonly Point[], rect: PartRect): boolean {
	return Math.abs(planeArea(outline) - rect.length * rect.width) < 2 * (rect.length + rect.width);
}

/** Convex hull, counter-clockwise: the monotone chain. */
export function hull(points: readonly Point[]): Point[] {
	const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
	const half = (run: readonly Point[]): Point[] => {
		const chain: Point[] = [];
		for (const p of run) {
			while (chain.length > 1 && turnOf(nth(chain, chain.length - 2), lastOf(chain), p) <= 0.5)
				chain.pop();
			chain.push(p);
		}
		chain.pop();
		return chain;
	};
	return [...half(sorted), ...half([...sorted].reverse())];
}

/** How far `c` lies to the left of the line a-b, ticks. */
function turnOf(a: Point, b: Point, c: Point): number {
	const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
	return ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / long;
}

function holeOn(outline: Outline, rect: PartRect): Outline {
	return outline.map((c): Corner => {
		const p = onPart(c, rect);
		return { x: Math.round(p.x), y: Math.round(p.y), ...(c.bulge ? { bulge: c.bulge } : {}) };
	});
}

function bevelsOf(board: Board, rect: PartRect): Bevel[] {
	const n = board.solid.outside.length;
	return board.edges.flatMap((edge, k) => {
		if (edge.tilt < SQUARE) return [];
		const a = onPart(flat(nth(board.solid.outside, k), board.frame), rect);
		const b = onPart(flat(nth(board.solid.outside, (k + 1) % n), board.frame), rect);
		const { side, mitre } = sideOf(a, b);
		const turn = mitre < SQUARE ? {} : { mitre };
		return [{ edge: edge.letter, side, tilt: edge.tilt, long: edge.long, ...turn }];
	});
}

/**
 * Which side of the rectangle an edge run counter-clockwise lies on, and its turn from that side,
 * degrees.
 */
export function sideOf(a: Point, b: Point): { side: Bevel['side']; mitre: number } {
	const dx = b.x - a.x;
	const dy = b.y - a.y;
	const level = Math.abs(dx) >= Math.abs(dy);
	const mitre =
		(Math.atan2(level ? Math.abs(dy) : Math.abs(dx), level ? Math.abs(dx) : Math.abs(dy)) * 180) /
		Math.PI;
	if (level) return { side: dx > 0 ? 'bottom' : 'top', mitre };
	return { side: dy > 0 ? 'right' : 'left', mitre };
}

/** Edge cut with a router or a jigsaw: holes and recesses all round, rabbets once along; drilled
 * holes are none of it. */
function routedOf(board: Board): Length {
	const cut = board.holes.filter((h) => !isDrilled(h));
	const holes = cut.reduce((sum, h) => sum + cutLength(h), 0);
	const rabbets = board.cuts.reduce((sum, cut) => {
		const points = [...cut.inside, ...cut.outside].map((p) => roundPoint(flat(p, board.frame)));
		const b = bounds(points);
		return sum + Math.max(b.length, b.width);
	}, 0);
	return snap(holes + rabbets);
}

/** All round a hole; of a slot only where it is cut into wood. */
function cutLength({ outline, halving }: Hole): number {
	const open = halving ? halving.wide * (halving.through ? 2 : 1) : 0;
	return perimeter(outline) - open;
}

const roundPoint = (p: Point): Point => ({ x: Math.round(p.x), y: Math.round(p.y) });

/** Wood in a board, cubic ticks: its body less its rabbets, holes and recesses. */
export function woodOf(board: Board): number {
	const t = board.material.measured;
	const cuts = board.cuts.reduce((sum, c) => sum + Math.abs(bodyVolume(c)), 0);
	const holes = board.holes.reduce(
		(sum, h) => sum + Math.abs(area(h.outline)) * (h.recess ?? t),
		0,
	);
	return volumeOf(board.solid, board.frame, t) - cuts - holes;
}

/** kg of one board: its wood at the density of its material. */
export function massOf(board: Board): number {
	return kg(woodOf(board), board.material.density);
}

/** kg of so many cubic ticks at so many kg/m3. */
export function kg(cubicTicks: number, density: number): number {
	return (cubicTicks / (TICKS_PER_MM * 1000) ** 3) * density;
}
