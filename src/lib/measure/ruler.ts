import { snap, ticks, TICKS_PER_INCH, TICKS_PER_MM, type Length } from './length';
import type { Hand } from './reading';

/** The units that a ruler may have, in words. */
export const UNITS = { mm: 'millimetres', cm: 'centimetres', in: 'inches' } as const;

/**
 * How lengths are shown: the unit, the finest fraction of an inch (one over this), and the decimal
 * sign.
 */
export interface Ruler {
	readonly unit: 'mm' | 'cm' | 'in';
	readonly fraction: 16 | 32 | 64;
	readonly decimal: '.' | ',';
}

export interface Printed {
	readonly text: string;
	/**
	 * True when the length lies between two marks of the ruler and the text names the nearer one.
	 */
	readonly rounded: boolean;
}

/** A hundredth of a millimetre: the finest mark of the metric rulers. */
const FINEST = TICKS_PER_MM / 100;
/** What a tape and a fence can be set to. */
const BENCH = TICKS_PER_MM / 10;

/**
 * The length on this ruler, without its unit: `600`, `60,5`, `23 5/8`. Metric to 0.01 mm, inches to
 * the chosen fraction.
 */
export function printLength(l: Length, ruler: Ruler): Printed {
	return on(l, ruler, FINEST);
}

/** The same, metric only to 0.1 mm: for figures somebody sets a fence or a tape to. */
export function printForBench(l: Length, ruler: Ruler): Printed {
	return on(l, ruler, BENCH);
}

/**
 * With its unit, and with ≈ before a figure that was rounded to the ruler: `23 5/8 in`,
 * `≈ 600.08 mm`.
 */
export function showLength(l: Length, ruler: Ruler): string {
	const { text, rounded } = printLength(l, ruler);
	return `${rounded ? '≈ ' : ''}${text} ${ruler.unit}`;
}

/**
 * A length in the words of a message, with its unit: as {@link showLength}, but for millimetres,
 * where the nearest hundredth is near enough to stand as it is: `600.08 mm`.
 */
export function sayLength(l: number, ruler: Ruler): string {
	return sayLengths([l], ruler, '');
}

/** Several with one unit: `600 x 400 mm`, `≈ 23 5/8 x 15 3/4 in`. */
export function sayLengths(all: readonly number[], ruler: Ruler, by: string): string {
	if (all.some((l) => !Number.isSafeInteger(Math.round(l)))) return offGrid(all, ruler, by);
	if (ruler.unit === 'mm')
		return `${all.map((l) => showMm(l).replace('.', ruler.decimal)).join(by)} mm`;
	const printed = all.map((l) => printLength(snap(l), ruler));
	const near = printed.some((p) => p.rounded) ? '≈ ' : '';
	return `${near}${printed.map((p) => p.text).join(by)} ${ruler.unit}`;
}

/** What is past any ruler is told all the same, for a message says just that: `1e+300 in`. */
function offGrid(all: readonly number[], { unit, decimal }: Ruler, by: string): string {
	const per = { mm: TICKS_PER_MM, cm: 10 * TICKS_PER_MM, in: TICKS_PER_INCH }[unit];
	const text = (l: number): string => String(Number((l / per).toPrecision(6)));
	return `${all.map((l) => text(l).replace('.', decimal)).join(by)} ${unit}`;
}

/** Millimetres to the nearest hundredth, `12.5`: for the words of a message on that ruler. */
export function showMm(l: number): string {
	return String(Math.round(l / FINEST) / 100);
}

/** A limit from below, as {@link sayLength}: what is typed as it is said is not under it. */
export function sayLeast(l: number, ruler: Ruler): string {
	return sayLength(toMark(l, ruler, Math.ceil), ruler);
}

/** A limit from above, as {@link sayLength}: what is typed as it is said is not over it. */
export function sayMost(l: number, ruler: Ruler): string {
	return sayLength(toMark(l, ruler, Math.floor), ruler);
}

/** A limit from above in round figures: a whole millimetre, or as {@link sayMost} in inches. */
export function wholeMost(l: number, ruler: Ruler): string {
	return sayMost(ruler.unit === 'in' ? l : Math.floor(l / TICKS_PER_MM) * TICKS_PER_MM, ruler);
}

/** What lies between two limits, `3 to 5 mm`: neither end as it is said lies outside them. */
export function sayRange(from: number, to: number, ruler: Ruler): string {
	return sayLengths([toMark(from, ruler, Math.ceil), toMark(to, ruler, Math.floor)], ruler, ' to ');
}

function toMark(l: number, ruler: Ruler, round: (n: number) => number): number {
	if (ruler.unit === 'mm') return l; // a hundredth off hurts no limit
	const mark = markOf(ruler);
	return round(Math.round(l) / mark) * mark;
}

/** The text for a field that is edited: read again, it is the same length, to the tick. */
export function writeLength(l: Length, ruler: Ruler): string {
	const { text, rounded } = printLength(l, ruler);
	if (!rounded) return text;
	const decimals = ruler.unit === 'mm' ? 4 : 5;
	return decimal((l / ticksPer(ruler.unit)).toFixed(decimals), ruler);
}

/** The hand that reads what this ruler prints. */
export function handOf(ruler: Ruler): Hand {
	return { unit: ruler.unit, decimal: ruler.decimal };
}

/** A ruler, as fine as there is one, to answer in what was read by this hand. */
export function answeringRuler({ unit, decimal }: Hand): Ruler {
	return { unit: unit === 'm' ? 'mm' : unit, fraction: 64, decimal };
}

/** The finest mark of a ruler, in ticks; a metric one has them as close as is asked. */
function markOf({ unit, fraction }: Ruler, metric: number = FINEST): number {
	return unit === 'in' ? TICKS_PER_INCH / fraction : metric;
}

function on(l: Length, ruler: Ruler, step: number): Printed {
	const mark = markOf(ruler, step);
	const marks = Math.sign(l) * Math.round(Math.abs(l) / mark);
	const shown = ticks(marks * mark);
	const text = ruler.unit === 'in' ? inchText(marks, ruler.fraction) : metricText(shown, ruler);
	return { text, rounded: shown !== l };
}

function metricText(shown: Length, ruler: Ruler): string {
	const places = ruler.unit === 'cm' ? 3 : 2;
	return decimal((shown / ticksPer(ruler.unit)).toFixed(places), ruler);
}

/** Shortest form: no trailing zeros, the ruler's decimal sign. */
function decimal(fixed: string, ruler: Ruler): string {
	return fixed.replace(/\.?0+$/, '').replace('.', ruler.decimal);
}

/** `23 5/8`, `5/8`, `-3 1/2`, `0`. */
function inchText(marks: number, fraction: number): string {
	const size = Math.abs(marks);
	const units = Math.floor(size / fraction);
	let top = size % fraction;
	let under = fraction;
	while (top > 0 && top % 2 === 0) {
		top /= 2;
		under /= 2;
	}
	const words = [units > 0 || top === 0 ? String(units) : '', top > 0 ? `${top}/${under}` : ''];
	return (marks < 0 ? '-' : '') + words.filter((word) => word !== '').join(' ');
}

function ticksPer(unit: Ruler['unit']): number {
	return unit === 'in' ? TICKS_PER_INCH : unit === 'cm' ? 10 * TICKS_PER_MM : TICKS_PER_MM;
}
