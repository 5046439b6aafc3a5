import { foreign } from './foreign';
import { showHidden } from './hidden-letters';
import { jsonFault } from './json-fault';
import type { Problem } from '../problems';
import { endOfQuoted, QUOTE } from './quoted';
import { heldTwice } from './twice';

/** Far past any job; reading more would freeze a phone. */
export const LARGEST_FILE = 50_000_000;
/** Deeper than any job, shallow enough for every engine's parser. */
const DEEPEST = 200;

/** What a file holds before anything of it is believed, or why it cannot be read at all. */
export type ReadText =
	| {
			readonly file: unknown;
			/** Fields that stand twice: only the text of a file shows it. */
			readonly twice: readonly Problem[];
	  }
	| { readonly problems: readonly Problem[] };

/** Takes the text of a job file apart: as {@link parseText}; a foreign file is refused too. */
export function parseJobText(text: string): ReadText {
	const read = parseText(text);
	const strange = 'problems' in read ? null : foreign(read.file);
	return strange ? refused(...strange) : read;
}

/**
 * Takes the text of a file apart. A torn one is refused with line and column of its first fault.
 */
export function parseText(text: string): ReadText {
	if (text.length > LARGEST_FILE) {
		return refused(
			`The file has ${Math.ceil(text.length / 1e6)} million characters.`,
			`A job file stays under ${LARGEST_FILE / 1e6} million.`,
		);
	}
	const bare = text.startsWith('\ufeff') ? text.slice(1) : text; // byte order mark
	if (bare.trim() === '')
		return refused('The file is empty.', 'Give a job file, such as one saved from here.');
	if (tooDeep(bare)) {
		return refused(
			`The file is nested more than ${DEEPEST} levels deep.`,
			'No part of a job is nested that deep: this is no job file.',
		);
	}
	const read = parsed(bare);
	return read ? { ...read, twice: heldTwice(bare) } : refused(...faultWords(bare));
}

function parsed(text: string): { readonly file: unknown } | null {
	try {
		return { file: JSON.parse(text) as unknown };
	} catch {
		return null;
	}
}

function faultWords(text: string): [string, string] {
	const fault = jsonFault(text);
	if (!fault) return ['The file cannot be read as JSON.', 'Save it again from the planner.'];
	const where = `line ${fault.line}, column ${fault.column}`;
	const wanted = `At ${where} there should be ${fault.wanted}`;
	if (fault.seen !== '')
		return [`${wanted}, but there is this: ${fault.seen}`, `Mend the file at ${where}.`];
	return [
		`${wanted}, but the file ends.`,
		'It may have been cut off while it was saved or sent: take an earlier copy, or mend its end.',
	];
}

/** Counts brackets outside texts. One pass, no recursion. */
function tooDeep(text: string): boolean {
	let depth = 0;
	for (let i = 0; i < text.length; i++) {
		const c = text.charCodeAt(i);
		if (c === QUOTE) i = endOfQuoted(text, i);
		else if (c === 0x7b || c === 0x5b) depth++;
		else if (c === 0x7d || c === 0x5d) depth--;
		if (depth > DEEPEST) return true;
	}
	return false;
}

function refused(what: string, fix: string): ReadText {
	return { problems: [{ path: [], what: showHidden(what), fix, kind: 'stop' }] };
}
