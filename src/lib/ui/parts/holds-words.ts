/**
 * Does a text hold every word looked for, in any order? Without case and without the marks over
 * letters: who types 'uber' finds 'Über'. Nothing looked for is held by every text.
 */
export function holdsWords(text: string, words: string): boolean {
	const said = plain(text);
	return plain(words)
		.split(/\s+/)
		.every((word) => said.includes(word));
}

const plain = (text: string): string =>
	text
		.normalize('NFD')
		.replace(/\p{Mark}/gu, '')
		.toLowerCase();
