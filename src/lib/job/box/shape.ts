import { z } from '../zod';
import { degreesField, position, size } from '../fields';
import { drawing } from '../panel';

/*
 * The forms a box takes. All but 'tapered' are a side profile swept along the width; the profile is seen from the right
 * end, front on the left, back on the right.
 */

const width = size.describe('Width: from the left end to the right end.');
const height = size.describe('Height: from the bottom to the top, measured upright.');
const depth = size.describe('Depth: from the front to the back.');

const plain = z.strictObject({ kind: z.literal('plain'), width, height, depth });

const at = z
	.enum(['bottom', 'top'])
	.default('bottom')
	.describe('Depth taken at: whether the depth was measured along the bottom or along the top.');

/** How the leaning face is described: whatever the tape or the angle gauge gave. */
export const lean = z.discriminatedUnion('by', [
	z.strictObject({
		by: z.literal('depths'),
		bottom: size.describe('Depth at the bottom: from the front to the back along the bottom.'),
		top: size.describe('Depth at the top: from the front to the back along the top.'),
	}),
	z.strictObject({
		by: z.literal('angle'),
		depth,
		at,
		angle: degreesField(-60, 60).describe(
			'Lean: degrees from upright; positive makes the box shallower at the top.',
		),
	}),
	z.strictObject({
		by: z.literal('seat'),
		depth,
		at,
		seat: degreesField(30, 150).describe(
			'Seat angle: degrees between the floor under the box and the seat or bulkhead, read with a gauge laid on it.',
		),
	}),
]);

const slanted = z.strictObject({
	kind: z.literal('slanted'),
	width,
	height,
	face: z
		.enum(['front', 'back'])
		.default('back')
		.describe('Leaning face: the one that lies against the seat.'),
	lean: lean.describe(
		'Lean: two depths, a depth and an angle, or a depth and the angle of the seat.',
	),
});

const place = z
	.enum(['bottom-back', 'bottom-front', 'top-back', 'top-front'])
	.default('bottom-back')
	.describe('Corner: which of the four corners seen from the side.');

const stepped = z.strictObject({
	kind: z.literal('stepped'),
	width,
	height,
	depth,
	corner: place,
	stepHeight: size.describe(
		'Step height: how high the wheel arch stands, room for cloth included.',
	),
	stepDepth: size.describe(
		'Step depth: how far the wheel arch reaches under the box, room for cloth included.',
	),
});

const truncated = z.strictObject({
	kind: z.literal('truncated'),
	width,
	height,
	depth,
	corner: place,
	cutHeight: size.describe('Cut height: how much of the upright face the cut corner takes.'),
	cutDepth: size.describe('Cut depth: how much of the level face the cut corner takes.'),
});

const free = z.strictObject({
	kind: z.literal('free'),
	width,
	corners: z
		.array(
			z.strictObject({
				x: position.describe('Back: how far behind the front, level.'),
				y: position.describe('Up: how far above the bottom, upright.'),
			}),
		)
		.min(3, 'A profile needs three corners.|Give at least three.')
		.max(24, 'This is more than 24 corners.|Leave out corners that lie on a straight line.')
		.default([])
		.describe(
			'Corners: round the side profile as seen from the right end, front on the left. Empty where a drawing stands in.',
		),
	drawing: drawing
		.nullable()
		.default(null)
		.describe(
			'Drawing: a side profile from a file or a list, straight edges only; it stands in for the corners.',
		),
});

const mouth = (which: string) =>
	z.strictObject({
		width: size.describe(`Width at the ${which}: from left to right.`),
		height: size.describe(`Height at the ${which}: from bottom to top.`),
	});

const tapered = z.strictObject({
	kind: z.literal('tapered'),
	front: mouth('front'),
	back: mouth('back'),
	depth,
	rise: position
		.nullable()
		.default(null)
		.describe(
			'Rise: how far the lower edge of the back stands above that of the front. Empty: centred. 0: level bottom.',
		),
	shift: position
		.nullable()
		.default(null)
		.describe(
			'Shift: how far the left edge of the back lies to the right of that of the front. Empty: centred.',
		),
});

export const boxShape = z.discriminatedUnion('kind', [
	plain,
	slanted,
	stepped,
	truncated,
	free,
	tapered,
]);

/** The dimension a target volume may change. 'depth' of a slanted box moves both depths alike, so the slant keeps its angle. */
export const solvedDimension = z.enum(['width', 'height', 'depth']);

export type BoxShape = z.output<typeof boxShape>;
export type ShapeOf<K extends BoxShape['kind']> = Extract<BoxShape, { kind: K }>;
export type Dimension = z.output<typeof solvedDimension>;
