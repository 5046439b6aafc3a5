import { lastOf } from '../../measure';
import { showHidden } from './hidden-letters';
import type { Problem } from '../problems';
import { endOfQuoted, QUOTE } from './quoted';

/** Named in full up to here; a file made by a broken program may hold thousands. */
const MOST = 50;
/** Letters of a value that are shown. */
const SHOWN = 40;

/**
 * Fields that an object of the text holds twice. Reading JSON takes the last one without a word,
 * and the person who wrote the first is left wondering. The text must be JSON already; one pass, no
 * recursion, a few tens of milliseconds for 5 MB.
 */
export function heldTwice(text: string): Problem[] {
	const levels: Level[] = [];
	const problems: Problem[] = [];
	for (let i = 0; i < text.length && problems.length < MOST; i++) {
		const level = levels.at(-1);
		const c = text.charCodeAt(i);
		if (c === QUOTE) {
			const end = endOfQuoted(text, i);
			if (level?.keys && level.wantsKey) named(text, i, end, levels, problems);
			i = end;
		} else if (c === OPEN_OBJECT) {
			levels.push({ keys: new Map(), index: 0, key: '', wantsKey: true });
		} else if (c === OPEN_LIST) {
			levels.push({ keys: null, index: 0, key: '', wantsKey: false });
		} else if (c === CLOSE_OBJECT || c === CLOSE_LIST) levels.pop();
		else if (c === COMMA && level) {
			level.index++;
			level.wantsKey = level.keys !== null;
		}
	}
	return problems;
}

const COMMA = 0x2c;
const OPEN_OBJECT = 0x7b;
const CLOSE_OBJECT = 0x7d;
const OPEN_LIST = 0x5b;
const CLOSE_LIST = 0x5d;

/** An object or list that is open at this place of the text. */
interface Level {
	/** Where the value of each field begins; null in a list. */
	readonly keys: Map<string, number> | null;
	index: number;
	key: string;
	wantsKey: boolean;
}

function named(
	text: string,
	from: number,
	end: number,
	levels: readonly Level[],
	problems: Problem[],
): void {
	const level = lastOf(levels);
	const raw = text.slice(from, end + 1);
	// `"\u0061"` and `"a"` are one name; few names hold a backslash.
	const key = raw.includes('\\') ? (JSON.parse(raw) as string) : raw.slice(1, -1);
	const value = text.indexOf(':', end) + 1;
	level.key = key;
	level.wantsKey = false;
	const before = level.keys?.get(key);
	level.keys?.set(key, value);
	if (before === undefined) return;
	problems.push({
		path: levels.map((l) => (l.keys ? l.key : l.index)),
		what: `This field stands twice in the file: first as ${seen(text, before)}, then as ${seen(text, value)}; the last one counts.`,
		fix: 'Take out the one that is not meant.',
		kind: 'check',
	});
}

/** The value that begins here, on one line and cut short. */
function seen(text: string, from: number): string {
	const start = from + (/^\s*/.exec(text.slice(from, from + 200))?.[0].length ?? 0);
	const end = endOfValue(text, start);
	const words = text
		.slice(start, Math.min(end, start + SHOWN))
		.replace(/\s+/g, ' ')
		.trim();
	return showHidden(end > start + SHOWN ? `${words} …` : words);
}

/** Looks no farther than what is shown of a value. */
function endOfValue(text: string, from: number): number {
	let depth = 0;
	for (let i = from; i < Math.min(text.length, from + 2 * SHOWN); i++) {
		const c = text.charCodeAt(i);
		if (c === QUOTE) i = endOfQuoted(text, i);
		else if (c === OPEN_OBJECT || c === OPEN_LIST) depth++;
		else if (c === CLOSE_OBJECT || c === CLOSE_LIST || c === COMMA) {
			if (depth === 0) return i;
			if (c !== COMMA && --depth === 0) return i + 1;
		}
	}
	return Math.min(text.length, from + 2 * SHOWN);
}
