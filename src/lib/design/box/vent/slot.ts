import { type Line, type Point, cornerAt, dot, minus } from '../../../geometry';
import {
	reachSides,
	convex,
	crossed,
	sideLine,
	type Quad,
	type SlotPlane,
	planeArea,
} from '../solid';

/** What a slot of one length is made of, in its plane. */
export interface SlotBody {
	/** Slot boards in section; `outside` is the face towards the slot. */
	readonly quads: readonly Quad[];
	/** Air of the vent inside the box. */
	readonly air: readonly Point[];
	/** Air and boards together: the outline of a cheek board. */
	readonly cheek: readonly Point[];
	/** Free distance from the inner mouth to what faces it. */
	readonly clear: number;
	readonly bent: boolean;
}

export interface SlotSize {
	readonly gap: number;
	/** Thickness of the slot boards. */
	readonly board: number;
	/** Thickness the slot passes through at the front. */
	readonly stack: number;
}

interface Lines {
	readonly along: (by: number) => Line;
	readonly back: (by: number) => Line;
	readonly front: Line;
}

function linesOf(plane: SlotPlane): Lines {
	return {
		along: (by) => sideLine(plane.corners, plane.front + 1, by),
		back: (by) => sideLine(plane.corners, plane.front + 2, by),
		front: sideLine(plane.corners, plane.front),
	};
}

/** Length along the middle of the slot that lies in the front. */
function inFront(lines: Lines, stack: number): number {
	const h = lines.along(0).heading;
	const f = lines.front.heading;
	return stack / Math.abs(h.x * f.y - h.y * f.x);
}

/**
 * Longest slot along its middle that leaves one slot height free at its inner mouth and keeps to
 * the walls it runs along.
 */
export function longestSlot(plane: SlotPlane, size: SlotSize, bent: boolean): number {
	const { line, from, behind } = lastLeg(plane, size, bent);
	// A hair less than the slot, so that the walls it runs along do not count as being in its way.
	const lane = (size.gap / 2) * 0.98;
	const free = behind + reachSides(plane.corners, from, line.heading, lane) - size.gap;
	return Math.min(free, wallEnd(plane, size, bent));
}

/**
 * Length of a slot along its middle up to where its wall falls away from it, as the face of a step
 * does at its edge: beyond there it has no wall on that side. Infinity for a wall that ends in a
 * corner of the air.
 */
export function wallEnd(plane: SlotPlane, size: SlotSize, bent: boolean): number {
	const { line, from, behind, side } = lastLeg(plane, size, bent);
	const k = (side + 1) % plane.corners.length;
	if (convex(plane.corners, k)) return Infinity;
	return behind + dot(line.heading, minus(cornerAt(plane.corners, k), from));
}

/**
 * The side the inner end of a slot runs along, its middle line from the front or the elbow, and the
 * length behind that.
 */
function lastLeg(
	plane: SlotPlane,
	{ gap, stack }: SlotSize,
	bent: boolean,
): { line: Line; from: Point; behind: number; side: number } {
	const lines = linesOf(plane);
	const outer = inFront(lines, stack);
	const middle = lines.along(gap / 2);
	const start = crossed(middle, lines.front);
	const side = plane.front + (bent ? 2 : 1);
	if (!bent) return { line: middle, from: start, behind: outer, side };
	const up = lines.back(gap / 2);
	const turn = crossed(middle, up);
	const leg = Math.hypot(turn.x - start.x, turn.y - start.y);
	return { line: up, from: turn, behind: outer + leg, side };
}

/** Shortest slot: through the front, and a slot board no shorter than it is thick. */
export function shortestSlot(plane: SlotPlane, size: SlotSize): number {
	return inFront(linesOf(plane), size.stack) + size.board;
}

