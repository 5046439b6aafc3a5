import { WIDTHS } from './widths';

/**
 * Which printed face carries which letter. The condensed sans has Latin with all its marks,
 * fractions and arrows; what it lacks (Greek, Cyrillic, Hebrew, signs) is set in the fallback face,
 * run by run, so that any name prints.
 */
export type Face = keyof typeof WIDTHS;
export type Weight = 'regular' | 'semibold';

/** The bytes of the three TrueType files, read by whoever calls (the core opens no files). */
export type Fonts = Readonly<Record<Face, Uint8Array>>;

/** The names the screen's style sheet gives the same faces. */
export const FAMILY = "'IBM Plex Sans Condensed','DejaVu Sans Condensed','Arial Narrow',sans-serif";

/**
 * The widths are constants; each face's are unpacked when first asked for, and few plans need the
 * fallback's.
 */
const read = new Map<Face, ReadonlyMap<number, number>>();

/** Code point -> advance width in thousandths of the text size. */
export function advances(face: Face): ReadonlyMap<number, number> {
	const known = read.get(face);
	if (known !== undefined) return known;
	const decoded = decode(WIDTHS[face].runs, 1000 / WIDTHS[face].unitsPerEm);
	read.set(face, decoded);
	return decoded;
}

function decode(runs: string, scale: number): Map<number, number> {
	const widths = new Map<number, number>();
	let code = 0;
	for (const token of runs.trim().split(/\s+/)) {
		const [, gap, length, width] = /^(?:(\w+)-)?(?:(\w+)\*)?(\w+)$/.exec(token) ?? [];
		if (width === undefined) throw new Error(`bug: ${token} is no width`);
		code += gap === undefined ? 0 : parseInt(gap, 36);
		const end = code + (length === undefined ? 1 : parseInt(length, 36));
		for (; code < end; code++) widths.set(code, parseInt(width, 36) * scale);
	}
	return widths;
}

interface FaceRun {
	readonly face: Face;
	readonly text: string;
}

/**
 * The text as it is set: composed letters in runs of one face each. Spaces between two fallback
 * words stay in their run, so that a line written from right to left keeps its order. A letter that
 * no face has becomes an empty box.
 */
export function faceRuns(text: string, weight: Weight): FaceRun[] {
	if (PLAIN.test(text)) return [{ face: weight, text }];
	const runs: { face: Face; text: string }[] = [];
	for (const word of settable(text).split(/( +)/)) {
		const last = runs.at(-1);
		if (word.startsWith(' ') && last !== undefined) last.text += word;
		else for (const letter of word) addLetter(runs, letter, weight);
	}
	return runs;
}

/** Letters of the keyboard, which every face has: nearly all texts hold no others. */
const PLAIN = /^[ -~]+$/;

function addLetter(runs: { face: Face; text: string }[], letter: string, weight: Weight): void {
	const code = codeAt(letter, 0);
	const face = advances(weight).has(code) ? weight : 'fallback';
	const known = face === weight || advances('fallback').has(code);
	const last = runs.at(-1);
	if (last?.face === face) last.text += known ? letter : EMPTY_BOX;
	else runs.push({ face, text: known ? letter : EMPTY_BOX });
}

/** The code point that starts at a place of the text. */
export function codeAt(text: string, i: number): number {
	const code = text.codePointAt(i);
	if (code === undefined) throw new Error(`bug: no letter ${i} in "${text}"`);
	return code;
}

/** Stands where a letter is in neither face: the reader sees that one is missing. */
export const EMPTY_BOX = '\u25a1';

/** Accents joined to their letters (as the fonts have them) and line breaks turned to spaces. */
export function settable(text: string): string {
	return text.normalize('NFC').replace(/\p{Cc}+/gu, ' ');
}
