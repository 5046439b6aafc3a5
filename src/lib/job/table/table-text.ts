/**
 * The text of a table's file: UTF-8, UTF-16 where its first letters say so, and where it is neither
 * the Western letters (windows-1252) that spreadsheets still write. Never throws; what is no text
 * at all shows as such to the reader of the list.
 */
export function tableText(bytes: Uint8Array): string {
	const [first, second] = bytes;
	if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
	if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
	} catch {
		return new TextDecoder('windows-1252').decode(bytes);
	}
}
