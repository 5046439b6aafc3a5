import { field, z } from '../zod';
import { degreesField, position, size } from '../fields';
import { drawing } from '../panel';

/*
 * The forms a box takes. All but 'tapered' are a side profile swept along the width; the profile is
 * seen from the right end, front on the left, back on the right.
 */

const width = field(size, { label: 'Width', help: 'from the left end to the right end.' });
const height = field(size, {
	label: 'Height',
	help: 'from the bottom to the top, measured upright.',
});
const depth = field(size, { label: 'Depth', help: 'from the front to the back.' });

const plain = z.strictObject({ kind: z.literal('plain'), width, height, depth });

const at = field(z.enum(['bottom', 'top']).default('bottom'), {
	label: 'Depth taken at',
	help: 'whether the depth was measured along the bottom or along the top.',
});

/** How the leaning face is described: whatever the tape or the angle gauge gave. */
export const lean = z.discriminatedUnion('by', [
	z.strictObject({
		by: z.literal('depths'),
		bottom: field(size, {
			label: 'Depth at the bottom',
			help: 'from the front to the back along the bottom.',
		}),
		top: field(size, {
			label: 'Depth at the top',
			help: 'from the front to the back along the top.',
		}),
	}),
	z.strictObject({
		by: z.literal('angle'),
		depth,
		at,
		angle: field(degreesField(-60, 60), {
			label: 'Lean',
			help: 'degrees from upright; positive makes the box shallower at the top.',
			unit: '°',
		}),
	}),
	z.strictObject({
		by: z.literal('seat'),
		depth,
		at,
		seat: field(degreesField(30, 150), {
			label: 'Seat angle',
			help: 'degrees between the floor under the box and the seat or bulkhead, read with a gauge laid on it.',
			unit: '°',
		}),
	}),
]);

const slanted = z.strictObject({
	kind: z.literal('slanted'),
	width,
	height,
	face: field(z.enum(['front', 'back']).default('back'), {
		label: 'Leaning face',
		help: 'the one that lies against the seat.',
	}),
	lean: field(lean, {
		label: 'Lean',
		options: {
			depths: 'two depths',
			angle: 'a depth and an angle',
			seat: 'a depth and the angle of the seat',
		},
		help: 'two depths, a depth and an angle, or a depth and the angle of the seat.',
	}),
});

const place = field(
	z.enum(['bottom-back', 'bottom-front', 'top-back', 'top-front']).default('bottom-back'),
	{ label: 'Corner', help: 'which of the four corners seen from the side.' },
);

const stepped = z.strictObject({
	kind: z.literal('stepped'),
	width,
	height,
	depth,
	corner: place,
	stepHeight: field(size, {
		label: 'Step height',
		help: 'how high the wheel arch stands, room for cloth included.',
	}),
	stepDepth: field(size, {
		label: 'Step depth',
		help: 'how far the wheel arch reaches under the box, room for cloth included.',
	}),
});

const truncated = z.strictObject({
	kind: z.literal('truncated'),
	width,
	height,
	depth,
	corner: place,
	cutHeight: field(size, {
		label: 'Cut height',
		help: 'how much of the upright face the cut corner takes.',
	}),
	cutDepth: field(size, {
		label: 'Cut depth',
		help: 'how much of the level face the cut corner takes.',
	}),
});

const free = z.strictObject({
	kind: z.literal('free'),
	width,
	corners: field(
		z
			.array(
				z.strictObject({
					x: field(position, { label: 'Back', help: 'how far behind the front, level.' }),
					y: field(position, { label: 'Up', help: 'how far above the bottom, upright.' }),
				}),
			)
			.min(3, 'A profile needs three corners.|Give at least three.')
			.max(24, 'This is more than 24 corners.|Leave out corners that lie on a straight line.')
			.default([]),
		{
			label: 'Corners',
			help: 'round the side profile as seen from the right end, front on the left. Empty where a drawing stands in.',
		},
	),
	drawing: field(drawing.nullable().default(null), {
		label: 'Drawing',
		help: 'a side profile from a file or a list, straight edges only; it stands in for the corners.',
	}),
});

const mouth = (which: string) =>
	z.strictObject({
		width: field(size, {
			label: `Width at the ${which}`,
			help: 'from left to right.',
		}),
		height: field(size, {
			label: `Height at the ${which}`,
			help: 'from bottom to top.',
		}),
	});

const tapered = z.strictObject({
	kind: z.literal('tapered'),
	front: field(mouth('front'), { label: 'Front' }),
	back: field(mouth('back'), { label: 'Back' }),
	depth,
	rise: field(position.nullable().default(null), {
		label: 'Rise',
		help: 'how far the lower edge of the back stands above that of the front. Empty: centred. 0: level bottom.',
	}),
	shift: field(position.nullable().default(null), {
		label: 'Shift',
		help: 'how far the left edge of the back lies to the right of that of the front. Empty: centred.',
	}),
});

export const boxShape = z.discriminatedUnion('kind', [
	plain,
	slanted,
	stepped,
	truncated,
	free,
	tapered,
]);

/**
 * The dimension a target volume may change. 'depth' of a slanted box moves both depths alike, so
 * the slant keeps its angle.
 */
export const solvedDimension = z.enum(['width', 'height', 'depth']);

export type BoxShape = z.output<typeof boxShape>;
export type ShapeOf<K extends BoxShape['kind']> = Extract<BoxShape, { kind: K }>;
export type Dimension = z.output<typeof solvedDimension>;
