/**
 * What was, what is, what was undone. Snapshots share their unchanged parts, so a long history
 * costs little.
 */
export interface History<T> {
	readonly past: readonly Moment<T>[];
	readonly now: T;
	readonly future: readonly Moment<T>[];
	/** What the last change was to; changes to the same thing in one go are one step back. */
	readonly last: string | null;
}

export interface Moment<T> {
	readonly state: T;
	/** In words, for 'Undo: …'. */
	readonly what: string;
}

/** Steps kept; enough for a day at the bench. */
const DEPTH = 500;

export function begin<T>(now: T): History<T> {
	return { past: [], now, future: [], last: null };
}

/**
 * A history with one change more. Changes that carry the same `run` one after another (the letters
 * of one field) are one step; null always makes a step of its own.
 */
export function change<T>(h: History<T>, now: T, what: string, run: string | null): History<T> {
	if (now === h.now) return h;
	const goesOn = run !== null && run === h.last && h.past.length > 0;
	const past = goesOn ? h.past : [...h.past, { state: h.now, what }].slice(-DEPTH);
	return { past, now, future: [], last: run };
}

/** What is now said more fully, and no step of its own. */
export function amend<T>(h: History<T>, now: T): History<T> {
	return { ...h, now };
}

/** The run is over: the next change is a step of its own. */
export function settle<T>(h: History<T>): History<T> {
	return h.last === null ? h : { ...h, last: null };
}

export function undo<T>(h: History<T>): History<T> {
	const back = h.past.at(-1);
	if (!back) return h;
	const undone = { state: h.now, what: back.what };
	return { past: h.past.slice(0, -1), now: back.state, future: [...h.future, undone], last: null };
}

export function redo<T>(h: History<T>): History<T> {
	const on = h.future.at(-1);
	if (!on) return h;
	const done = { state: h.now, what: on.what };
	return { past: [...h.past, done], now: on.state, future: h.future.slice(0, -1), last: null };
}
