import type { Box } from '../../../../job';
import { ticks, type Length } from '../../../../measure';
import { type Board, boundsOf } from '../../board';
import type { FitFigures, Sizes3 } from '../../box-plan';
import { type ClothOn, type ClothRound, clothRound, sum } from './cloth-round';
import { turnFor } from './way-in';
import type { ProblemLog } from '../../../problem-log';
import type { Point3 } from '../../solid';

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
			`The box with its cloth (${log.say([wrapped.width, wrapped.height, wrapped.depth])}) does not go straight through an opening of ${log.say([box.opening.width, box.opening.height])}, whichever end goes first.`,
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
			`The space is ${log.say(space[axis])} in ${axis}, ${log.say(Math.max(0, room[axis]))} without ${less}; the box with its cloth is ${log.say(wrapped[axis])}: ${log.bare(over)} too much.`,
			advice(axis, { room: room[axis], over, boards }, log),
		);
	}
	const over = leanOver(space, room.depth, points, sum(cloth.depth));
	if (words.length === 0 && over > 0.5) {
		tell(
			'depthTop',
			`The space gets shallower towards the top than the box does: ${log.say(over)} too much.`,
			`Lean the back by the angle of the seat, or take ${log.least(over)} off the depth.`,
		);
	}
	return words;
}

/** Less of the box, where that leaves one: two boards lie across each of its dimensions. */
function advice(
	axis: string,
	{ room, over, boards }: { room: number; over: number; boards: readonly Board[] },
	log: ProblemLog,
): string {
	const walls = boards.filter((b) => b.role === 'wall' || b.role === 'end');
	const least = 2 * Math.min(...walls.map((b) => b.material.measured));
	return room > least
		? `Take ${log.least(over)} off the ${axis}.`
		: `No ${axis} of the box would do: two of its boards alone take ${log.say(least)}. It needs another place.`;
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
