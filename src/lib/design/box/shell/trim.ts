import { mm, nth } from '../../../measure';
import type { SlotVent } from '../../../job';
import type { Outline, Point } from '../../../geometry';
import { boardOf, type Board, type Hole } from '../board';
import {
	crossed,
	sideLine,
	type SlotPlane,
	flat,
	add3,
	dot3,
	scale3,
	sub3,
	unit3,
	type Point3,
} from '../solid';
import type { SweptSection } from './swept-section';

/** Which edge of the front a slot opens beside, in the order of its corners. */
const EDGE = { bottom: 0, right: 1, top: 2, left: 3 } as const;

/**
 * Opens the front for a slot. One that runs from wall to wall makes the front that much shorter,
 * where its neighbour runs past it and the slot begins where the front ends: a doubler along it
 * would be laid open too. Any other is cut into it.
 */
export function openFront(
	boards: readonly Board[],
	section: SweptSection,
	plane: SlotPlane,
	vent: SlotVent,
	run: readonly [number, number],
): Board[] {
	const whole = run[0] === plane.run[0] && run[1] === plane.run[1];
	const trimmed = whole && spansFront(section, vent.along) && asLong(boards, run, vent.along);
	const change = (b: Board): Board => {
		if (b.wall !== 'front' || (b.role !== 'wall' && b.role !== 'doubler')) return b;
		if (trimmed && beginsThere(b, plane, vent)) return shortened(b, plane, vent);
		b.holes.push(slotHole(b, plane, vent, run));
		return b;
	};
	return boards.map(change);
}

/**
 * Does the front end where the slot ends? Then taking a strip off it leaves nothing beside the
 * slot.
 */
function spansFront(section: SweptSection, along: SlotVent['along']): boolean {
	if (section.fit !== 'over') return false;
	const f = section.keys.indexOf('front');
	const n = section.keys.length;
	const stopsBelow = section.joints[(f + 1) % n] === 'after';
	const stopsAbove = section.joints[f] === 'before';
	if (along === 'left' || along === 'right') return stopsBelow && stopsAbove;
	return along === 'bottom' ? stopsBelow : stopsAbove;
}

/** Does the slot begin at the very edge of this board? */
function beginsThere({ solid }: Board, plane: SlotPlane, vent: SlotVent): boolean {
	const { on, normal } = slotLine(plane, 0);
	const k = EDGE[vent.along];
	const ends = [nth(solid.inside, k), nth(solid.inside, (k + 1) % 4)];
	return ends.every((p) => Math.abs(dot3(sub3(p, on), normal)) < 1);
}

/** A point on the face of the slot's wall or so far off it, and its normal. */
function slotLine(plane: SlotPlane, by: number): { on: Point3; normal: Point3 } {
	const line = sideLine(plane.corners, plane.front + 1, by);
	const n = line.heading;
	const on = plane.to3(line.at, plane.run[0]);
	const off = plane.to3({ x: line.at.x - n.y, y: line.at.y + n.x }, plane.run[0]);
	return { on, normal: unit3(sub3(off, on)) };
}

/**
 * Is the slot as long as the front is there? In one chamber of several, or between layers, it is
 * shorter.
 */
function asLong(
	boards: readonly Board[],
	run: readonly [number, number],
	along: SlotVent['along'],
): boolean {
	return boards
		.filter((b) => b.wall === 'front' && (b.role === 'wall' || b.role === 'doubler'))
		.every((b) => {
			const axis = along === 'bottom' || along === 'top' ? 'x' : 'y';
			const places = b.solid.outside.map((p) => flat(p, b.frame)[axis]);
			return Math.abs(Math.max(...places) - Math.min(...places) - (run[1] - run[0])) < 1;
		});
}

function shortened(board: Board, plane: SlotPlane, vent: SlotVent): Board {
	const { on, normal } = slotLine(plane, vent.gap);
	const k = EDGE[vent.along];
	const direction = k % 2 === 0 ? board.frame.v : board.frame.u;
	const move = (p: Point3, i: number): Point3 => {
		if (i !== k && i !== (k + 1) % 4) return p;
		return add3(p, scale3(direction, dot3(sub3(on, p), normal) / dot3(direction, normal)));
	};
	const { outside, inside } = board.solid;
	return boardOf({ ...board, solid: { outside: outside.map(move), inside: inside.map(move) } });
}

function slotHole(
	board: Board,
	plane: SlotPlane,
	vent: SlotVent,
	run: readonly [number, number],
): Hole {
	const front = sideLine(plane.corners, plane.front);
	const corners = [0, vent.gap].flatMap((by) => {
		const p = crossed(sideLine(plane.corners, plane.front + 1, by), front);
		return run.map((s) => flat(plane.to3(p, s), board.frame));
	});
	const xs = corners.map((p) => p.x);
	const ys = corners.map((p) => p.y);
	const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
	return { ...rectangleHole(x0, y0, x1 - x0, y1 - y0), of: 'slot', name: vent.name ?? 'slot' };
}

/** A rectangular hole, corners in the frame of its board. */
export function rectangleHole(x: number, y: number, length: number, width: number): Hole {
	const outline: Outline = [
		{ x, y },
		{ x: x + length, y },
		{ x: x + length, y: y + width },
		{ x, y: y + width },
	];
	const centre = { x: x + length / 2, y: y + width / 2 };
	return { outline, of: 'hole', name: 'hole', recess: null, centre, size: [length, width] };
}

/** A round hole, or a round recess `deep` into the outside face. */
export function roundHole(centre: Point, diameter: number, deep: number | null = null): Hole {
	const r = diameter / 2;
	const outline: Outline = [
		{ x: centre.x - r, y: centre.y, bulge: 1 },
		{ x: centre.x + r, y: centre.y, bulge: 1 },
	];
	return { outline, of: 'hole', name: 'hole', recess: deep, centre, size: [diameter] };
}

/** Common practice, no source: a hole closer to the edge of its board than this splits out. */
export const LEAST_EDGE = mm(12);
