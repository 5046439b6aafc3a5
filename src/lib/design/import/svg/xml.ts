/*
 * The tags of a drawing, one after the other. An own reader, because the library tried for it looks
 * again from each opened comment to the end of the text, and calls itself for each tag within a
 * tag. Every letter is looked at a few times at most; nothing is expanded, fetched or run.
 */

export interface XmlElement {
	/** In lower case, the format's own prefix taken off. */
	readonly name: string;
	readonly attributes: ReadonlyMap<string, string>;
	readonly children: XmlElement[];
	/** Pieces of text directly in it. */
	readonly texts: string[];
	/** Where it starts in the text. */
	readonly at: number;
}

export interface XmlFault {
	readonly what: string;
	readonly fix: string;
}

/** More than any drawing of a panel: of a map, or made to do harm. */
const MOST_ELEMENTS = 100_000;

/** The first element of a text with all it holds, or why the text cannot be taken apart. */
export function readXml(text: string): XmlElement | XmlFault {
	const open: XmlElement[] = [];
	let root: XmlElement | null = null;
	let count = 0;
	for (let at = text.indexOf('<'); at >= 0 && !(root && open.length === 0);) {
		const skipped = skip(text, at);
		if (typeof skipped === 'object') return skipped;
		if (skipped > 0) {
			keepText(open.at(-1), text, at, skipped);
			at = text.indexOf('<', skipped);
			continue;
		}
		const tag = readTag(text, at);
		if ('what' in tag) return tag;
		const fault = tag.closes ? closed(text, at, tag.name, open) : null;
		if (fault) return fault;
		if (!tag.closes) {
			if (++count > MOST_ELEMENTS) return tooMany;
			const element = { ...tag, children: [], texts: [], at };
			root ??= element;
			open.at(-1)?.children.push(element);
			if (!tag.empty) open.push(element);
		}
		const next = text.indexOf('<', tag.end);
		open.at(-1)?.texts.push(text.slice(tag.end, next < 0 ? undefined : next));
		at = next;
	}
	const [never] = open.slice(-1);
	if (never)
		return {
			what: `The SVG breaks off: <${never.name}>, opened in line ${lineAt(text, never.at)}, is never closed.`,
			fix: 'It may have been cut off while it was saved or sent: take it from where it was drawn again.',
		};
	return root ?? { what: 'This is no SVG: no tag stands in it.', fix: SAVE };
}

const SAVE = 'Save the outline as a plain SVG, or paste its path data.';

const tooMany: XmlFault = {
	what: `The SVG holds more than ${MOST_ELEMENTS} elements: too many for the outline of a panel.`,
	fix: 'Save the outline alone.',
};

/** The line of a place in the text, from 1. */
export function lineAt(text: string, at: number): number {
	let line = 1;
	for (let i = text.indexOf('\n'); i >= 0 && i < at; i = text.indexOf('\n', i + 1)) line++;
	return line;
}

/** What draws nothing, how it opens and how it closes. */
const SKIPPED = [
	['<!--', '-->', 'a comment'],
	['<![CDATA[', ']]>', 'a piece of plain text (CDATA)'],
	['<?', '?>', 'an instruction'],
] as const;

/** Where a comment and the like that opens here ends; 0 when none opens here. */
function skip(text: string, at: number): number | XmlFault {
	const sign = text.charAt(at + 1);
	if (sign !== '!' && sign !== '?') return 0;
	for (const [opens, closes, name] of SKIPPED) {
		if (!text.startsWith(opens, at)) continue;
		const end = text.indexOf(closes, at + opens.length);
		return end < 0 ? neverClosed(text, at, name, closes) : end + closes.length;
	}
	const end = endOfDocumentType(text, at);
	return end < 0 ? neverClosed(text, at, 'a document type', '>') : end;
}

