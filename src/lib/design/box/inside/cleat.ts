import { nth, toMm } from '../../../measure';
import type { Box, Cleats, Material } from '../../../job';
import { type Point, whereIs, cornerAt, dot, minus } from '../../../geometry';
import {
	type SweptAir,
	convex,
	crossed,
	insideAngle,
	sideLine,
	type Quad,
	faceArea,
	p3,
	type Point3,
} from '../solid';
import { boardName, boardOf, type Board, woodOf, type Seam, wallOf } from '../board';
import type { BoardRack } from '../rack';
import type { ProblemLog } from '../../problem-log';
import { sideFrame, sweptSolid } from '../shell';

export interface Cleated {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
	/** Cubic ticks of one chamber. */
	readonly taken: number;
	/**
	 * Corners that should have had a cleat and have no room for one, by the boards that meet there.
	 */
	readonly missed: readonly string[];
}

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

/**
 * Strips in the corners of one chamber; the corner's own angle is ripped on the edge that meets the
 * second wall.
 */
export function cleatsIn(
	room: CleatRoom,
	wish: Cleats,
	material: Material,
	first: number,
): Cleated {
	const boards: Board[] = [];
	const add = (name: string, solid: Board['solid'], frame: Board['frame'], wall: string): void => {
		const key = `cleat-${first + boards.length}`;
		const made = {
			key,
			wall,
			name,
			role: 'cleat' as const,
			material,
			solid,
			frame,
			grain: 'along' as const,
		};
		boards.push(boardOf(made));
	};
	const missed =
		wish.where === 'ends' ? [] : cornerCleats(room, wish.width, material.measured, add);
	if (wish.where !== 'corners') endCleats(room, wish, material.measured, add);
	const seams = boards.map(stripSeam);
	return { boards, seams, taken: boards.reduce((sum, b) => sum + woodOf(b), 0), missed };
}

/** Cleats in all chambers; `cleat` makes those of one, its boards numbered from `first`. */
export function cleatAll(
	box: Box,
	rooms: number,
	cleat: (room: number, wish: Cleats, material: Material, first: number) => Cleated | null,
	rack: BoardRack,
	log: ProblemLog,
): Pick<Cleated, 'boards' | 'seams'> & { readonly taken: readonly number[] } {
	const wish = box.cleats;
	const material = wish && rack.of(wish.material, ['cleats', 'material']);
	const taken = new Array<number>(rooms).fill(0);
	const boards: Board[] = [];
	const seams: Seam[] = [];
	if (!wish || !material) return { boards, seams, taken };
	const missed = new Set<string>();
	for (let r = 0; r < rooms; r++) {
		const made = cleat(r, wish, material, boards.length + 1);
		if (!made) continue;
		boards.push(...made.boards);
		seams.push(...made.seams);
		taken[r] = made.taken;
		for (const corner of made.missed) missed.add(corner);
	}
	sayMissed(wish, missed, log);
	return { boards, seams, taken };
}

/** Says which corners have no room for their cleat. */
function sayMissed(wish: Cleats, missed: ReadonlySet<string>, log: ProblemLog): void {
	if (missed.size === 0) return;
	const one = missed.size === 1;
	log.check(
		['cleats', 'width'],
		`A cleat ${toMm(wish.width)} mm wide has no room in ${one ? 'the corner' : 'the corners'} ${[...missed].join(', ')}; ${one ? 'it is' : 'they are'} left without one.`,
		'Take a narrower cleat, or close these corners with glue and screws alone.',
	);
}

type Add = (name: string, solid: Board['solid'], frame: Board['frame'], wall: string) => void;

/**
 * Lies on the side that ends at corner `k`, its bevelled edge against the side that starts there.
 * Returns the corners that have no room for one.
 */
function cornerCleats(room: CleatRoom, width: number, t: number, add: Add): string[] {
	const { corners, keys } = room.air;
	return corners.flatMap((_, k) => {
		const before = (k + corners.length - 1) % corners.length;
		if (!convex(corners, k) || !room.sides[k] || !room.sides[before]) return [];
		const pair = `${boardName(nth(keys, before))} / ${boardName(nth(keys, k))}`;
		const q = cornerQuad(room, k, width, t);
		if (!q) return [pair];
		for (const [x0, x1] of room.free)
			add(`Cleat ${pair}`, sweptSolid(q, x0, x1), sideFrame(corners, before), nth(keys, before));
		return [];
	});
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

/** Round the inside of each end, square to it, between the cleats of the corners. */
function endCleats(room: CleatRoom, wish: Cleats, t: number, add: Add): void {
	const { air } = room;
	const [left, right] = endStretches(room, wish.width);
	air.corners.forEach((a, i) => {
		if (!room.sides[i]) return;
		const b = cornerAt(air.corners, i + 1);
		const long = Math.hypot(b.x - a.x, b.y - a.y);
		const [from, to] = onWall(room, i);
		const start = Math.max(from, startGap(room, i, wish, t));
		const end = Math.min(to, long - endGap(room, i, wish, t));
		if (end - start <= t) return;
		const h = { x: (b.x - a.x) / long, y: (b.y - a.y) / long };
		const place = (s: number, up: number): Point => ({
			x: a.x + h.x * s - h.y * up,
			y: a.y + h.y * s + h.x * up,
		});
		const q: Quad = {
			outside: [place(start, 0), place(end, 0)],
			inside: [place(start, t), place(end, t)],
		};
		const name = (of: string): string => `Cleat ${boardName(nth(air.keys, i))} / ${boardName(of)}`;
		const frame = sideFrame(air.corners, i);
		if (left) add(name('left'), sweptSolid(q, ...left), frame, nth(air.keys, i));
		if (right) add(name('right'), sweptSolid(q, ...right), frame, nth(air.keys, i));
	});
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

/**
 * Where the cleats at each end lie along the width; none where a frame or the other end leaves too
 * little room.
 */
function endStretches(
	room: CleatRoom,
	width: number,
): [left: [number, number] | null, right: [number, number] | null] {
	const first = room.free[0];
	const last = room.free.at(-1);
	if (!first || !last) return [null, null];
	const shared = first === last && room.ends.left && room.ends.right ? 2 : 1;
	const fits = ([from, to]: readonly [number, number]): boolean => to - from >= shared * width;
	return [
		room.ends.left && fits(first) ? [first[0], first[0] + width] : null,
		room.ends.right && fits(last) ? [last[1] - width, last[1]] : null,
	];
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

/** A cleat is glued on its broad face and on one edge. */
export function stripSeam(board: Board): Seam {
	const { outside } = board.solid;
	const spans = [0, 1].map((k) => distance3(nth(outside, k), nth(outside, k + 1)));
	const length = Math.max(...spans);
	const area = Math.abs(faceArea(outside, board.frame)) + length * board.material.measured;
	return {
		letter: '',
		between: [wallOf(board), board.key],
		kind: 'strip',
		length,
		area,
		at: middle(outside),
		seals: false,
	};
}

const distance3 = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

function middle(face: readonly Point3[]): Point3 {
	const sum = face.reduce((s, p) => p3(s.x + p.x, s.y + p.y, s.z + p.z), p3(0, 0, 0));
	return p3(sum.x / face.length, sum.y / face.length, sum.z / face.length);
}
