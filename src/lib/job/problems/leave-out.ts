import { lastOf } from '../../measure';
import { valueAt } from './value-at';
import type { Path } from './problem';
/*
 * What a fault takes with it. The smallest thing that can be left out whole goes: a part, a box, a
 * sheet. A wrong corner takes its part along, since a part with one corner fewer is another part. A
 * wrong setting of the shop goes alone, and its default stands in.
 */

/**
 * Where each entry that is left stood in the file: 'stock.sheets' -> [0, 2, 3]. Lists nothing was
 * left out of are absent.
 */
export type Sources = Readonly<Record<string, readonly number[]>>;

/** The lists whose entries stand for themselves. */
const LISTS: readonly (readonly string[])[] = [
	['boxes'],
	['panels'],
	['parts'],
	['runs'],
	['photographs'],
	['pinned'],
	['byHand'],
	['pulled'],
	['used'],
	['took', 'times'],
	['took', 'materials'],
	['options'],
	['sent'],
	['shop', 'saws'],
	...['materials', 'sheets', 'offcuts', 'cloths', 'rolls', 'sundries', 'suppliers'].map((list) => [
		'stock',
		list,
	]),
];

/** The list entry a path leads into, as its list and index; null outside the lists. */
export function entryOf(
	path: Path,
): { readonly list: readonly string[]; readonly index: number } | null {
	const list = LISTS.find((keys) => keys.every((key, i) => path[i] === key));
	const index = list && path[list.length];
	return list && typeof index === 'number' ? { list, index } : null;
}

/** A path in what is left, as a path in the file that was read. */
export function pathInFile(sources: Sources, path: Path): Path {
	const entry = entryOf(path);
	const source = entry ? sources[entry.list.join('.')]?.[entry.index] : undefined;
	if (!entry || source === undefined) return path;
	return [...entry.list, source, ...path.slice(entry.list.length + 1)];
}

/**
 * Takes these entries and fields out of `tree`, which is changed, and returns the sources that
 * follow from it.
 */
export function leaveOut(tree: object, paths: readonly Path[], sources: Sources): Sources {
	const gone = new Map<readonly string[], Set<number>>();
	for (const path of paths) {
		const entry = entryOf(path);
		if (!entry) removeSetting(tree, path);
		else gone.set(entry.list, (gone.get(entry.list) ?? new Set()).add(entry.index));
	}
	const after: Record<string, readonly number[]> = { ...sources };
	for (const [list, indexes] of gone) {
		const entries = valueAt(tree, list);
		if (!Array.isArray(entries)) continue;
		const key = list.join('.');
		const was = after[key] ?? entries.map((_, i) => i);
		after[key] = was.filter((_, i) => !indexes.has(i));
		const left: unknown[] = entries.filter((_, i) => !indexes.has(i));
		entries.splice(0, entries.length, ...left);
	}
	return after;
}

/** Takes out one field of an object, wherever it stands. */
export function removeField(tree: object, path: Path): void {
	const holder = valueAt(tree, path.slice(0, -1));
	if (typeof holder === 'object' && holder !== null) Reflect.deleteProperty(holder, lastOf(path));
}

/** Puts a value in the place of a field of an object, wherever it stands. */
export function setField(tree: object, path: Path, value: unknown): void {
	const holder = valueAt(tree, path.slice(0, -1));
	if (typeof holder === 'object' && holder !== null) Reflect.set(holder, lastOf(path), value);
}

/** Cuts a list to its first `most` entries. */
export function shorten(tree: object, path: Path, most: number): void {
	const list = valueAt(tree, path);
	if (Array.isArray(list)) list.length = Math.min(list.length, most);
}

/**
 * A setting inside a list takes the whole list with it: no default could stand in for one entry. A
 * setting that is missing where one is needed takes what it belongs to.
 */
function removeSetting(tree: object, path: Path): void {
	const index = path.findIndex((step) => typeof step === 'number');
	let gone = index < 0 ? path : path.slice(0, index);
	while (gone.length > 1 && valueAt(tree, gone) === undefined) gone = gone.slice(0, -1);
	removeField(tree, gone);
}
