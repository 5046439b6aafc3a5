import { nth, type Ruler } from '../../measure';
import { z } from '../zod';
import { nearest, type Problem, type Path, inside, valueAt } from '../problems';
import { reachWords } from './reach';
import { knownKeys, schemaAt } from './schema-walk';

export type Issue = z.core.$ZodIssue;
type Words = readonly [what: string, fix: string];

/**
 * Every issue of a refused file as full sentences: what was seen, what would be right. Paths are
 * those of `file`. Limits are told on the ruler; null for millimetres and litres.
 */
export function problemsOf(
	issues: readonly Issue[],
	schema: z.ZodType,
	file: unknown,
	ruler: Ruler | null,
): Problem[] {
	return issues.flatMap((issue) =>
		issue.code === 'unrecognized_keys'
			? unknownKeys(issue, schema, file)
			: [problem(issue, file, ruler)],
	);
}

/** Where the issue lies: a file read from JSON has no symbols for keys. */
export function issuePath(issue: Pick<Issue, 'path'>): Path {
	return issue.path as Path;
}

function problem(issue: Issue, file: unknown, ruler: Ruler | null): Problem {
	const path = issuePath(issue);
	const [what, fix] = words(issue, valueAt(file, path), path, ruler);
	return { path, what, fix, kind: 'stop' };
}

/** Enough to see what kind of file it is. */
const MOST_UNKNOWN = 20;

/**
 * A field nobody knows is passed over: the plan goes on as if it were not there, so the person
 * should look.
 */
function unknownKeys(
	issue: z.core.$ZodIssueUnrecognizedKeys,
	schema: z.ZodType,
	file: unknown,
): Problem[] {
	const at = issuePath(issue);
	const known = knownKeys(schemaAt(schema, at, file));
	return issue.keys.slice(0, MOST_UNKNOWN).map((key): Problem => {
		const holder = valueAt(file, at);
		const like = nearest(key, known);
		const given = like !== null && inside(holder, like) !== undefined;
		return {
			path: [...at, key],
			what: `"${clip(key)}" is no field here; its value ${show(inside(holder, key))} is passed over.`,
			fix: given
				? `Take it out: "${like}" is given already.`
				: like
					? `Write "${like}", if that is what is meant.`
					: `Take it out. The fields here are ${list(known)}.`,
			kind: 'check',
		};
	});
}

/**
 * Our own messages are 'what was wrong.|What is right.'; a leading 'This' stands for the value
 * seen.
 */
const OWN_WORDS = /^(.+\.)\|(.+)$/s;

function words(issue: Issue, seen: unknown, path: Path, ruler: Ruler | null): Words {
	const reach = reachWords(issue, seen, ruler);
	if (reach) return reach;
	const [, what, fix] = OWN_WORDS.exec(issue.message) ?? [];
	if (what !== undefined && fix !== undefined)
		return [what.replace(/^This /, `${show(seen)} `), fix];
	const inner = issue.code === 'invalid_union' ? telling(issue) : null;
	if (inner) return words(inner, seen, path, ruler);
	const field = named(path);
	if (seen === undefined) return [`${field} is missing.`, `Give ${wanted(issue)}.`];
	return [`${field} is ${show(seen)}.`, `${right(issue)}.`];
}

/**
 * Of a value that fits no branch of a union: the complaint of the branch that came closest, if one
 * did.
 */
function telling(issue: z.core.$ZodIssueInvalidUnion): Issue | null {
	const closer = issue.errors.filter(
		([first]) => first && first.code !== 'invalid_type' && first.code !== 'invalid_value',
	);
	return closer.length === 1 ? nth(nth(closer, 0), 0) : null;
}

function right(issue: Issue): string {
	if (issue.code === 'too_big')
		return `At most ${counted(issue.maximum, issue.origin)} would be right`;
	if (issue.code === 'too_small')
		return `At least ${counted(issue.minimum, issue.origin)} would be right`;
	return `It should be ${wanted(issue)}`;
}

function counted(limit: number | bigint, origin: string): string {
	if (origin === 'array') return limit === 1 ? '1 entry' : `${limit} entries`;
	return origin === 'string' ? `${limit} characters` : `${limit}`;
}

/** What the schema wants, as words that follow 'give' or 'it should be'. */
function wanted(issue: Issue): string {
	switch (issue.code) {
		case 'invalid_type':
			return KINDS[issue.expected] ?? `a ${issue.expected}`;
		case 'invalid_value':
			return choice(issue.values);
		case 'not_multiple_of':
			return `a multiple of ${issue.divisor}`;
		case 'invalid_format':
			return `a text of the form ${issue.pattern ?? issue.format}`;
		case 'invalid_union':
			return unionWanted(issue);
		default:
			return 'another value';
	}
}

function unionWanted(issue: z.core.$ZodIssueInvalidUnion): string {
	const options = (issue as { options?: unknown }).options;
	if (Array.isArray(options)) return choice(options);
	const firsts = issue.errors.map(([first]) => first);
	const values = firsts.flatMap((first) => (first?.code === 'invalid_value' ? first.values : []));
	if (values.length > 0 && values.length === firsts.length) return choice(values);
	const kinds = new Set(
		firsts.map((first) => (first?.code === 'invalid_type' ? first.expected : '')),
	);
	if (kinds.size === 2 && kinds.has('number') && kinds.has('string')) {
		return 'a number, or a text with its unit such as "23 5/8 in"';
	}
	return [...new Set(firsts.flatMap((first) => (first ? [wanted(first)] : [])))].join(' or ');
}

const KINDS: Readonly<Record<string, string>> = {
	int: 'a whole number',
	number: 'a number',
	string: 'a text',
	boolean: 'true or false',
	array: 'a list',
	tuple: 'a list',
	object: 'an object { … }',
	record: 'an object { … }',
	null: 'null',
};

function choice(values: readonly unknown[]): string {
	const shown = values.map((value) => JSON.stringify(value) ?? String(value));
	return shown.length === 1 ? nth(shown, 0) : `one of ${list(shown, 'or')}`;
}

function list(words: readonly string[], last = 'and'): string {
	return words.length < 2
		? words.join('')
		: `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

function named(path: Path): string {
	const last = path.at(-1);
	if (last === undefined) return 'The file';
	return typeof last === 'number' ? `Entry ${last + 1}` : `"${clip(last)}"`;
}

/** The value seen, short enough for one line. */
export function show(value: unknown): string {
	if (Array.isArray(value)) return `a list of ${value.length}`;
	if (typeof value === 'object' && value !== null) return 'an object';
	if (typeof value === 'number') return String(value);
	return clip(JSON.stringify(value) ?? String(value));
}

function clip(text: string): string {
	return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
