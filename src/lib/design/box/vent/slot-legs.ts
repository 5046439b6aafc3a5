import { lastOf } from '../../../measure';
import { type Line, type Point, cornerAt, dot, minus } from '../../../geometry';
import type { SlotVent } from '../../../job';
import { convex, crossed, quadWithin, reachSides, sideLine, type SlotPlane } from '../solid';

/*
 * The way of a slot along its middle: one leg beside each wall it follows, from the outer face of
 * the front on, turn by turn. Its length is that of these straight lines, corner to corner.
 */

export interface SlotSize {
	readonly gap: number;
	/** Thickness of the slot boards. */
	readonly board: number;
	/** Thickness the slot passes through at the front. */
	readonly stack: number;
}

/** How often a slot of each kind turns; each time it follows one more wall. */
const TURNS: Readonly<Record<SlotVent['bend'], number>> = { straight: 0, L: 1, U: 2 };

export const turnsOf = ({ bend }: Pick<SlotVent, 'bend'>): number => TURNS[bend];

/** The walls a slot that turns so often runs along, by their keys. */
export const sidesAlong = ({ keys, front }: SlotPlane, turns: number): string[] =>
	Array.from({ length: turns + 1 }, (_, k) => keys[(front + 1 + k) % keys.length] ?? '');

/** A line beside the wall of leg `k`, so far off it; the front is the wall before leg 0. */
export const besideWall = (plane: SlotPlane, k: number, by: number): Line =>
	sideLine(plane.corners, plane.front + 1 + k, by);

/** One straight piece of the middle line. */
export interface Leg {
	readonly line: Line;
	/** Where it starts: the inside of the front, or the turn before it. */
	readonly from: Point;
	/** Length of the slot up to there. */
	readonly behind: number;
	/** The side of the plane it runs along. */
	readonly side: number;
}

/** The legs of a slot that turns so often, each as if it went on for ever. */
export function legsOf(plane: SlotPlane, { gap, stack }: SlotSize, turns: number): Leg[] {
	const first = besideWall(plane, 0, gap / 2);
	const start = crossed(first, besideWall(plane, -1, 0));
	const legs: Leg[] = [
		{ line: first, from: start, behind: inFront(plane, stack), side: plane.front + 1 },
	];
	for (let k = 1; k <= turns; k++) {
		const before = lastOf(legs);
		const line = besideWall(plane, k, gap / 2);
		const from = crossed(before.line, line);
		const behind = before.behind + Math.hypot(from.x - before.from.x, from.y - before.from.y);
		legs.push({ line, from, behind, side: plane.front + 1 + k });
	}
	return legs;
}

/** Length along the middle of the slot that lies in the front. */
function inFront(plane: SlotPlane, stack: number): number {
	const h = besideWall(plane, 0, 0).heading;
	const f = besideWall(plane, -1, 0).heading;
	return stack / Math.abs(h.x * f.y - h.y * f.x);
}

/** Free way along the last leg from where it starts, in the lane the slot takes. */
export function freeAlong(plane: SlotPlane, { line, from }: Leg, gap: number): number {
	// A hair less than the slot, so that the walls it runs along do not count as being in its way.
	return reachSides(plane.corners, from, line.heading, (gap / 2) * 0.98);
}

/** The same of the board of the leg, in the lane it takes itself. */
function boardReach(plane: SlotPlane, { line, from }: Leg, { gap, board }: SlotSize): number {
	const off = (gap + board) / 2;
	const start = { x: from.x - line.heading.y * off, y: from.y + line.heading.x * off };
	return reachSides(plane.corners, start, line.heading, (board / 2) * 0.98);
}

/**
 * Is there room for all legs but the last, with their boards? A step may stand in the way of one
 * that lies between two walls.
 */
export function roomBetween(plane: SlotPlane, size: SlotSize, turns: number): boolean {
	const deep = size.gap + size.board;
	return Array.from({ length: turns }, (_, k) => k).every((k) => {
		const face = (by: number): [Point, Point] => [
			crossed(besideWall(plane, k, by), besideWall(plane, k - 1, k === 0 ? 0 : by)),
			crossed(besideWall(plane, k, by), besideWall(plane, k + 1, by)),
		];
		return quadWithin({ outside: face(0), inside: face(deep) }, plane.corners);
	});
}

/**
 * Longest slot along its middle that leaves one slot height free at its inner mouth and keeps to
 * the walls it runs along.
 */
export function longestSlot(plane: SlotPlane, size: SlotSize, turns: number): number {
	const last = lastOf(legsOf(plane, size, turns));
	const free = Math.min(freeAlong(plane, last, size.gap) - size.gap, boardReach(plane, last, size));
	return Math.min(last.behind + free, wallEnd(plane, size, turns));
}

/**
 * Length of a slot along its middle up to where its wall falls away from it, as the face of a step
 * does at its edge: beyond there it has no wall on that side. Infinity for a wall that ends in a
 * corner of the air.
 */
export function wallEnd(plane: SlotPlane, size: SlotSize, turns: number): number {
	const { line, from, behind, side } = lastOf(legsOf(plane, size, turns));
	const k = (side + 1) % plane.corners.length;
	if (convex(plane.corners, k)) return Infinity;
	return behind + dot(line.heading, minus(cornerAt(plane.corners, k), from));
}

/**
 * Shortest slot that turns so often. Straight: through the front, and a slot board no shorter than
 * it is thick; turned: past its last corner by as much as its boards take, which is more where it
 * turns sharply.
 */
export function shortestSlot(plane: SlotPlane, size: SlotSize, turns: number): number {
	const { gap, board } = size;
	const last = lastOf(legsOf(plane, size, turns));
	if (turns === 0) return last.behind + board;
	const before = besideWall(plane, turns - 1, gap + board);
	const foot = [gap, gap + board].map((by) => {
		const corner = crossed(besideWall(plane, turns, by), before);
		return dot(last.line.heading, minus(corner, last.from));
	});
	return last.behind + Math.max(gap / 2 + board, ...foot) + board;
}

/** A slot as it was asked, and where it runs. */
export interface SlotWay {
	readonly vent: Pick<SlotVent, 'bend'>;
	readonly plane: SlotPlane;
	readonly size: SlotSize;
}

/** How often a slot of this length turns: one that would end in a turn is built without it. */
export function turnsAt({ vent, plane, size }: SlotWay, length: number): number {
	for (let turns = turnsOf(vent); turns > 0; turns--) {
		const shortest = shortestSlot(plane, size, turns);
		if (length >= shortest && longestSlot(plane, size, turns) >= shortest) return turns;
	}
	return 0;
}

/**
 * How long the boards before the last one of a slot that turns so often come out, the shorter of
 * both faces; of one between two others, what they leave free. Less than nothing where the chamber
 * has no room for it.
 */
export function boardsBetween(plane: SlotPlane, size: SlotSize, turns: number): number[] {
	return Array.from({ length: turns }, (_, k) => {
		const [slot, room] = [size.gap, size.gap + size.board];
		const start = k === 0 ? besideWall(plane, -1, 0) : besideWall(plane, k - 1, room);
		const end = besideWall(plane, k + 1, k === 0 ? slot : room);
		const long = (by: number): number => {
			const face = besideWall(plane, k, by);
			return dot(face.heading, minus(crossed(face, end), crossed(face, start)));
		};
		return Math.min(long(slot), long(room));
	});
}
