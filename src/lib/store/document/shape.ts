import { keyOfField } from './names';

/*
 * How the parts of a job merge. Plain values stand whole in one register; objects go field by
 * field; lists of things by hidden marks. What is said here beyond that is what a merge of single
 * fields would spoil.
 */

/**
 * Fields that hold one of several forms told apart by a tag. Where two devices choose different
 * forms one of them wins whole: fields of both together would be neither. A list named here holds
 * such things.
 */
export const FORMS: ReadonlySet<string> = new Set([
	...['profit', 'shape', 'lean', 'drawing', 'cutout', 'seat', 'vents', 'goal'],
	...['braces', 'screwHoles', 'opening', 'lift', 'hole'],
]);
/** The tags themselves. */
export const TAGS = ['kind', 'by'] as const;

/** Lists whose order and figures only mean something together: outlines, layouts as printed. */
const WHOLE: ReadonlySet<string> = new Set([
	'outline',
	'points',
	'placed',
	'cuts',
	'gives',
	'holes',
]);
/** These are such lists where they hold points without marks, and lists of things elsewhere. */
const POINTED: ReadonlySet<string> = new Set(['corners', 'offcuts']);

type Thing = Readonly<Record<string, unknown>>;

/**
 * What a register says of its value: `=` and the value itself as JSON; `{` and the tag of an
 * object; `[` for a list of things; `#` for the ticks of cuts.
 */
export type RegisterKind = '=' | '{' | '[' | '#';

/**
 * The text for a value in the field (or list) of this name.
 *
 * @param now what the register says so far: a list that has run empty stays a list, so that what
 *   another device puts into it is not lost
 */
export function registerFor(name: string, value: unknown, now: string | null): string {
	if (Array.isArray(value)) {
		if (value.length === 0) return now === '[' ? '[' : '=[]';
		return value.every(isThing) && !isWhole(name, value) ? '[' : jsonOf(value);
	}
	if (!isThing(value)) return jsonOf(value);
	if (name === 'ticked' && isTicks(value)) return '#';
	return `{${FORMS.has(name) ? tagOf(value) : ''}`;
}

export const kindOfRegister = (text: string): RegisterKind | null =>
	['=', '{', '[', '#'].includes(text[0] ?? '') ? (text[0] as RegisterKind) : null;

export function isThing(value: unknown): value is Thing {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A value whole. Anything JSON has no word for becomes what JSON makes of it. */
export function jsonOf(value: unknown): string {
	return `=${JSON.stringify(value) ?? 'null'}`;
}

/** Without a tag, forms are told apart by their fields. */
function tagOf(value: Thing): string {
	for (const tag of TAGS) {
		const word = Object.hasOwn(value, tag) ? value[tag] : undefined;
		if (typeof word === 'string') return keyOfField(word.slice(0, 60));
	}
	return '';
}

function isWhole(name: string, list: readonly Thing[]): boolean {
	if (WHOLE.has(name)) return true;
	const isPoint = (item: Thing): boolean => 'x' in item && 'y' in item && !('id' in item);
	return POINTED.has(name) && list.every(isPoint);
}

/** Numbers of cuts by the key of their layout, each list rising and none empty. */
function isTicks(value: Thing): value is Readonly<Record<string, readonly number[]>> {
	return Object.values(value).every(
		(list) =>
			Array.isArray(list) &&
			list.length > 0 &&
			list.every(
				(n, i) => Number.isSafeInteger(n) && !Object.is(n, -0) && (i === 0 || n > list[i - 1]),
			),
	);
}
