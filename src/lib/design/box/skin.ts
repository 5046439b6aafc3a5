import { nth, snap, theOne } from '../../measure';
import { type Outline, type Point, cornerAt } from '../../geometry';
import type { BoxSkin, SkinFace } from '../covering';
import { boardName, type Board, type Hole, isDrilled } from './board';
import { flat, raised, type Six, type Point3 } from './solid';
import type { SweptSection } from './shell';
import type { TaperedShell } from './tapered';

/**
 * The outside of a swept box, ready to be covered. The faces that go round follow each other from
 * the first one up the front, over the top, down the back and along the bottom; x is the width of
 * the box from left to right, y runs the way round, so that one outline stands on the next as in a
 * band of cloth seen from outside.
 */
export function skinOf(
	section: SweptSection,
	boards: readonly Board[],
	owner: string,
	name: string,
): BoxSkin {
	const n = section.keys.length;
	const front = Math.max(0, section.keys.indexOf('front'));
	const order = section.keys.map((_, i) => (front + n - i) % n);
	return {
		owner,
		name,
		across: snap(section.width),
		round: order.map((i) => roundFace(section, boards, i)),
		ends: (['left', 'right'] as const).map((key) => endFace(section, boards, key)),
	};
}

function roundFace(section: SweptSection, boards: readonly Board[], i: number): SkinFace {
	const from = cornerAt(section.outer, i + 1);
	const to = cornerAt(section.outer, i);
	const long = Math.hypot(to.x - from.x, to.y - from.y);
	const heading = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
	const key = nth(section.keys, i);
	const place = (p: Point3): Point => ({
		x: p.x,
		y: (p.y - from.x) * heading.x + (p.z - from.y) * heading.y,
	});
	return {
		key,
		name: boardName(key),
		outline: onGrid([
			{ x: 0, y: 0 },
			{ x: section.width, y: 0 },
			{ x: section.width, y: long },
			{ x: 0, y: long },
		]),
		holes: holesOf(boards, key, place),
	};
}

/**
 * The six faces of a double-tapered box, each upright as seen from outside; no band runs round
 * them.
 */
export function taperedSkin(
	shell: TaperedShell,
	boards: readonly Board[],
	owner: string,
	name: string,
): BoxSkin {
	const c = shell.outerCorners;
	const corners: Record<Six, readonly number[]> = {
		front: [0, 1, 2, 3],
		back: [5, 4, 7, 6],
		bottom: [4, 5, 1, 0],
		top: [3, 2, 6, 7],
		left: [4, 0, 3, 7],
		right: [1, 5, 6, 2],
	};
	const face = (key: Six): SkinFace => {
		const board = theOne(boards, (b) => b.key === key);
		const flatten = (p: Point3): Point => flat(p, board.frame);
		const points = corners[key].map((i) => flatten(nth(c, i)));
		const low = { x: Math.min(...points.map((p) => p.x)), y: Math.min(...points.map((p) => p.y)) };
		const home = (p: Point): Point => ({ x: p.x - low.x, y: p.y - low.y });
		return {
			key,
			name: board.name,
			outline: onGrid(points.map(home)),
			holes: holesOf(boards, key, (p) => home(flatten(p))),
		};
	};
	return {
		owner,
		name,
		across: null,
		round: (['front', 'top', 'back', 'bottom'] as const).map(face),
		ends: (['left', 'right'] as const).map(face),
	};
}

/** An end seen from outside, upright; its lower left corner at 0, 0. */
function endFace(section: SweptSection, boards: readonly Board[], key: 'left' | 'right'): SkinFace {
	const depth = Math.max(...section.outer.map((p) => p.x));
	const flip = key === 'left';
	const x = (y: number): number => (flip ? depth - y : y);
	const outline = section.outer.map((p) => ({ x: x(p.x), y: p.y }));
	const place = (p: Point3): Point => ({ x: x(p.y), y: p.z });
	return {
		key,
		name: boardName(key),
		outline: onGrid(flip ? outline.reverse() : outline),
		holes: holesOf(boards, key, place),
	};
}

function holesOf(boards: readonly Board[], key: string, place: (p: Point3) => Point): Outline[] {
	const board = boards.find((b) => b.key === key);
	if (!board) return [];
	return board.holes.filter(opensOutside).map((h) => onFaceOf(board, h, place));
}

/**
 * Recesses and bolts are covered by the frame that sits on them; only what is open is cut out of
 * the cloth.
 */
const opensOutside = (h: Hole): boolean => h.recess === null && !isDrilled(h);

function onFaceOf(board: Board, hole: Hole, place: (p: Point3) => Point): Outline {
	return hole.outline.map((c) => {
		const p = place(raised(c, board.frame));
		return { x: Math.round(p.x), y: Math.round(p.y), ...(c.bulge ? { bulge: c.bulge } : {}) };
	});
}

function onGrid(points: readonly Point[]): Outline {
	return points.map((p) => ({ x: Math.round(p.x), y: Math.round(p.y) }));
}
