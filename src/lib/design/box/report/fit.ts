import type { Box, Cloth } from '../../../job';
import { cornerAt, type Point } from '../../../geometry';
import { ticks, type Length } from '../../../measure';
import { type Board, boundsOf, hull } from '../board';
import type { FitFigures, Sizes3 } from '../box-plan';
import { shown } from '../shown';
import type { ProblemLog } from '../../problem-log';
import type { Point3 } from '../solid';

/** All corners of the outside of a box, layers and rings on it included. */
export function outsidePoints(boards: readonly Board[]): Point3[] {
	const outer = ['wall', 'end', 'overlay', 'ring'];
	return boards.filter((b) => outer.includes(b.role)).flatMap((b) => b.solid.outside);
}

export function sizesOf(points: readonly Point3[]): Sizes3 {
	const { low, high } = boundsOf(points);
	const up = (n: number): Length => ticks(Math.ceil(n - 1e-3));
	return { width: up(high.x - low.x), depth: up(high.y - low.y), height: up(high.z - low.z) };
}

/** Cloth on each side of the outside, ticks: loose thickness where there is some, else 0. */
export type ClothSides = Readonly<
	Record<'left' | 'right' | 'front' | 'back' | 'bottom' | 'top', number>
>;

export function clothSides({ carpet }: Box, cloth: Cloth | null): ClothSides {
	const on = (key: ClothSide): number =>
		carpet && (carpet.cover.length === 0 || carpet.cover.includes(key)) ? (cloth?.loose ?? 0) : 0;
	return {
		left: on('left'),
		right: on('right'),
		front: on('front'),
		back: on('back'),
		bottom: on('bottom'),
		top: on('top'),
	};
}

type ClothSide = keyof ClothSides;

/** Outside sizes with the cloth. */
export function clothed(sizes: Sizes3, on: ClothSides): Sizes3 {
	return {
		width: ticks(sizes.width + on.left + on.right),
		height: ticks(sizes.height + on.top + on.bottom),
		depth: ticks(sizes.depth + on.front + on.back),
	};
}

/** Does the finished box go into its space and through the opening on the way? */
export function fitOf(
	box: Box,
	points: readonly Point3[],
	cloth: Cloth | null,
	log: ProblemLog,
): FitFigures {
	const on = clothSides(box, cloth);
	const wrapped = clothed(sizesOf(points), on);
	const inSpace = spaceWords(box, wrapped, points, on, log);
	const turn = turnFor(box, points, on);
	if (box.opening && !turn) {
		log.check(
			['opening'],
			`The box with its cloth (${shown(wrapped.width)} x ${shown(wrapped.height)} x ${shown(wrapped.depth)} mm) does not go straight through an opening of ${shown(box.opening.width)} x ${shown(box.opening.height)} mm, whichever end goes first.`,
			'Make it smaller, or in two boxes that are joined inside.',
		);
	}
	return {
		wrapped,
		cloth: ticks(cloth?.loose ?? 0),
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
	points: readonly Point3[],
	on: ClothSides,
	log: ProblemLog,
): string[] {
	const { space } = box;
	if (!space) return [];
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
			`Take ${shown(over)} mm off the ${axis}.`,
		);
	}
	const over = leanOver(space, room.depth, points, on.front + on.back);
	if (words.length === 0 && over > 0.5) {
		tell(
			'depthTop',
			`The space gets shallower towards the top than the box does: ${shown(over)} mm too much.`,
			`Lean the back by the angle of the seat, or take ${shown(over)} mm off the depth.`,
		);
	}
	return words;
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

/** What goes first, how it looks from there, and its sides: low and high x, low and high y. */
type View = readonly [
	name: string,
	look: (p: Point3) => Point,
	sides: readonly [ClothSide, ClothSide, ClothSide, ClothSide],
];
const VIEWS: readonly View[] = [
	['Front first', (p) => ({ x: p.x, y: p.z }), ['left', 'right', 'bottom', 'top']],
	['One end first', (p) => ({ x: p.y, y: p.z }), ['front', 'back', 'bottom', 'top']],
	['Top or bottom first', (p) => ({ x: p.x, y: p.y }), ['left', 'right', 'front', 'back']],
];

/**
 * Straight through the opening: the outline seen from the side that goes first, turned in its plane
 * until it fits, at any angle. What passes at none may still be wriggled in, which nobody should
 * count on.
 */
function turnFor(box: Box, points: readonly Point3[], on: ClothSides): string | null {
	const { opening } = box;
	if (!opening) return null;
	const { width, height } = opening;
	for (const [name, look, sides] of VIEWS) {
		const outline = hull(points.map(look));
		const cloth = sides.map((side) => on[side]);
		const most = 2 * Math.max(...cloth);
		const exact = exactAngles(outline, width - most, height - most);
		for (const angle of [...ANGLES, ...exact]) {
			if (!fitsAt(outline, angle, opening, cloth)) continue;
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

/** `cloth`: on the sides of low and high x and y, in the outline's own frame. */
function fitsAt(
	outline: readonly Point[],
	degrees: number,
	opening: { readonly width: number; readonly height: number },
	cloth: readonly number[],
): boolean {
	const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
	const xs = outline.map((p) => p.x * c - p.y * s);
	const ys = outline.map((p) => p.x * s + p.y * c);
	const spread = (n: readonly number[]): number => Math.max(...n) - Math.min(...n);
	const wide = spread(xs) + clothAlong({ x: c, y: -s }, cloth);
	const high = spread(ys) + clothAlong({ x: s, y: c }, cloth);
	return wide <= opening.width + 1e-6 && high <= opening.height + 1e-6;
}

/**
 * What the cloth adds to the spread along a direction, both ways together: its thickness all round
 * where every side has some, nothing along a side that has none.
 */
function clothAlong(d: Point, cloth: readonly number[]): number {
	const [left = 0, right = 0, below = 0, above = 0] = cloth;
	const toward = (x: number, y: number): number =>
		Math.hypot(x * (x > 0 ? right : left), y * (y > 0 ? above : below));
	return toward(d.x, d.y) + toward(-d.x, -d.y);
}
