import { insideOf, ITSELF, listIn, ticksIn } from './names';
import { kindOfRegister } from './shape';
import type { RegisterEdit, SharedDocument } from './shared-document';

/*
 * One's own edits are taken back register by register, and only where a register still says what
 * the edit made of it: what another window wrote over it since stays.
 */

/** Two goes at one field are one: from what the first found to what the second left. */
export function joined(
	first: readonly RegisterEdit[],
	second: readonly RegisterEdit[],
): RegisterEdit[] {
	const all = new Map<string, RegisterEdit>();
	for (const edit of [...first, ...second]) {
		const [map, key, from, to] = edit;
		const place = JSON.stringify([map, key]);
		const earlier = all.get(place);
		all.set(place, earlier ? [map, key, earlier[2], to] : [map, key, from, to]);
	}
	return [...all.values()].filter(([, , from, to]) => from !== to);
}

/**
 * Takes the edits back, as one update.
 *
 * @returns the edits that this came to; taken back themselves, they do it all again
 */
export function takeBack(doc: SharedDocument, edits: readonly RegisterEdit[]): RegisterEdit[] {
	return doc.together(() => {
		const made: RegisterEdit[] = [];
		for (const [map, key, from, to] of edits.toReversed()) {
			if (doc.register(map, key) !== to || isStillUsed(doc, [map, key, from, to])) continue;
			const edit = doc.put(map, key, from);
			if (edit) made.push(edit);
		}
		return made;
	});
}

/**
 * A list or an object that was begun here, and by others too, or that others have put something
 * into, is not theirs to lose: it goes only when it is empty.
 */
function isStillUsed(doc: SharedDocument, [map, key, from, to]: RegisterEdit): boolean {
	if (to === null || (from !== null && from !== '=[]')) return false;
	switch (kindOfRegister(to)) {
		case '[':
			return doc.keys(listIn(map, key)).length > 0;
		case '#':
			return doc.keys(ticksIn(map, key)).length > 0;
		case '{':
			return doc.keys(insideOf(map, key, to.slice(1))).some((field) => field !== ITSELF);
		case '=':
		case null:
			return false;
	}
}
