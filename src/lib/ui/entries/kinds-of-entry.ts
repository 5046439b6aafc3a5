import type { Choice, Entry, Refers, Simple } from './entry';

/** Does this entry fit one field? */
export function isPlain(entry: Entry): entry is Simple | Choice | Refers {
	return !['group', 'list', 'kinds', 'boards'].includes(entry.kind);
}

/** Is it an x and y, in this order, and perhaps a bulge: a corner that a table of corners shows? */
export function isCorner(entry: Entry): boolean {
	if (entry.kind !== 'group') return false;
	const keys = entry.fields.map((f) => f.key);
	return keys[0] === 'x' && keys[1] === 'y' && entry.fields.every((f) => isPlain(f.entry));
}
