/** A text string in UTF-16 with its byte order mark, one character a byte (ISO 32000-1 7.9.2.2). */
export function wide(text: string): string {
	const units = [...Array(text.length).keys()].map((i) => text.charCodeAt(i));
	return '\u00fe\u00ff' + units.map((u) => String.fromCharCode(u >> 8, u & 255)).join('');
}

/** The same as it stands in the file: no letter of it can be taken for a sign of the format. */
export function hexText(text: string): string {
	const bytes = [...wide(text)].map((b) => b.charCodeAt(0).toString(16).padStart(2, '0'));
	return `<${bytes.join('')}>`;
}
