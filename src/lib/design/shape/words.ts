import { mm, type Ruler, sayLength, TICKS_PER_MM, toMm } from '../../measure';

/** A length of an outline, to a tenth of a millimetre or as fine as an inch ruler goes. */
export function sayRough(n: number, ruler: Ruler): string {
	return sayLength(tenths(n, ruler), ruler);
}

/** A place on it, each way with its unit. */
export function sayPlace(at: { readonly x: number; readonly y: number }, ruler: Ruler): string {
	return `${sayRough(at.x, ruler)}, ${sayRough(at.y, ruler)}`;
}

/** What is too thin for any saw, below the marks of an inch ruler: a hundredth of a millimetre. */
export function sayHair(ruler: Ruler): string {
	return ruler.unit === 'in' ? '0.0004 in'.replace('.', ruler.decimal) : sayLength(mm(0.01), ruler);
}

const tenths = (n: number, { unit }: Ruler): number =>
	unit === 'in' ? n : Math.round(toMm(n) * 10) * (TICKS_PER_MM / 10);

/** 'a, b and c'. */
export function listed(words: readonly string[]): string {
	if (words.length < 2) return words.join('');
	return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
