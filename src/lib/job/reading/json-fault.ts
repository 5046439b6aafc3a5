/**
 * Where a text stops being JSON, for the person who has to mend it. Lines and columns count from 1.
 */
export interface JsonFault {
	readonly line: number;
	readonly column: number;
	/** 'after a value a comma or a closing bracket' and the like. */
	readonly wanted: string;
	/** What stands there; '' at the end of the text. */
	readonly seen: string;
}

/**
 * The first fault of a text that `JSON.parse` refused. Engines word the place differently or not at
 * all, so it is found here. Null when the text is JSON after all.
 */
export function jsonFault(text: string): JsonFault | null {
	const scan: Scan = { text, at: 0, closers: [] };
	for (let expecting = VALUE; ;) {
		skip(scan);
		if (expecting === AFTER && scan.closers.length === 0) {
			return scan.at < text.length ? place(scan, 'nothing more') : null;
		}
		const next = STEPS[expecting](scan);
		if (next.startsWith('!')) return place(scan, next.slice(1));
		expecting = next as Expecting;
	}
}

interface Scan {
	readonly text: string;
	at: number;
	readonly closers: ('}' | ']')[];
}

type Expecting = 'value' | 'value-or-end' | 'key' | 'key-or-end' | 'after';
const VALUE: Expecting = 'value';
const AFTER: Expecting = 'after';

/** What to look for next, or '!' and what was wanted. */
type Next = Expecting | `!${string}`;

const STEPS: Readonly<Record<Expecting, (scan: Scan) => Next>> = {
	value,
	'value-or-end': (scan) => (closes(scan) ? 'after' : value(scan)),
	key,
	'key-or-end': (scan) => (closes(scan) ? 'after' : key(scan)),
	after,
};

function value(scan: Scan): Next {
	const first = scan.text[scan.at];
	if (first === '{') return open(scan, '}', 'key-or-end');
	if (first === '[') return open(scan, ']', 'value-or-end');
	if (first === '"') return text(scan) ? 'after' : '!the closing quote of this text';
	const plain = take(
		scan,
		/-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])|(?:true|false|null)\b/y,
	);
	return plain ? 'after' : '!a value';
}

function key(scan: Scan): Next {
	if (scan.text[scan.at] !== '"') return '!the name of a field in double quotes';
	if (!text(scan)) return '!the closing quote of this name';
	skip(scan);
	if (scan.text[scan.at] !== ':') return '!a colon';
	scan.at++;
	return 'value';
}

function after(scan: Scan): Next {
	if (closes(scan)) return 'after';
	if (scan.text[scan.at] !== ',') return `!a comma or ${scan.closers.at(-1)}`;
	scan.at++;
	return scan.closers.at(-1) === '}' ? 'key' : 'value';
}

function open(scan: Scan, closer: '}' | ']', next: Expecting): Next {
	scan.closers.push(closer);
	scan.at++;
	return next;
}

function closes(scan: Scan): boolean {
	const closer = scan.closers.at(-1);
	if (closer === undefined || scan.text[scan.at] !== closer) return false;
	scan.closers.pop();
	scan.at++;
	return true;
}

/**
 * A quoted text; stays at its opening quote when it is torn, holds a raw line end or an escape JSON
 * does not know.
 */
function text(scan: Scan): boolean {
	const from = scan.at;
	for (scan.at++; scan.at < scan.text.length; scan.at++) {
		const code = scan.text.charCodeAt(scan.at);
		if (code === 0x22) {
			scan.at++;
			return true;
		}
		if (code < 0x20) break;
		if (code !== 0x5c) continue;
		scan.at++;
		const escape = take(scan, /["\\/bfnrt]|u[0-9a-fA-F]{4}/y);
		if (!escape) break;
		scan.at--;
	}
	scan.at = from;
	return false;
}

function skip(scan: Scan): void {
	take(scan, /[ \t\r\n]*/y);
}

function take(scan: Scan, pattern: RegExp): boolean {
	pattern.lastIndex = scan.at;
	if (!pattern.test(scan.text)) return false;
	scan.at = pattern.lastIndex;
	return true;
}

function place(scan: Scan, wanted: string): JsonFault {
	const before = scan.text.slice(0, scan.at);
	const line = before.split('\n').length;
	const column = scan.at - (before.lastIndexOf('\n') + 1) + 1;
	return {
		line,
		column,
		wanted,
		seen: scan.text.slice(scan.at, scan.at + 12).split('\n')[0] ?? '',
	};
}
