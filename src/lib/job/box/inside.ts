import { field, noted, z } from '../zod';
import { boardKey, thingName } from './fields';
import { distanceField, id, percent, size } from '../fields';

const ACROSS = { width: 'the width', height: 'the height', depth: 'the depth' };
const across = (label: string, help: string) =>
	field(z.enum(['width', 'height', 'depth']).default('width'), {
		label,
		help,
		options: ACROSS,
	});
const material = field(id.optional(), {
	label: 'Board',
	help: 'its material; the one of the box when empty.',
	refersTo: 'materials',
});

/** A solid wall that makes two chambers of one. */
export const divider = z.strictObject({
	across: across('Divides', 'the width (upright, end to end), the height (a shelf) or the depth.'),
	at: field(size, {
		label: 'Place',
		help: 'from the inside of the left end, the bottom or the front to the near face of the divider.',
	}),
	only: field(z.number().int().min(1).max(8).nullable().default(null), {
		label: 'Only in chamber',
		help: 'the chamber it divides, as numbered by the dividers before it. Empty: all it meets.',
	}),
	material,
});

const window = z.strictObject({
	kind: z.literal('window'),
	name: thingName,
	across: across('Stands across', 'the width (a frame like the ends), the height or the depth.'),
	at: field(size, {
		label: 'Place',
		help: 'from the inside of the left end, the bottom or the front to the middle of the brace.',
	}),
	rim: field(size.prefault(50), { label: 'Rim', help: 'width of board left round the windows.' }),
	windows: field(z.number().int().min(1).max(4).default(1), {
		label: 'Windows',
		help: 'side by side, a rim between them.',
	}),
	material,
});

const shelf = z.strictObject({
	kind: z.literal('shelf'),
	name: thingName,
	across: field(z.enum(['height', 'depth']).default('height'), {
		label: 'Stands across',
		options: { height: ACROSS.height, depth: ACROSS.depth },
		help: 'the height or the depth.',
	}),
	at: field(size, {
		label: 'Place',
		help: 'from the inside of the bottom or the front to the middle of the shelf.',
	}),
	from: field(distanceField.prefault(0), {
		label: 'Starts',
		help: 'distance from the inside of the left end.',
	}),
	length: field(size, { label: 'Length', help: 'along the width.' }),
	material,
});

const dowel = z.strictObject({
	kind: z.literal('dowel'),
	name: thingName,
	along: across('Runs along', 'the width, the height or the depth, from wall to wall.'),
	diameter: field(size, { label: 'Diameter', help: 'of the rod.' }),
	a: field(size, {
		label: 'Place',
		help: 'from the left end inside, or from the front when it runs along the width.',
	}),
	b: field(size, {
		label: 'Height',
		help: 'from the bottom inside; from the front inside when it runs upright.',
	}),
});

export const brace = noted(z.discriminatedUnion('kind', [window, shelf, dowel]), {
	options: { dowel: 'rod' },
});

/** Strips glued in the corners. The corner's own angle is ripped on them. */
export const cleats = z.strictObject({
	width: field(size.prefault(30), {
		label: 'Cleat width',
		help: 'of the face that lies on the board; its thickness is that of its board.',
	}),
	where: field(z.enum(['corners', 'ends', 'both']).default('both'), {
		label: 'Where',
		help: 'in the corners of the profile, round the ends, or both.',
	}),
	material,
});

/** One more layer glued to a board. */
export const doubler = z.strictObject({
	board: field(boardKey.default('front'), { label: 'Board', help: 'the one made thicker.' }),
	side: field(z.enum(['inside', 'outside']).default('inside'), {
		label: 'Side',
		help: 'glued on inside or outside.',
	}),
	layers: field(z.number().int().min(1).max(3).default(1), {
		label: 'Layers',
		help: 'one doubles it, two make it triple.',
	}),
	material,
});

export const lining = z.strictObject({
	thickness: field(size, { label: 'Thickness', help: 'of the lining as it lies.' }),
	boards: field(z.array(boardKey).max(24).default([]), {
		label: 'Boards',
		help: 'lined inside. None named: all but the one with the drivers.',
	}),
	solid: field(percent.max(100).default(10), {
		label: 'Solid share',
		help: 'how much of the lining is not air, per cent; soft fibre about 5, dense felt up to 100.',
	}),
});

export const stuffing = z.strictObject({
	fill: field(percent.max(100).default(100), {
		label: 'Filled',
		help: 'share of the net volume that is stuffed loosely, per cent.',
	}),
	credit: field(percent.default(15), {
		label: 'Credit',
		help: 'how much larger the box acts, per cent; never more than 25 is counted, and none with a vent.',
	}),
});

export type Divider = z.output<typeof divider>;
export type Brace = z.output<typeof brace>;
export type Cleats = z.output<typeof cleats>;
export type Lining = z.output<typeof lining>;
export type Stuffing = z.output<typeof stuffing>;
