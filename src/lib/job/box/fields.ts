import { field, noted, z } from '../zod';
import { distanceField, name } from '../fields';
import { toLitres } from '../../measure';

/* Small fields only boxes use. */

/** The words a person may write for a unit of volume. */
const UNITS = new Map<string, 'L' | 'ft3' | 'in3'>([
	...(['l', 'litre', 'litres'] as const).map((word) => [word, 'L'] as const),
	['ft3', 'ft3'],
	['ft³', 'ft3'],
	['in3', 'in3'],
	['in³', 'in3'],
]);

function readLitres(seen: string, ctx: z.RefinementCtx): number {
	const [, digits, unit] = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+[3³]?)\s*$/i.exec(seen) ?? [];
	const known = UNITS.get((unit ?? '').toLowerCase());
	if (digits === undefined || known === undefined) {
		ctx.addIssue({
			code: 'custom',
			message: `'${seen}' is no volume.|Write litres as a number, or a text such as '1.25 ft3' or '2160 in3'.`,
		});
		return z.NEVER;
	}
	return toLitres(Number(digits), known);
}

/** A volume between two limits given in litres; read, a number of litres. */
export function litresBetween(low: number, high: number) {
	const litres = z
		.union([z.number(), z.string().max(40).transform(readLitres)])
		.refine((l) => Number.isFinite(l) && l >= low && l <= high, {
			error: (issue) =>
				`${typeof issue.input === 'number' ? `${issue.input} L` : 'This'} is out of reach.|Give a volume from ${low} to ${high} L.`,
			params: { litres: [low, high] },
		});
	return noted(litres, { edit: 'volume' });
}

/**
 * The boards a person chooses from: those of every form, and as many sides as a profile commonly
 * has.
 */
const BOARDS = [
	...['front', 'back', 'top', 'bottom', 'left', 'right', 'step-face', 'step-top', 'cut'],
	...Array.from({ length: 12 }, (_, i) => `side-${i + 1}`),
];

/**
 * A board of a box by its place. A free profile numbers its sides from the first corner on:
 * 'side-1' leaves corner 1. Ends, dividers and braces have names of their own.
 */
export const boardKey = noted(
	z.string().regex(/^(front|back|top|bottom|left|right|step-face|step-top|cut|side-\d{1,2})$/, {
		error: ({ input }) =>
			`${/^divider-/.test(String(input)) ? 'A divider does not carry this: only drivers and tubes stand on one.' : 'This is no board of a box.'}|Use front, back, top, bottom, left, right, step-face, step-top, cut or side-1, side-2 and so on.`,
	}),
	{ options: Object.fromEntries(BOARDS.map((board) => [board, board.replaceAll('-', ' ')])) },
);

const SIDES = {
	far: 'away from the datum: to the right, up or to the back',
	near: 'towards the datum: to the left, down or to the front',
};

/** On which side of its divider a thing lies; of no effect on any other board. */
export const intoField = (label: string, what: string) =>
	field(z.enum(['far', 'near']).default('far'), {
		label,
		options: SIDES,
		help: `${what} Only of one on a divider.`,
	});

/** What carries a driver or a tube: a board of the form, or a divider by its number in the list. */
export const carrierKey = noted(
	z
		.string()
		.regex(
			/^(front|back|top|bottom|left|right|step-face|step-top|cut|side-\d{1,2}|divider-[1-7])$/,
			'This is no board of a box.|Use front, back, top, bottom, left, right, step-face, step-top, cut, side-1, side-2 and so on, or divider-1, divider-2 and so on.',
		),
	{
		options: Object.fromEntries(
			[...BOARDS, ...Array.from({ length: 7 }, (_, i) => `divider-${i + 1}`)].map((board) => [
				board,
				board.replaceAll('-', ' '),
			]),
		),
	},
);

/**
 * A place on the outside face of a board, measured from its lower left corner as seen from outside;
 * of a divider as seen from the left end, from the front or from above.
 */
export const spot = z
	.strictObject({
		across: field(distanceField.nullable().default(null), {
			label: 'Across',
			help: 'from the left edge of the board, seen from outside, to the centre. Empty: in the middle.',
		}),
		up: field(distanceField.nullable().default(null), {
			label: 'Up',
			help: 'from the lower edge of the board, along its face, to the centre. Empty: in the middle.',
		}),
	})
	.prefault({});

export const thingName = field(name.optional(), {
	label: 'Name',
	help: 'what it is called on the drawings.',
});

export type BoardKey = z.output<typeof boardKey>;
export type BoxSpot = z.output<typeof spot>;
