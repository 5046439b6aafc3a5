/** A short mark of a value, the same for the same value on any machine: FNV-1a. */
export function shortMarkOf(value: unknown): string {
	let hash = 0x811c9dc5;
	for (const letter of JSON.stringify(value ?? null))
		hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
	return hash.toString(36);
}
