/** Bytes as text that stands in JSON: base64 of RFC 4648. */
export function textOfBytes(bytes: Uint8Array): string {
	let text = '';
	for (let i = 0; i < bytes.length; i += 8192)
		text += String.fromCharCode(...bytes.subarray(i, i + 8192));
	return btoa(text);
}

/** Throws on text that is none of {@link textOfBytes}. */
export function bytesOfText(text: string): Uint8Array {
	return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}

/** One after the other. */
export function joinedBytes(parts: readonly Uint8Array[]): Uint8Array {
	const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
	let at = 0;
	for (const part of parts) {
		all.set(part, at);
		at += part.length;
	}
	return all;
}
