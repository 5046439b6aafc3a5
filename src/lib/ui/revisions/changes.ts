import { type Entry, JOB, type Field } from '../entries';
import type { JobFile } from '../../job';
import { type Manner, nameOf, valueWords } from './value-words';

/** One thing that is another in two states of a job, in plain words. */
export interface Change {
	/** Which thing: 'Bench box, Vent'; '' for the job itself. */
	readonly place: string;
	/** Which field of it: 'Width'. */
	readonly field: string;
	readonly before: string;
	readonly after: string;
}

/** Told as a whole: nobody reads the figures of a layout one by one. */
const WHOLE: ReadonlySet<string> = new Set([
	...['pinned', 'byHand', 'ticked', 'pulled', 'used', 'took'],
]);

type Row = Readonly<Record<string, unknown>>;

/** Where in the job a value stands, and the form that knows it, if one does. */
interface At {
	readonly entry: Entry | null;
	readonly label: string;
	readonly place: readonly string[];
	readonly manner: Manner;
}

/** What differs in two states of a job, in the order of its forms. */
export function changesBetween(before: JobFile, after: JobFile, manner: Manner): Change[] {
	return inValue({ entry: JOB, label: '', place: [], manner }, before, after);
}

function inValue(at: At, was: unknown, is: unknown): Change[] {
	const [old, now] = [filled(at.entry, was), filled(at.entry, is)];
	if (Object.is(old, now)) return [];
	if (Array.isArray(old) && Array.isArray(now)) return inList(at, old, now);
	if (isRow(old) && isRow(now) && isOneKind(at.entry, old, now)) return inRow(at, old, now);
	const [first, last] = [old, now].map((value) => valueWords(at.entry, value, at.manner));
	return [change(at, first ?? '', last ?? '')];
}

/** Two values whose words are alike are told apart all the same: a long text, a whole thing. */
function change({ place, label }: At, before: string, after: string): Change {
	const isAlike = before === after;
	return {
		place: place.join(', '),
		field: label,
		before,
		after: isAlike ? `${after}, changed` : after,
	};
}

function inRow(at: At, old: Row, now: Row): Change[] {
	const fields = fieldsOf(at.entry, now);
	const isTop = at.entry === JOB;
	const place = at.label === '' ? at.place : [...at.place, at.label];
	return [...keysOf(fields, old, now)].flatMap((key) => {
		const entry = entryOf(at.entry, fields, key);
		const inner = { ...at, entry, label: entry?.label || plainKey(key), place };
		return isTop && WHOLE.has(key)
			? inWhole(inner, old[key], now[key])
			: inValue(inner, old[key], now[key]);
	});
}

function inWhole(at: At, old: unknown, now: unknown): Change[] {
	const [first, last] = [old ?? null, now ?? null].map((value) => JSON.stringify(value));
	return first === last ? [] : [change(at, countOf(old), countOf(now))];
}

function inList(at: At, old: readonly unknown[], now: readonly unknown[]): Change[] {
	const entry = at.entry?.kind === 'list' ? at.entry.item : null;
	const found = paired(old, now).flatMap(({ was, is, n, name }) => {
		const thing = { ...at, entry, label: name || `${at.label} ${n + 1}` };
		if (was === undefined) return [change(thing, 'not there', 'added')];
		return is === undefined ? [change(thing, 'there', 'taken out')] : inValue(thing, was, is);
	});
	if (!isOrderOnly(old, now)) return found;
	const [first, last] = [old, now].map((things) => things.map(nameOf).join(', '));
	return [...found, change({ ...at, label: `${at.label}, order` }, first ?? '', last ?? '')];
}

const isRow = (value: unknown): value is Row =>
	typeof value === 'object' && value !== null && !Array.isArray(value);

/** What is left out of a file is as its form says. */
function filled(entry: Entry | null, value: unknown): unknown {
	return value === undefined && entry ? entry.fallback : value;
}

function isOneKind(entry: Entry | null, old: Row, now: Row): boolean {
	if (entry?.kind !== 'kinds') return true;
	return entry.ways.find((way) => way.is(old)) === entry.ways.find((way) => way.is(now));
}

/** The fields of the form of a thing as it is now. */
function fieldsOf(entry: Entry | null, now: Row): readonly Field[] {
	if (entry?.kind === 'group') return entry.fields;
	if (entry?.kind === 'kinds') return entry.ways.find((way) => way.is(now))?.entry?.fields ?? [];
	return [];
}

function keysOf(fields: readonly Field[], old: Row, now: Row): Set<string> {
	return new Set([
		...fields.map(({ key }) => String(key)),
		...Object.keys(old),
		...Object.keys(now),
	]);
}

function entryOf(entry: Entry | null, fields: readonly Field[], key: string): Entry | null {
	if (entry?.kind === 'boards') return { ...entry.item, label: plainKey(key) };
	return fields.find((field) => String(field.key) === key)?.entry ?? null;
}

/** 'sheetSize' -> 'Sheet size': for what no form has a word for. */
function plainKey(key: string): string {
	const words = key.replace(/([A-Z])/g, ' $1').toLowerCase();
	return words.charAt(0).toUpperCase() + words.slice(1);
}

interface Pair {
	readonly was: unknown;
	readonly is: unknown;
	readonly n: number;
	readonly name: string;
}

/** Things of two lists that are one and the same: by their marks where each has one of its own. */
function paired(old: readonly unknown[], now: readonly unknown[]): Pair[] {
	const [oldMarks, nowMarks] = [marksOf(old), marksOf(now)];
	if (!oldMarks || !nowMarks)
		return Array.from({ length: Math.max(old.length, now.length) }, (_, n) => ({
			...{ was: old[n], is: now[n], n },
			name: nameOf(now[n] ?? old[n]),
		}));
	const gone = old.flatMap((was, n): Pair[] =>
		nowMarks.includes(oldMarks[n] ?? '') ? [] : [{ was, is: undefined, n, name: nameOf(was) }],
	);
	const kept = now.map((is, n) => {
		const was = old[oldMarks.indexOf(nowMarks[n] ?? '')];
		return { was, is, n, name: nameOf(is) };
	});
	return [...gone, ...kept];
}

function marksOf(things: readonly unknown[]): string[] | null {
	const marks = things.map((thing) => (isRow(thing) ? thing['id'] : undefined));
	const texts = marks.filter((mark) => typeof mark === 'string');
	return texts.length === things.length && new Set(texts).size === texts.length ? texts : null;
}

/** Are the very same things in another order? */
function isOrderOnly(old: readonly unknown[], now: readonly unknown[]): boolean {
	const [oldMarks, nowMarks] = [marksOf(old), marksOf(now)];
	if (!oldMarks || !nowMarks || oldMarks.length !== nowMarks.length) return false;
	return oldMarks.join('\n') !== nowMarks.join('\n') && oldMarks.every((m) => nowMarks.includes(m));
}

function countOf(value: unknown): string {
	if (typeof value !== 'object' || value === null) return 'none';
	const { length } = Object.keys(value);
	return length === 0 ? 'none' : String(length);
}
