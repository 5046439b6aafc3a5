/** Code of the letter that opens and closes a text in JSON. */
export const QUOTE = 0x22;
const BACKSLASH = 0x5c;

/**
 * Where the quoted text that opens at `from` closes; the length of the whole where it never does.
 */
export function endOfQuoted(text: string, from: number): number {
	let i = from + 1;
	while (i < text.length && text.charCodeAt(i) !== QUOTE)
		i += text.charCodeAt(i) === BACKSLASH ? 2 : 1;
	return i;
}
