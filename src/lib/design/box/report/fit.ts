import type { Box } from '../../../job';
import { cornerAt, type Point } from '../../../geometry';
import { ticks, type Length } from '../../../measure';
import { type Board, boundsOf, hull } from '../board';
import type { FitFigures, Sizes3 } from '../box-plan';
import { shown } from '../shown';
import { type ClothOn, type ClothRound, clothRound } from './cloth-round';
import type { ProblemLog } from '../../problem-log';
import type { Point3 } from '../solid';

/** The boards a box is seen by from outside, layers and rings on it included. */
export function outerBoards(boards: readonly Board[]): Board[] {
	return boards.filter((b) => ['wall', 'end', 'overlay', 'ring'].includes(b.role));
}

/** All corners of the outside of a box. */
export function outsidePoints(boards: readonly Board[]): Point3[] {
	return outerBoards(boards).flatMap((b) => b.solid.outside);
}

export function sizesOf(points: readonly Point3[]): Sizes3 {
	const { low, high } = boundsOf(points);
	const up = (n: number): Length => ticks(Math.ceil(n - 1e-3));
	return { width: up(high.x - low.x), depth: up(high.y - low.y), height: up(high.z - low.z) };
}

/** With the loose cloth on it. */
function wrap(sizes: Sizes3, cloth: ClothRound): Sizes3 {
	const grown = (axis: keyof Sizes3) => ticks(sizes[axis] + sum(cloth[axis]));
	return { width: grown('width'), height: grown('height'), depth: grown('depth') };
}

const sum = ([a, b]: readonly [number, number]): number => a + b;

/** Does the finished box go into its space and through the opening on the way? */
export function fitOf(
	box: Box,
	boards: readonly Board[],
	on: ClothOn,
	log: ProblemLog,
): FitFigures {
	const points = outsidePoints(boards);
	const cloth = clothRound(outerBoards(boards), on);
	const wrapped = wrap(sizesOf(points), cloth);
	const inSpace = spaceWords(box, wrapped, boards, cloth, log);
	const turn = turnFor(box, points, cloth);
	if (box.opening && !turn) {
		log.check(
			['opening'],
			`The box with its cloth (${shown(wrapped.width)} x ${shown(wrapped.height)} x ${shown(wrapped.depth)} mm) does not go straight through an opening of ${shown(box.opening.width)} x ${shown(box.opening.height)} mm, whichever end goes first.`,
			'Make it smaller, or in two boxes that are joined inside.',
		);
	}
	return {
		wrapped,
		cloth: cloth.most,
		inSpace,
		fits: box.space ? inSpace.length === 0 : null,
		passes: box.opening ? turn !== null : null,
		turn: box.opening ? turn : null,
	};
}

/** What sticks out of the space, in words; each is a problem too. */
function spaceWords(
	box: Box,
	wrapped: Sizes3,
	boards: readonly Board[],
	cloth: ClothRound,
	log: ProblemLog,
): string[] {
	const { space } = box;
	if (!space) return [];
	const points = outsidePoints(boards);
	const free = space.clearance;
	// Clear at both sides and over the top; the box stands on the floor and keeps its stand-off
	// behind.
	const room = {
		width: space.width - 2 * free,
		height: space.height - free,
		depth: space.depth - free - box.standOff,
	};
	const words: string[] = [];
	const tell = (field: string, text: string, fix: string): void => {
		words.push(text);
		log.check(['space', field], text, fix);
	};
	for (const axis of ['width', 'height', 'depth'] as const) {
		const over = wrapped[axis] - room[axis];
		if (over <= 0) continue;
		const less = axis === 'depth' && box.standOff > 0 ? `clearance and stand-off` : 'clearance';
		tell(
			axis,
			`The space is ${shown(space[axis])} mm in ${axis}, ${shown(Math.max(0, room[axis]))} mm without ${less}; the box with its cloth is ${shown(wrapped[axis])} mm: ${shown(over)} too much.`,
			advice(axis, room[axis], over, boards),
		);
	}
	const over = leanOver(space, room.depth, points, sum(cloth.depth));
	if (words.length === 0 && over > 0.5) {
		tell(
			'depthTop',
			`The space gets shallower towards the top than the box does: ${shown(over)} mm too much.`,
			`Lean the back by the angle of the seat, or take ${shown(over)} mm off the depth.`,
		);
	}
	return words;
}

