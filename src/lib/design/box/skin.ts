import type { Outline, Point } from '../../geometry/outline';
import { ticks } from '../../measure/length';
import type { BoxSkin, SkinFace } from '../covering';
import { boardName, type Board, type Hole } from './board';
import { at } from './section';
import type { Section } from './shell';
import { raised } from './solid';
import type { Point3 } from './vec';

/**
 * The outside of a swept box, ready to be covered. The faces that go round follow each other from the first one up the front,
 * over the top, down the back and along the bottom; x is the width of the box from left to right, y runs the way round, so
 * that one outline stands on the next as in a band of cloth seen from outside.
 */
export function skinOf(
	section: Section,
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
		across: ticks(Math.round(section.width)),
		round: order.map((i) => roundFace(section, boards, i)),
		ends: (['left', 'right'] as const).map((key) => endFace(section, boards, key)),
	};
}

function roundFace(section: Section, boards: readonly Board[], i: number): SkinFace {
	const from = at(section.outer, i + 1);
	const to = at(section.outer, i);
	const long = Math.hypot(to.x - from.x, to.y - from.y);
	const heading = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
	const key = section.keys[i]!;
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

/** An end seen from outside, upright; its lower left corner at 0, 0. */
function endFace(section: Section, boards: readonly Board[], key: 'left' | 'right'): SkinFace {
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
	return (board?.holes ?? []).filter(opensOutside).map((h) => onFaceOf(board!, h, place));
}

/** Recesses are covered by the frame that sits in them; only what is open is cut out of the cloth. */
const opensOutside = (h: Hole): boolean => h.recess === null;

function onFaceOf(board: Board, hole: Hole, place: (p: Point3) => Point): Outline {
	return hole.outline.map((c) => {
		const p = place(raised(c, board.frame));
		return { x: Math.round(p.x), y: Math.round(p.y), ...(c.bulge ? { bulge: c.bulge } : {}) };
	});
}

function onGrid(points: readonly Point[]): Outline {
	return points.map((p) => ({ x: Math.round(p.x), y: Math.round(p.y) }));
}
