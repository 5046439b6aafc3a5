import { field, noted, z } from './zod';
import { mm, toMm, type Length, minorUnits, money, readLength } from '../measure';

/*
 * The fields every part of a job is made of. In a file a length is a number of millimetres or a
 * text with its unit ('23 5/8 in'); read, it is a Length on the grid. Each refusal says what was
 * seen and what would be right.
 */

/**
 * The longest length the planner takes for anything: 100 m, far past any sheet, short of a slipped
 * unit.
 */
const LONGEST = mm(100_000);

/** Past this a number of millimetres is no whole number of ticks any more. */
const UNREADABLE = 1e9;

function toLength(seen: number | string, ctx: z.RefinementCtx): Length {
	if (typeof seen === 'number' && Math.abs(seen) > UNREADABLE) {
		const message = `${seen} mm is out of reach.|Give a length of at most ${toMm(LONGEST)} mm.`;
		ctx.addIssue({ code: 'custom', message, params: { lengths: [-toMm(LONGEST), toMm(LONGEST)] } });
		return z.NEVER;
	}
	const reading =
		typeof seen === 'number'
			? { ok: true as const, value: mm(seen) }
			: readLength(seen, { unit: 'mm', decimal: '.' });
	if (!reading.ok) {
		ctx.addIssue({ code: 'custom', message: `${reading.what}|${reading.fix}` });
		return z.NEVER;
	}
	return reading.value;
}

/** A length between two limits given in millimetres (inclusive). */
export function lengthBetween(low: number, high: number) {
	const length = z
		.union([z.number(), z.string().max(60)])
		.transform(toLength)
		.refine((l) => l >= mm(low) && l <= mm(high), {
			error: (issue) =>
				`${shown(issue.input)} is out of reach.|Give a length from ${low} to ${high} mm.`,
			params: { lengths: [low, high] },
		});
	return noted(length, { edit: 'length' });
}

function shown(seen: unknown): string {
	return typeof seen === 'number' ? `${toMm(seen)} mm` : 'This';
}

/** More than nothing, at most 100 m. */
export const size = lengthBetween(0.01, toMm(LONGEST));
/** Nothing or more, at most 100 m. */
export const distanceField = lengthBetween(0, toMm(LONGEST));
/** Any place along an axis. */
export const position = lengthBetween(-toMm(LONGEST), toMm(LONGEST));

/**
 * A mark: the thing's own as it is; one that names another thing says by `refersTo` in which list
 * that one stands.
 */
export const id = field(
	z
		.string()
		.regex(
			/^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$/,
			'This is no mark.|Use up to 40 letters, digits, dots or dashes.',
		),
	{ label: 'Mark', edit: 'mark' },
);
export const name = field(z.string().trim().min(1, 'The name is empty.|Give it a name.').max(120), {
	label: 'Name',
});
export const note = field(z.string().max(4000), { label: 'Note', edit: 'note' });
export const count = z.number().int().min(1).max(10_000);
export const owned = z.number().int().min(0).max(100_000);
export const degreesField = (low: number, high: number) => z.number().min(low).max(high);
export const percent = z.number().min(0).max(1000);

/** What a job is priced in that names no currency. */
export const USUAL_CURRENCY = 'EUR';

/** An amount as a file holds it, in the currency itself; read, whole minor units of it. */
export function amountIn(currency: string) {
	const perMajor = minorUnits(currency);
	const amount = z
		.number()
		.min(0)
		.max(1e7)
		.transform((major) => money(major * perMajor));
	return noted(amount, { edit: 'money' });
}

/** An amount in the usual currency. */
export const amount = amountIn(USUAL_CURRENCY);

export type AmountField = ReturnType<typeof amountIn>;

/* What choices are called that are made in more than one place. */
export const DECIMALS = { '.': 'point: 1.5', ',': 'comma: 1,5' };
export const PAPERS = { a4: 'A4', letter: 'Letter' };
