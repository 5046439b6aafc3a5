import { nth, type Length, around } from '../../../measure';
import type { Point } from '../../../geometry';
import type { BoardKey, BoxShape, ShapeOf } from '../../../job';
import { freeCorners } from './free';
import type { ProblemLog } from '../../problem-log';

/**
 * The side of a box as seen from its right end, front on the left: x to the back, y up,
 * counter-clockwise. Side `i` of the profile leaves corner `i` and carries the board `keys[i]`.
 */
export interface Profile {
	readonly corners: readonly Point[];
	readonly keys: readonly BoardKey[];
	readonly width: Length;
}

export type Swept = Exclude<BoxShape, { kind: 'tapered' }>;

/** The profile of every form but the tapered one, or null with the reason told. */
export function profileOf(shape: Swept, log: ProblemLog): Profile | null {
	switch (shape.kind) {
		case 'plain':
			return four(shape.width, shape.height, [0, shape.depth], [0, shape.depth]);
		case 'slanted':
			return slanted(shape, log);
		case 'stepped':
			return stepped(shape, log);
		case 'truncated':
			return truncated(shape, log);
		case 'free':
			return free(shape, log);
	}
}

/** Front and back at the bottom and at the top. */
function four(
	width: Length,
	height: number,
	bottom: readonly [number, number],
	top: readonly [number, number],
): Profile {
	return {
		width,
		keys: ['bottom', 'back', 'top', 'front'],
		corners: [
			{ x: bottom[0], y: 0 },
			{ x: bottom[1], y: 0 },
			{ x: top[1], y: height },
			{ x: top[0], y: height },
		],
	};
}

/** Depths at the bottom and at the top of a slanted box, from whatever was measured. */
function depthsOf(shape: ShapeOf<'slanted'>): { bottom: number; top: number } {
	const { lean, height } = shape;
	if (lean.by === 'depths') return { bottom: lean.bottom, top: lean.top };
	// The seat angle is read between the floor under the box and the face against it; 90 is
	// upright.
	const angle = lean.by === 'angle' ? lean.angle : 90 - lean.seat;
	const run = height * Math.tan((angle * Math.PI) / 180);
	return lean.at === 'bottom'
		? { bottom: lean.depth, top: lean.depth - run }
		: { bottom: lean.depth + run, top: lean.depth };
}

function slanted(shape: ShapeOf<'slanted'>, log: ProblemLog): Profile | null {
	const { bottom, top } = depthsOf(shape);
	if (bottom <= 0 || top <= 0) {
		const [less, at] = top <= 0 ? [top, 'top'] : [bottom, 'bottom'];
		log.stop(
			['shape', 'lean'],
			`The leaning face meets the other one: the depth at the ${at} comes out at ${log.say(less)}.`,
			'Give a smaller lean, a lower box or more depth.',
		);
		return null;
	}
	if (shape.face === 'back') return four(shape.width, shape.height, [0, bottom], [0, top]);
	const back = Math.max(bottom, top);
	return four(shape.width, shape.height, [back - bottom, back], [back - top, back]);
}

type Notched = ShapeOf<'stepped'> | ShapeOf<'truncated'>;

/**
 * A corner of the rectangle taken away, in the frame of the lower back one: mirrored into its own
 * place afterwards.
 */
function notched(
	shape: Notched,
	corners: readonly (readonly [x: number, y: number, key: BoardKey])[],
): Profile {
	const low = shape.corner.startsWith('bottom');
	const back = shape.corner.endsWith('back');
	const placed = corners.map(([x, y]) => ({
		x: back ? x : shape.depth - x,
		y: low ? y : shape.height - y,
	}));
	const swap: Record<string, BoardKey> = {
		...(low ? {} : { top: 'bottom', bottom: 'top' }),
		...(back ? {} : { front: 'back', back: 'front' }),
	};
	const keys = corners.map(([, , key]) => swap[key] ?? key);
	if (low === back) return { width: shape.width, corners: placed, keys };
	// Mirrored once, the profile runs clockwise: side i now leads from corner i + 1 to corner i.
	return {
		width: shape.width,
		corners: placed.map((_, i) => around(placed, placed.length - i)),
		keys: keys.map((_, i) => nth(keys, keys.length - 1 - i)),
	};
}

function stepped(shape: ShapeOf<'stepped'>, log: ProblemLog): Profile | null {
	const { depth: d, height: h, stepHeight, stepDepth } = shape;
	if (!smaller(stepHeight, h, 'stepHeight', 'height', log)) return null;
	if (!smaller(stepDepth, d, 'stepDepth', 'depth', log)) return null;
	return notched(shape, [
		[0, 0, 'bottom'],
		[d - stepDepth, 0, 'step-face'],
		[d - stepDepth, stepHeight, 'step-top'],
		[d, stepHeight, 'back'],
		[d, h, 'top'],
		[0, h, 'front'],
	]);
}

function truncated(shape: ShapeOf<'truncated'>, log: ProblemLog): Profile | null {
	const { depth: d, height: h, cutHeight, cutDepth } = shape;
	if (!smaller(cutHeight, h, 'cutHeight', 'height', log)) return null;
	if (!smaller(cutDepth, d, 'cutDepth', 'depth', log)) return null;
	return notched(shape, [
		[0, 0, 'bottom'],
		[d - cutDepth, 0, 'cut'],
		[d, cutHeight, 'back'],
		[d, h, 'top'],
		[0, h, 'front'],
	]);
}

function smaller(a: number, b: number, field: string, other: string, log: ProblemLog): boolean {
	if (a < b) return true;
	log.stop(
		['shape', field],
		`${log.say(a)} takes the whole ${other} of ${log.say(b)}.`,
		`Give less than ${log.most(b)}, or choose a form without it.`,
	);
	return false;
}

function free(shape: ShapeOf<'free'>, log: ProblemLog): Profile | null {
	const corners = freeCorners(shape, log);
	return corners && { width: shape.width, corners, keys: corners.map((_, i) => `side-${i + 1}`) };
}
