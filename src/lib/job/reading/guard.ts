import type { Problem, Path } from '../problems';

/** Far past any real job; a file beyond them is broken or made to do harm. */
const DEEPEST = 40;
const MOST_VALUES = 400_000;
const MOST_ENTRIES = 10_000;
const LONGEST_TEXT = 20_000;
/**
 * A drawing is carried whole in the `text` of its outline: 100,000 lines of it take some millions
 * of characters.
 */
const LONGEST_DRAWING = 40_000_000;
/** The schema refuses one of more than it takes, and says so at its place. */
const LONGEST_PICTURE = 2_000_000;

/** Keys that would reach into the workings of the language instead of the job. */
const HARMFUL = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Refuses a value that is no plain tree of a bearable size, before anything else looks at it: too
 * deep, too many values, loops, harmful keys, things JSON cannot hold. Walks with its own stack, so
 * depth cannot crash it. Null when it may be read.
 */
export function guard(file: unknown): Problem | null {
	if (!isRecord(file)) {
		return stop(
			[],
			`The file holds ${article(file)}, not a job.`,
			'A job file holds one object: { … }.',
		);
	}
	const above = new Set<object>();
	const stack: Visit[] = [{ value: file, path: [] }];
	let seen = 0;
	for (let visit = stack.pop(); visit; visit = stack.pop()) {
		if (visit.leave) {
			above.delete(visit.leave);
			continue;
		}
		if (++seen > MOST_VALUES) {
			return stop(
				[],
				`The file holds more than ${MOST_VALUES} values.`,
				'Split the job into several files.',
			);
		}
		const fault = faultOf(visit, above);
		if (fault) return fault;
		if (typeof visit.value === 'object' && visit.value !== null)
			push(visit.value, visit.path, above, stack);
	}
	return null;
}

interface Visit {
	readonly value: unknown;
	readonly path: Path;
	/** Set on the way back up: this object is no longer above what is visited. */
	readonly leave?: object;
}

function push(value: object, path: Visit['path'], above: Set<object>, stack: Visit[]): void {
	above.add(value);
	stack.push({ value: null, path, leave: value });
	if (Array.isArray(value)) {
		for (let i = value.length - 1; i >= 0; i--) stack.push({ value: value[i], path: [...path, i] });
		return;
	}
	for (const key of Object.keys(value).reverse()) {
		stack.push({ value: (value as Record<string, unknown>)[key], path: [...path, key] });
	}
}

function faultOf({ value, path }: Visit, above: ReadonlySet<object>): Problem | null {
	const key = path.at(-1);
	if (typeof key === 'string' && HARMFUL.has(key)) {
		return stop(
			path,
			`The file has a field called "${key}", which no job has.`,
			'Take that field out.',
		);
	}
	if (path.length > DEEPEST) {
		return stop(
			path.slice(0, 4),
			`The file is nested more than ${DEEPEST} levels deep here.`,
			'No part of a job is nested that deep: take this out.',
		);
	}
	const longest = longestText(path);
	if (typeof value === 'string' && value.length > longest) {
		return stop(
			path,
			`This text has ${value.length} characters.`,
			`Keep a text under ${longest} characters.`,
		);
	}
	if (typeof value === 'object' && value !== null) {
		return objectFault(value, path, above);
	}
	const kind = typeof value;
	if (kind === 'function' || kind === 'symbol' || kind === 'bigint') {
		return stop(
			path,
			`A ${kind} stands here.`,
			'Use numbers, texts, true or false, lists and objects.',
		);
	}
	return null;
}

function longestText(path: Visit['path']): number {
	if (path.length === 2 && path[0] === 'pictures') return LONGEST_PICTURE;
	return path.at(-1) === 'text' ? LONGEST_DRAWING : LONGEST_TEXT;
}

function objectFault(
	value: object,
	path: Visit['path'],
	above: ReadonlySet<object>,
): Problem | null {
	if (above.has(value)) return stop(path, 'The file contains itself here.', 'Take this out.');
	const entries = Array.isArray(value) ? value.length : Object.keys(value).length;
	if (entries <= MOST_ENTRIES) return null;
	return stop(
		path,
		`${entries} entries stand here.`,
		`Keep every list under ${MOST_ENTRIES} entries.`,
	);
}

function isRecord(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function article(value: unknown): string {
	if (Array.isArray(value)) return 'a list';
	if (value === null || value === undefined) return 'nothing';
	return `a ${typeof value === 'string' ? 'text' : typeof value}`;
}

function stop(path: Path, what: string, fix: string): Problem {
	return { path, what, fix, kind: 'stop' };
}
