import { toMm } from '../../measure';

/**
 * Ticks as millimetres to a tenth, for outlines, which are checked before anybody's ruler is known.
 */
export function inMm(n: number): string {
	return `${Math.round(toMm(n) * 10) / 10} mm`;
}

/** 'a, b and c'. */
export function listed(words: readonly string[]): string {
	if (words.length < 2) return words.join('');
	return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
