import { advances, codeAt, faceRuns, type Weight } from './faces';

/** Height of a capital and depth of a g, as shares of the size. */
export const CAP = 0.7;
export const DESCENT = 0.22;

/**
 * Width of a text in the unit of `size`, from the fonts' own advance widths; both pens set it
 * without kerning.
 */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
	let width = 0;
	for (const run of faceRuns(text, weight)) {
		const table = advances(run.face);
		const { text: letters } = run;
		for (let i = 0; i < letters.length; i++) {
			const code = codeAt(letters, i);
			width += table.get(code) ?? 0;
			if (code > 0xffff) i++;
		}
	}
	return (width * size) / 1000;
}

/** The text cut to fit, ending in an ellipsis; '' when not even that fits. */
export function shortened(
	text: string,
	width: number,
	size: number,
	weight: Weight = 'regular',
): string {
	if (textWidth(text, size, weight) <= width) return text;
	const letters = [...text];
	for (let n = letters.length - 1; n > 0; n--) {
		const shorter = letters.slice(0, n).join('').trimEnd() + '…';
		if (textWidth(shorter, size, weight) <= width) return shorter;
	}
	return '';
}

/**
 * Lines no wider than `width`, broken at spaces; a word too long for a line is broken where it must
 * be.
 */
export function wrapped(
	text: string,
	width: number,
	size: number,
	weight: Weight = 'regular',
): string[] {
	const lines: string[] = [];
	for (const paragraph of text.split('\n')) {
		let line = '';
		for (const word of wordsOf(paragraph, width, size, weight)) {
			const longer = line === '' ? word : `${line} ${word}`;
			if (textWidth(longer, size, weight) <= width) line = longer;
			else {
				if (line !== '') lines.push(line);
				const pieces = broken(word, width, size, weight);
				lines.push(...pieces.slice(0, -1));
				line = pieces.at(-1) ?? '';
			}
		}
		lines.push(line);
	}
	return lines;
}

/** What a number must not be parted from: its unit, its fraction, the other side of a size. */
const BOUND =
	/\d (?:%|°|mm|cm|m|in|ft|L|kg|lb|Hz|dB|W|kN|g|mL|min)(?![A-Za-z])|\d \d+\/\d|[×≈] \d|\d ×/;

/** Words that stay on one line, figures with their units among them where a line holds them. */
function wordsOf(text: string, width: number, size: number, weight: Weight): string[] {
	const words: string[] = [];
	for (const word of text.split(/ +/).filter((w) => w !== '')) {
		const last = words.at(-1);
		const bound = last === undefined ? '' : `${last} ${word}`;
		const joins = BOUND.test(bound.slice(Math.max(0, (last?.length ?? 0) - 1)));
		if (joins && textWidth(bound, size, weight) <= width) words[words.length - 1] = bound;
		else words.push(word);
	}
	return words;
}

function broken(word: string, width: number, size: number, weight: Weight): string[] {
	const pieces: string[] = [];
	let piece = '';
	for (const letter of word) {
		if (piece !== '' && textWidth(piece + letter, size, weight) > width) {
			pieces.push(piece);
			piece = '';
		}
		piece += letter;
	}
	return [...pieces, piece];
}