/** Less of the box, where that leaves one: two boards lie across each of its dimensions. */
function advice(axis: string, room: number, over: number, boards: readonly Board[]): string {
	const walls = boards.filter((b) => b.role === 'wall' || b.role === 'end');
	const least = 2 * Math.min(...walls.map((b) => b.material.measured));
	return room > least
		? `Take ${shown(over)} mm off the ${axis}.`
		: `No ${axis} of the box would do: two of its boards alone take ${shown(least)} mm. It needs another place.`;
}

/** How far the box reaches past the slanted back of the space. */
function leanOver(
	space: NonNullable<Box['space']>,
	deep: number,
	points: readonly Point3[],
	cloth: number,
): number {
	if (space.depthTop === null) return 0;
	const lost = space.depth - space.depthTop;
	const front = Math.min(...points.map((p) => p.y));
	return Math.max(
		...points.map(
			(p) => p.y - front + cloth - (deep - (lost * Math.min(p.z, space.height)) / space.height),
		),
	);
}

/** A way to look at a box, and which of its sizes lie across and up as it is seen then. */
type View = readonly [name: string, look: (p: Point3) => Point, across: Axis, up: Axis];
type Axis = keyof Sizes3;
const VIEWS: readonly View[] = [
	['Front first', (p) => ({ x: p.x, y: p.z }), 'width', 'height'],
	['One end first', (p) => ({ x: p.y, y: p.z }), 'depth', 'height'],
	['Top or bottom first', (p) => ({ x: p.x, y: p.y }), 'width', 'depth'],
];

/**
 * Straight through the opening: the outline seen from the side that goes first, turned in its plane
 * until it fits, at any angle. Square to the opening, each side leaves the cloth on it its room; at
 * any other angle all do, the thickest there is. What passes at none may still be wriggled in,
 * which nobody should count on.
 */
function turnFor(box: Box, points: readonly Point3[], cloth: ClothRound): string | null {
	const { opening } = box;
	if (!opening) return null;
	for (const [name, look, across, up] of VIEWS) {
		const outline = hull(points.map(look));
		const [x, y] = [sum(cloth[across]), sum(cloth[up])];
		const most = 2 * Math.max(...cloth[across], ...cloth[up]);
		const room = (lessX: number, lessY: number) =>
			[opening.width - lessX, opening.height - lessY] as const;
		const tilted = room(most, most);
		for (const angle of [...ANGLES, ...exactAngles(outline, ...tilted)]) {
			const free = angle === 0 ? room(x, y) : angle === 90 ? room(y, x) : tilted;
			if (!fitsAt(outline, angle, ...free)) continue;
			const shownAngle = Math.round(angle * 100) / 100;
			return angle === 0 ? `${name}, upright as it stands.` : `${name}, turned ${shownAngle}°.`;
		}
	}
	return null;
}

/**
 * Every angle at which an outline that fits at all must fit, degrees. Between two angles at which a
 * side lies flush the spread either way is that of two fixed corners, which rises and falls again:
 * where it is small enough ends where a side is flush or where the spread is the opening itself.
 */
function exactAngles(outline: readonly Point[], width: number, height: number): number[] {
	const found: number[] = [];
	const add = (radians: number): void => {
		const degrees = (radians * 180) / Math.PI;
		found.push(((degrees % 180) + 180) % 180);
	};
	outline.forEach((p, i) => {
		const q = cornerAt(outline, i + 1);
		const flush = -Math.atan2(q.y - p.y, q.x - p.x);
		[flush, flush + Math.PI / 2].forEach(add);
		for (const r of outline) {
			const long = Math.hypot(r.x - p.x, r.y - p.y);
			const lies = Math.atan2(r.y - p.y, r.x - p.x);
			if (long >= width && long > 0)
				for (const side of [1, -1]) add(side * Math.acos(width / long) - lies);
			if (long >= height && long > 0)
				for (const side of [1, -1]) add(side * Math.acos(height / long) + Math.PI / 2 - lies);
		}
	});
	return found.sort((a, b) => Math.min(a, 180 - a) - Math.min(b, 180 - b));
}

/** Upright, then a quarter turn, then whole degrees, the small turns first. */
const ANGLES: readonly number[] = [
	0,
	90,
	...Array.from({ length: 179 }, (_, i) => i + 1).sort(
		(a, b) => Math.min(a, 180 - a) - Math.min(b, 180 - b),
	),
];

function fitsAt(
	outline: readonly Point[],
	degrees: number,
	width: number,
	height: number,
): boolean {
	const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
	const xs = outline.map((p) => p.x * c - p.y * s);
	const ys = outline.map((p) => p.x * s + p.y * c);
	const spread = (n: readonly number[]): number => Math.max(...n) - Math.min(...n);
	return spread(xs) <= width + 1e-6 && spread(ys) <= height + 1e-6;
}