/** Shortest L: past the corner by as much as its boards take. */
export function shortestBend(plane: SlotPlane, size: SlotSize): number {
	const lines = linesOf(plane);
	const middle = lines.along(size.gap / 2);
	const start = crossed(middle, lines.front);
	const turn = crossed(middle, lines.back(size.gap / 2));
	return (
		inFront(lines, size.stack) +
		Math.hypot(turn.x - start.x, turn.y - start.y) +
		size.gap / 2 +
		2 * size.board
	);
}

/** The slot at a length measured along its middle, the thickness of the front included. */
export function slotBody(
	plane: SlotPlane,
	size: SlotSize,
	length: number,
	bent: boolean,
): SlotBody {
	const lines = linesOf(plane);
	return bent ? bentBody(plane, lines, size, length) : straightBody(plane, lines, size, length);
}

function straightBody(
	plane: SlotPlane,
	lines: Lines,
	{ gap, board, stack }: SlotSize,
	length: number,
): SlotBody {
	const inside = length - inFront(lines, stack);
	const middle = lines.along(gap / 2);
	const start = crossed(middle, lines.front);
	const end = squareTo(middle, ahead(start, middle, inside));
	const corner = crossed(lines.along(0), lines.front);
	const near = crossed(lines.along(gap), lines.front);
	const far = crossed(lines.along(gap + board), lines.front);
	const mouth = [0, gap, gap + board].map((by) => crossed(lines.along(by), end)) as [
		Point,
		Point,
		Point,
	];
	return {
		quads: [{ outside: [near, mouth[1]], inside: [far, mouth[2]] }],
		air: [corner, mouth[0], mouth[1], near],
		cheek: [corner, mouth[0], mouth[2], far],
		clear: reachSides(plane.corners, start, middle.heading, (gap / 2) * 0.98) - inside,
		bent: false,
	};
}

/**
 * The first board runs under the second, up to the slot side of it; the second stands on the first.
 */
function bentBody(
	plane: SlotPlane,
	lines: Lines,
	{ gap, board, stack }: SlotSize,
	length: number,
): SlotBody {
	const middle = lines.along(gap / 2);
	const start = crossed(middle, lines.front);
	const up = lines.back(gap / 2);
	const turn = crossed(middle, up);
	const leg = inFront(lines, stack) + Math.hypot(turn.x - start.x, turn.y - start.y);
	const end = squareTo(up, ahead(turn, up, length - leg));
	const corner = crossed(lines.along(0), lines.front);
	const near = crossed(lines.along(gap), lines.front);
	const far = crossed(lines.along(gap + board), lines.front);
	const elbow = crossed(lines.along(0), lines.back(0));
	const inner = crossed(lines.along(gap), lines.back(gap));
	const foot = [gap, gap + board].map((by) =>
		crossed(lines.back(by), lines.along(gap + board)),
	) as [Point, Point];
	const mouth = [0, gap, gap + board].map((by) => crossed(lines.back(by), end)) as [
		Point,
		Point,
		Point,
	];
	return {
		quads: [
			{ outside: [near, inner], inside: [far, foot[0]] },
			{ outside: [foot[0], mouth[1]], inside: [foot[1], mouth[2]] },
		],
		air: [corner, elbow, mouth[0], mouth[1], inner, near],
		cheek: [corner, elbow, mouth[0], mouth[2], foot[1], far],
		clear: reachSides(plane.corners, turn, up.heading, (gap / 2) * 0.98) - (length - leg),
		bent: true,
	};
}

const ahead = (p: Point, line: Line, by: number): Point => ({
	x: p.x + line.heading.x * by,
	y: p.y + line.heading.y * by,
});

function squareTo(line: Line, p: Point): Line {
	return { at: p, heading: { x: -line.heading.y, y: line.heading.x } };
}

/** Section areas of a slot: its air, and its boards. */
export function slotAreas(body: SlotBody): { air: number; boards: number } {
	const boards = body.quads.reduce((sum, q) => sum + quadArea(q), 0);
	return { air: Math.abs(planeArea(body.air)), boards };
}

function quadArea(q: Quad): number {
	return Math.abs(planeArea([q.outside[0], q.outside[1], q.inside[1], q.inside[0]]));
}
