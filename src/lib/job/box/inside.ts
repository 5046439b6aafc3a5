import { z } from '../zod';
import { boardKey, thingName } from './fields';
import { distanceField, id, percent, size } from '../fields';

const across = (words: string) =>
	z.enum(['width', 'height', 'depth']).default('width').describe(words);
const material = id.optional().describe('Board: its material; the one of the box when empty.');

/** A solid wall that makes two chambers of one. */
export const divider = z.strictObject({
	across: across('Divides: the width (upright, end to end), the height (a shelf) or the depth.'),
	at: size.describe(
		'Place: from the inside of the left end, the bottom or the front to the near face of the divider.',
	),
	only: z
		.number()
		.int()
		.min(1)
		.max(8)
		.nullable()
		.default(null)
		.describe(
			'Only in chamber: the chamber it divides, as numbered by the dividers before it. Empty: all it meets.',
		),
	material,
});

const window = z.strictObject({
	kind: z.literal('window'),
	name: thingName,
	across: across('Stands across: the width (a frame like the ends), the height or the depth.'),
	at: size.describe(
		'Place: from the inside of the left end, the bottom or the front to the middle of the brace.',
	),
	rim: size.prefault(50).describe('Rim: width of board left round the windows.'),
	windows: z
		.number()
		.int()
		.min(1)
		.max(4)
		.default(1)
		.describe('Windows: side by side, a rim between them.'),
	material,
});

const shelf = z.strictObject({
	kind: z.literal('shelf'),
	name: thingName,
	across: z
		.enum(['height', 'depth'])
		.default('height')
		.describe('Stands across: the height or the depth.'),
	at: size.describe(
		'Place: from the inside of the bottom or the front to the middle of the shelf.',
	),
	from: distanceField.prefault(0).describe('Starts: distance from the inside of the left end.'),
	length: size.describe('Length: along the width.'),
	material,
});

const dowel = z.strictObject({
	kind: z.literal('dowel'),
	name: thingName,
	along: across('Runs along: the width, the height or the depth, from wall to wall.'),
	diameter: size.describe('Diameter: of the rod.'),
	a: size.describe(
		'Place: from the left end inside, or from the front when it runs along the width.',
	),
	b: size.describe('Height: from the bottom inside; from the front inside when it runs upright.'),
});

export const brace = z.discriminatedUnion('kind', [window, shelf, dowel]);

/** Strips glued in the corners. The corner's own angle is ripped on them. */
export const cleats = z.strictObject({
	width: size
		.prefault(30)
		.describe(
			'Cleat width: of the face that lies on the board; its thickness is that of its board.',
		),
	where: z
		.enum(['corners', 'ends', 'both'])
		.default('both')
		.describe('Where: in the corners of the profile, round the ends, or both.'),
	material,
});

/** One more layer glued to a board. */
export const doubler = z.strictObject({
	board: boardKey.default('front').describe('Board: the one made thicker.'),
	side: z
		.enum(['inside', 'outside'])
		.default('inside')
		.describe('Side: glued on inside or outside.'),
	layers: z
		.number()
		.int()
		.min(1)
		.max(3)
		.default(1)
		.describe('Layers: one doubles it, two make it triple.'),
	material,
});

export const lining = z.strictObject({
	thickness: size.describe('Thickness: of the lining as it lies.'),
	boards: z
		.array(boardKey)
		.max(24)
		.default([])
		.describe('Boards: lined inside. None named: all but the one with the drivers.'),
	solid: percent
		.max(100)
		.default(10)
		.describe(
			'Solid share: how much of the lining is not air, per cent; soft fibre about 5, dense felt up to 100.',
		),
});

export const stuffing = z.strictObject({
	fill: percent
		.max(100)
		.default(100)
		.describe('Filled: share of the net volume that is stuffed loosely, per cent.'),
	credit: percent
		.default(15)
		.describe(
			'Credit: how much larger the box acts, per cent; never more than 25 is counted, and none with a vent.',
		),
});

export type Divider = z.output<typeof divider>;
export type Brace = z.output<typeof brace>;
export type Cleats = z.output<typeof cleats>;
export type Lining = z.output<typeof lining>;
export type Stuffing = z.output<typeof stuffing>;
