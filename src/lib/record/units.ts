import { z } from '../job';
import { toMm } from '../measure';

/*
 * Each figure of the plan file: how it is written, in which unit, and what is said of it. The plan
 * counts in ticks; the file, whatever the shop's ruler, in millimetres.
 */

/**
 * The fields of a thing of the plan, one for each and no other: the compiler asks for a new one
 * here as soon as the plan has it.
 */
export function fieldsOf<T extends object>() {
	return <S extends { readonly [K in keyof T]-?: z.ZodType }>(
		shape: S & Readonly<Record<Exclude<keyof S, keyof T>, never>>,
	): z.ZodObject<S, z.core.$strict> => z.strictObject<S>(shape);
}

/** Significant digits of a figure: far more than any saw, scale or tape has. */
const DIGITS = 12;

/**
 * A figure as it is written. Browsers and other engines work out angles, powers and logarithms each
 * in its own way, and differ in the last digits: those are left off, so that one job has one file.
 */
const told = (figure: number): number => Number(figure.toPrecision(DIGITS)) + 0; // no negative zero

const written = (convert: (seen: number) => number, unit: string, what: string) =>
	z
		.number()
		.transform((seen) => told(convert(seen)))
		.pipe(z.number())
		.describe(`${unit}: ${what}`);

/** A figure that may have no end, such as a room that nothing bounds: null in the file. */
export const orEndless = (unit: string, what: string) =>
	z
		.custom<number>((seen) => typeof seen === 'number' && !Number.isNaN(seen))
		.transform((seen) => (Number.isFinite(seen) ? told(seen) : null))
		.pipe(z.number().nullable())
		.describe(`${unit}: ${what}; null where it has no end`);

/** The same value written as it is, its unit told. */
const plain = (unit: string) => (what: string) => written((seen) => seen, unit, what);

export const millimetres = (what: string) => written(toMm, 'mm', what);
export const inLitres = plain('L');
export const inKg = plain('kg');
/** Grams in the plan, kilograms in the file like every mass. */
export const fromGrams = (what: string) => written((grams) => grams / 1000, 'kg', what);
export const inDegrees = plain('degrees');
export const inHertz = plain('Hz');
export const inMm2 = plain('mm2');
export const inCm2 = plain('cm2');
export const inPercent = plain('per cent');
export const inDecibels = plain('dB');
export const inWatts = plain('W');
export const inMetresASecond = plain('m/s');
/** A figure the plan keeps in millimetres, not on the grid. */
export const inPlainMm = plain('mm');
export const pure = plain('no unit');
export const howMany = (what: string) => z.number().int().describe(`count: ${what}`);
export const saying = (what: string) => z.string().describe(what);
export const yesNo = (what: string) => z.boolean().describe(what);
export const oneOf = <const W extends readonly [string, ...string[]]>(which: W, what: string) =>
	z.enum(which).describe(what);
export const listOf = <S extends z.ZodType>(item: S, what: string) => z.array(item).describe(what);

export const xy = z.strictObject({ x: millimetres('to the right'), y: millimetres('up') });
export const lineOf = (what: string) => listOf(xy, what);
const xyz = z.strictObject({
	x: millimetres('along the width of the box'),
	y: millimetres('from front to back'),
	z: millimetres('up'),
});

const corner = z.strictObject({
	x: millimetres('to the right'),
	y: millimetres('up'),
	bulge: pure(
		'of the side to the next corner: tangent of a quarter of the angle of its arc, counter-clockwise positive; absent for a straight side',
	).optional(),
});

/** A closed line, counter-clockwise. */
/** A line that may have arcs in it, open or closed. */
export const cornersOf = (what: string) => listOf(corner, what);
export const outlineOf = (what: string) =>
	cornersOf(`${what}; counter-clockwise, the last corner joins the first`);

const RECT = {
	x: millimetres('left side'),
	y: millimetres('lower side'),
	length: millimetres('along x'),
	width: millimetres('along y'),
};
export const rectOf = (what: string, more: z.ZodRawShape = {}) =>
	z.strictObject({ ...RECT, ...more }).describe(what);

export const sizes3 = (what: string) =>
	z
		.strictObject({
			width: millimetres('from end to end'),
			height: millimetres('up'),
			depth: millimetres('from front to back'),
		})
		.describe(what);

/** A body between two faces. */
export const bodyOf = (what: string) =>
	z
		.strictObject({
			outside: listOf(xyz, 'corners of the outside face'),
			inside: listOf(xyz, 'corners of the inside face, each across from one of the outside'),
		})
		.describe(`${what}, in the frame of the box`);

const direction = z.strictObject({ x: pure('share'), y: pure('share'), z: pure('share') });

/** Where a board is looked at. */
export const viewFrame = z.strictObject({
	at: xyz.describe('its origin, in the frame of the box'),
	u: direction.describe('to the right'),
	v: direction.describe('up'),
	n: direction.describe('towards the viewer'),
});
