import {
	mm,
	toMm,
	type Length,
	readLength,
	type Hand,
	type Reading,
	handOf,
	writeLength,
	type Ruler,
} from '../../measure';

/*
 * Between what a person types and what a job file holds. A file reads bare numbers as millimetres
 * with a decimal point, whatever ruler is on the screen; what is typed must come out of the file as
 * the same length, or be refused by it too.
 */

const FILE: Hand = { unit: 'mm', decimal: '.' };

/**
 * Follows a text that this ruler refuses but a file would take for something else ('1.5' under a
 * decimal comma).
 */
const REFUSED = ' ?';

/**
 * What goes into the file for a text: a number of millimetres, a text with its unit, or the text as
 * it is when it is wrong.
 */
export function storeLength(text: string, ruler: Ruler): number | string {
	const typed = text.trim();
	const reading = readLength(typed, handOf(ruler));
	const inFile = readLength(typed, FILE);
	if (!reading.ok) return inFile.ok ? typed + REFUSED : typed;
	if (inFile.ok && inFile.value === reading.value) return bareNumber(typed) ?? typed;
	const named = `${typed} ${ruler.unit}`;
	const withUnit = readLength(named, FILE);
	return withUnit.ok && withUnit.value === reading.value ? named : toMm(reading.value);
}

function bareNumber(text: string): number | null {
	return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : null;
}

/** The text of a field for what the file holds; typed again, it stores the same length. */
export function showStored(stored: unknown, ruler: Ruler): string {
	if (stored === undefined || stored === null) return '';
	if (typeof stored === 'number') {
		return Number.isFinite(stored) ? writeLength(mm(clamp(stored)), ruler) : String(stored);
	}
	const text = String(stored);
	if (text.endsWith(REFUSED)) return text.slice(0, -REFUSED.length);
	const inFile = readLength(text, FILE);
	if (!inFile.ok) return text;
	const bare = text.endsWith(` ${ruler.unit}`) ? text.slice(0, -ruler.unit.length - 1) : text;
	for (const way of [bare, text]) {
		const here = readLength(way, handOf(ruler));
		if (here.ok && here.value === inFile.value) return way;
	}
	return writeLength(inFile.value, ruler);
}

/** What the file's value is read as, the way the schema does. */
export function lengthStored(stored: unknown): Reading<Length> | null {
	if (typeof stored === 'number' && Number.isFinite(stored)) {
		return { ok: true, value: mm(clamp(stored)) };
	}
	return typeof stored === 'string' ? readLength(stored, FILE) : null;
}

/** '= 395.2' beside a sum or another unit; '' when the text is the plain figure already. */
export function resultOf(text: string, ruler: Ruler): string {
	const reading = readLength(text, handOf(ruler));
	if (!reading.ok) return '';
	const figure = writeLength(reading.value, ruler);
	return text.trim() === figure ? '' : `= ${figure}`;
}

function clamp(n: number): number {
	return Math.min(Math.max(n, -1e9), 1e9);
}
