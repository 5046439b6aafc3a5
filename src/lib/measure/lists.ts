/*
 * Places of a list that are known to hold something. Reading beside the list is a bug of ours and
 * says so at once, where a plain index would hand `undefined` on to a figure.
 */

/** Entry `i` of a list, from 0. Throws `bug:` where there is none. */
export function nth<T>(list: readonly T[], i: number): T {
	const entry = list[i];
	if (entry === undefined) beside(list.length, i);
	return entry;
}

/** The last entry. Throws `bug:` for an empty list. */
export function lastOf<T>(list: readonly T[]): T {
	return nth(list, list.length - 1);
}

/** The first entry that is the one meant. Throws `bug:` where none is. */
export function theOne<T>(list: readonly T[], isMeant: (entry: T) => boolean): T {
	const found = list.find(isMeant);
	if (found === undefined) throw new Error(`bug: not in a list of ${list.length}`);
	return found;
}

/**
 * Entry `i` counted round and round, as the corners of an outline are. Throws `bug:` for an empty
 * list.
 */
export function around<T>(list: readonly T[], i: number): T {
	const n = list.length;
	return nth(list, ((i % n) + n) % n);
}

function beside(length: number, i: number): never {
	throw new Error(`bug: no entry ${i} in a list of ${length}`);
}