function keepText(into: XmlElement | undefined, text: string, from: number, to: number): void {
	if (!into) return;
	if (text.startsWith('<![CDATA[', from)) into.texts.push(text.slice(from + 9, to - 3));
	const next = text.indexOf('<', to);
	into.texts.push(text.slice(to, next < 0 ? undefined : next));
}

function neverClosed(text: string, at: number, name: string, closes: string): XmlFault {
	return {
		what: `The SVG cannot be read on from line ${lineAt(text, at)}: ${name} opened there is never closed.`,
		fix: `Close it with ${closes}, or save the drawing again.`,
	};
}

/** Past the `>` that belongs to it: what stands in brackets, quotes or comments does not. */
function endOfDocumentType(text: string, from: number): number {
	const mark = /["'[\]>]|<!--/g;
	mark.lastIndex = from;
	let depth = 0;
	for (let found = mark.exec(text); found; found = mark.exec(text)) {
		const [sign] = found;
		if (sign === '[') depth++;
		else if (sign === ']') depth--;
		else if (sign === '>') {
			if (depth <= 0) return mark.lastIndex;
		} else {
			const end = text.indexOf(sign === '<!--' ? '-->' : sign, mark.lastIndex);
			if (end < 0) return -1;
			mark.lastIndex = end + 1;
		}
	}
	return -1;
}

interface Tag {
	readonly name: string;
	readonly attributes: ReadonlyMap<string, string>;
	readonly closes: boolean;
	readonly empty: boolean;
	readonly end: number;
}

const NAME = /<(\/?)([^\s/>="'<]+)/y;
const ATTRIBUTE = /\s*([^\s/>="'<]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/y;
const END = /\s*(\/?)>/y;

function readTag(text: string, at: number): Tag | XmlFault {
	NAME.lastIndex = at;
	const named = NAME.exec(text);
	if (!named) return strayTag(text, at);
	const attributes = new Map<string, string>();
	let from = NAME.lastIndex;
	for (;;) {
		ATTRIBUTE.lastIndex = from;
		const found = ATTRIBUTE.exec(text);
		if (!found) break;
		from = ATTRIBUTE.lastIndex;
		attributes.set(found[1] ?? '', unescaped(found[2] ?? found[3] ?? ''));
	}
	END.lastIndex = from;
	const ended = END.exec(text);
	if (!ended) return strayTag(text, from);
	return {
		name: (named[2] ?? '').toLowerCase().replace(/^svg:/, ''),
		attributes,
		closes: named[1] === '/',
		empty: ended[1] === '/',
		end: END.lastIndex,
	};
}

function strayTag(text: string, at: number): XmlFault {
	const seen = text.slice(at, at + 16).trim();
	return {
		what: `This is no SVG that can be read: in line ${lineAt(text, at)} a tag breaks off${seen === '' ? '' : ` at ${seen}`}.`,
		fix: SAVE,
	};
}

function closed(text: string, at: number, name: string, open: XmlElement[]): XmlFault | null {
	const last = open.pop();
	if (last?.name === name) return null;
	return {
		what: `The SVG cannot be read: in line ${lineAt(text, at)} </${name.slice(0, 20)}> closes ${last ? `<${last.name.slice(0, 20)}>, opened in line ${lineAt(text, last.at)}` : 'nothing'}.`,
		fix: SAVE,
	};
}

const LETTERS: Readonly<Record<string, string>> = {
	lt: '<',
	gt: '>',
	amp: '&',
	quot: '"',
	apos: "'",
};

/** The five letters with names, and letters by number; names a file makes up are left alone. */
function unescaped(value: string): string {
	if (!value.includes('&')) return value;
	return value.replace(
		/&(?:#(\d{1,7})|#x([\da-f]{1,6})|([a-z]{2,4}));/gi,
		(all, dec, hex, name) => {
			const code = dec ? Number(dec) : hex ? Number.parseInt(String(hex), 16) : NaN;
			if (Number.isNaN(code)) return LETTERS[String(name)] ?? String(all);
			return code <= 0x10ffff ? String.fromCodePoint(code) : String(all);
		},
	);
}
