import { whole, type Ratio } from './ratio';
import type { Reading } from './reading';

/** Where reading stands in a text, and how its decimals are written. */
export interface Scan {
	readonly text: string;
	readonly decimal: '.' | ',';
	at: number;
}

/** Why a text is refused; thrown inside a reader and turned into a Reading at its door. */
export class Refusal extends Error {
	constructor(
		readonly what: string,
		readonly fix: string,
	) {
		super(what);
	}
}

/** The door of every reader: a refusal inside becomes the Reading that says so. */
export function answer<T>(read: () => T): Reading<T> {
	try {
		return { ok: true, value: read() };
	} catch (refusal) {
		if (refusal instanceof Refusal) return { ok: false, what: refusal.what, fix: refusal.fix };
		throw refusal;
	}
}

const VULGAR = /[¼-¾⅐-⅞]/g;

/** One spelling for the many a keyboard offers: 5½ is 5 1/2, ′ is ', × is *, − is -. */
export function plain(text: string): string {
	return text
		.replace(/(\d)(?=[¼-¾⅐-⅞])/g, '$1 ')
		.replace(VULGAR, (mark) => mark.normalize('NFKC'))
		.replace(/\u2044/g, '/')
		.replace(/[\u2032\u2018\u2019\u02B9\u00B4`]/g, "'")
		.replace(/[\u2033\u201C\u201D\u201E\u02BA]|''/g, '"')
		.replace(/[×·✕]/g, '*')
		.replace(/[\u2010-\u2015\u2212]/g, '-')
		.trim();
}

/** Takes what matches at this place (a sticky pattern), or null. */
export function take(scan: Scan, pattern: RegExp): RegExpExecArray | null {
	pattern.lastIndex = scan.at;
	const found = pattern.exec(scan.text);
	if (found) scan.at = pattern.lastIndex;
	return found;
}

export const skipSpace = (scan: Scan): void => void take(scan, /\s*/y);
export const ended = (scan: Scan): boolean => scan.at >= scan.text.length;

/** `23`, `2.5`, `.5`, `5/8`, `23 5/8` or `23-5/8`; null when no number stands here. */
export function takeNumber(scan: Scan): Ratio | null {
	const mixed = take(scan, /(\d+)(?:\s+|-)(\d+)\s*\/\s*(\d+)/y);
	if (mixed) return mixedNumber(mixed);
	const fraction = take(scan, /(\d+)\s*\/\s*(\d+)/y);
	if (fraction) return { n: BigInt(fraction[1]!), d: bottom(fraction[2]!, fraction[0]) };
	return takeDecimal(scan);
}

function mixedNumber([seen, units, top, under]: RegExpExecArray): Ratio {
	const d = bottom(under!, seen);
	const n = BigInt(top!);
	if (n >= d) {
		throw new Refusal(
			`"${seen}" has a fraction of a whole or more after its whole number.`,
			'Write the fraction below one, such as 23 5/8.',
		);
	}
	return { n: BigInt(units!) * d + n, d };
}

function bottom(digits: string, seen: string): bigint {
	const d = BigInt(digits);
	if (d === 0n) throw new Refusal(`"${seen}" divides by nothing.`, 'Write a fraction such as 5/8.');
	return d;
}

function takeDecimal(scan: Scan): Ratio | null {
	const found = take(scan, /\d+(?:[.,]\d*)*|[.,]\d+/y);
	if (!found) return null;
	const seen = found[0];
	const other = scan.decimal === '.' ? ',' : '.';
	if (seen.includes(other)) throw wrongSign(seen, scan.decimal);
	const [units = '', decimals = '', more] = seen.split(scan.decimal);
	if (more !== undefined) {
		throw new Refusal(`"${seen}" has more than one decimal sign.`, 'Keep one decimal sign.');
	}
	if (decimals === '') return whole(BigInt(units));
	return { n: BigInt(units + decimals), d: 10n ** BigInt(decimals.length) };
}

/** A comma may part thousands or decimals: the planner never guesses which. */
function wrongSign(seen: string, decimal: '.' | ','): Refusal {
	const [said, set, other] = decimal === '.' ? ['comma', 'point', ','] : ['point', 'comma', '.'];
	const one = seen.split(other).length === 2 && !seen.includes(decimal);
	const right = one ? seen.replace(other, decimal) : seen.replaceAll(other, '');
	return new Refusal(
		`"${seen}" has a ${said}, but decimals are written with a ${set} here.`,
		`Write ${right.endsWith(decimal) ? right.slice(0, -1) : right}, with no sign between thousands, or change the ruler's decimal sign.`,
	);
}
