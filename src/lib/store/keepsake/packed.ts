/*
 * Plain data as few bytes: JSON, gzip where the browser has it. What was packed without is told by
 * its first bytes.
 */

export async function packed(value: unknown): Promise<Uint8Array> {
	const bytes = new TextEncoder().encode(JSON.stringify(value) ?? 'null');
	return typeof CompressionStream === 'undefined'
		? bytes
		: through(bytes, new CompressionStream('gzip'));
}

/** Throws on bytes that are none of ours. */
export async function unpacked(bytes: Uint8Array): Promise<unknown> {
	const isGzip = bytes[0] === 0x1f && bytes[1] === 0x8b;
	const plain = isGzip ? await through(bytes, new DecompressionStream('gzip')) : bytes;
	return JSON.parse(new TextDecoder().decode(plain)) as unknown;
}

async function through(
	bytes: Uint8Array,
	stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array> {
	const put = new Blob([bytes as Uint8Array<ArrayBuffer>]).stream().pipeThrough(stream);
	return new Uint8Array(await new Response(put).arrayBuffer());
}
