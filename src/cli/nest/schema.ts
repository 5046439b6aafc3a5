import { lengthBetween, z } from '../../lib/job';

/*
 * The plain nest problem as it stands in a file: lengths are numbers of millimetres or texts with a
 * unit.
 */

const size = lengthBetween(0.01, 100_000);
const distance = lengthBetween(0, 100_000);
const position = lengthBetween(-100_000, 100_000);

const mark = z.string().min(1, 'This is no mark.|Give it a mark.').max(200);
const count = z.number().int().min(0).max(100_000);
const outline = z
	.array(z.tuple([position, position]))
	.min(3)
	.max(2000);
/** The sides may be left out of a piece with an outline, which has them already. */
const sides = { length: size.optional(), width: size.optional() };

const sheet = z.strictObject({
	id: mark,
	length: size,
	width: size,
	price: z.number().min(0).max(1e7).default(0),
	count: count.nullable().default(null),
});

const piece = z.strictObject({
	id: mark,
	...sides,
	count: count.default(1),
	turns: z.enum(['any', 'half', 'none']).default('any'),
	outline: outline.optional(),
});

export const sheetsSchema = z.strictObject({
	nest: z.literal('sheets'),
	method: z.enum(['saw', 'router']).default('saw'),
	/** Width of one cut: the saw's kerf, the router's bit. */
	kerf: distance.prefault(0),
	/** First trim of each edge of each sheet. */
	trim: distance.prefault(0),
	stages: z.number().int().min(1).max(20).nullable().default(null),
	/** The smallest offcut worth keeping. */
	keep: z.strictObject({ length: size, width: size }).prefault({ length: 300, width: 150 }),
	sheets: z.array(sheet).max(2000),
	pieces: z.array(piece).max(5000),
});

const blank = z.strictObject({
	id: mark,
	...sides,
	count: count.default(1),
	/** As given only, unless other turns are listed: a nap does not forgive a guess. */
	turns: z
		.array(z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]))
		.min(1)
		.max(4)
		.default([0]),
	outline: outline.optional(),
});

const spot = z.strictObject({
	id: mark,
	x: distance,
	y: distance,
	turn: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]).default(0),
});

export const rollSchema = z.strictObject({
	nest: z.literal('roll'),
	width: size,
	gap: distance.prefault(0),
	/** The longest stretch there is; null for an endless roll. */
	limit: size.nullable().default(null),
	/** Pieces start on whole repeats of the pattern. */
	repeat: distance.prefault(0),
	pieces: z.array(blank).max(5000),
	/** Where every blank lies in a layout to go on from, for outlines. */
	start: z.array(spot).max(5000).optional(),
});

export type SheetsFile = z.output<typeof sheetsSchema>;
export type RollFile = z.output<typeof rollSchema>;
