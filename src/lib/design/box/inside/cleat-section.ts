import type { Cleats } from '../../../job';
import { type Point, whereIs, cornerAt, dot, minus } from '../../../geometry';
import {
	type SweptAir,
	convex,
	crossed,
	insideAngle,
	sideLine,
	type Quad,
	quadsOverlap,
	quadWithin,
} from '../solid';

/* Cleats seen from the end of the box: where on a wall they lie, and how large they come out. */

/**
 * What a cleat may lie on: walls that stand where they stood, not slot boards; and where frames
 * across the width interrupt it.
 */
export interface CleatRoom {
	readonly air: SweptAir;
	/** Corners of the walls themselves; the air leaves out what the slots take, side for side. */
	readonly walls: readonly Point[];
	readonly sides: readonly boolean[];
	readonly ends: { readonly left: boolean; readonly right: boolean };
	/** Stretches of the width that are free, from left to right. */
	readonly free: readonly (readonly [number, number])[];
}

/** The section of a cleat, and the side of the air it lies on; null where it has no room. */
export interface CleatSection {
	readonly on: number;
	/** The side its bevelled edge stands against; null for one round an end. */
	readonly against: number | null;
	readonly quad: Quad | null;
}

/**
 * One in each corner where two walls stand: on the side that ends there, its bevelled edge against
 * the side that starts there.
 */
export function cornerSections(room: CleatRoom, width: number, t: number): CleatSection[] {
	const { corners } = room.air;
	return corners.flatMap((_, k) => {
		const on = (k + corners.length - 1) % corners.length;
		if (!convex(corners, k) || !room.sides[k] || !room.sides[on]) return [];
		return [{ on, against: k, quad: cornerQuad(room, k, width, t) }];
	});
}

/**
 * One round the ends on each side that is a wall, between the cleats of the corners. It has no room
 * where what faces it stands nearer than it is thick, or where another cleat lies already.
 */
export function endSections(
	room: CleatRoom,
	wish: Cleats,
	t: number,
	corners: readonly CleatSection[],
): CleatSection[] {
	const laid = corners.flatMap(({ quad }) => (quad ? [quad] : []));
	return room.air.corners.flatMap((_, on): CleatSection[] => {
		if (!room.sides[on]) return [];
		const q = endQuad(room, on, wish, t);
		const fits = q && quadWithin(q, room.air.corners) && !laid.some((l) => quadsOverlap(l, q));
		if (fits) laid.push(q);
		return [{ on, against: null, quad: fits ? q : null }];
	});
}

function endQuad(room: CleatRoom, i: number, wish: Cleats, t: number): Quad | null {
	const { corners } = room.air;
	const [a, b] = [cornerAt(corners, i), cornerAt(corners, i + 1)];
	const long = Math.hypot(b.x - a.x, b.y - a.y);
	const [from, to] = onWall(room, i);
	const start = Math.max(from, startGap(room, i, wish, t));
	const end = Math.min(to, long - endGap(room, i, wish, t));
	if (end - start <= t) return null;
	const h = { x: (b.x - a.x) / long, y: (b.y - a.y) / long };
	const place = (s: number, up: number): Point => ({
		x: a.x + h.x * s - h.y * up,
		y: a.y + h.y * s + h.x * up,
	});
	return { outside: [place(start, 0), place(end, 0)], inside: [place(start, t), place(end, t)] };
}

function cornerQuad(room: CleatRoom, k: number, width: number, t: number): Quad | null {
	const { corners } = room.air;
	const before = (k + corners.length - 1) % corners.length;
	const p = cornerAt(corners, k);
	const side = sideLine(corners, before);
	const free: Point = { x: p.x - side.heading.x * width, y: p.y - side.heading.y * width };
	const top = sideLine(corners, before, t);
	const inner: Point = { x: free.x - side.heading.y * t, y: free.y + side.heading.x * t };
	const end = crossed(top, sideLine(corners, k));
	const [from, to] = onWall(room, before);
	// It needs its own width beside the cleat of the next corner, and room over it.
	if (to - from < width + 2 * t || whereIs(inner, corners) === 'outside') return null;
	if (whereIs(end, corners) === 'outside') return null;
	const kept = (end.x - inner.x) * side.heading.x + (end.y - inner.y) * side.heading.y;
	return kept > 0 ? { outside: [free, p], inside: [inner, end] } : null;
}

/**
 * From where to where side `i` of the air lies on its wall, along the side. Beside a slot that
 * turns a step the air reaches past the edge of the step, over the mouth of the slot: nothing can
 * be glued there.
 */
function onWall({ air, walls }: CleatRoom, i: number): [from: number, to: number] {
	const { at, heading } = sideLine(air.corners, i);
	const along = (p: Point): number => dot(heading, minus(p, at));
	const end = along(cornerAt(air.corners, i + 1));
	return [Math.max(0, along(cornerAt(walls, i))), Math.min(end, along(cornerAt(walls, i + 1)))];
}

/** How far an end cleat stays clear of what lies in the corner where its side starts. */
function startGap(room: CleatRoom, i: number, wish: Cleats, t: number): number {
	const q = wish.where === 'both' ? cornerQuad(room, i, wish.width, t) : null;
	const line = sideLine(room.air.corners, i);
	if (q) {
		const along = (p: Point): number =>
			(p.x - line.at.x) * line.heading.x + (p.y - line.at.y) * line.heading.y;
		return Math.max(0, ...[...q.outside, ...q.inside].map(along));
	}
	const angle = (insideAngle(room.air.corners, i) * Math.PI) / 180;
	return angle >= Math.PI ? t : t / Math.sin(angle) + Math.max(0, t / Math.tan(angle));
}

function endGap(room: CleatRoom, i: number, wish: Cleats, t: number): number {
	const k = i + 1;
	if (wish.where === 'both' && cornerQuad(room, k % room.air.corners.length, wish.width, t))
		return wish.width;
	const angle = (insideAngle(room.air.corners, k) * Math.PI) / 180;
	return angle >= Math.PI ? t : Math.max(0, t / Math.tan(angle));
}
