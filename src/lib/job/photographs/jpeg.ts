import { joinedBytes } from './bytes';

/*
 * The one form in which a picture is kept: a bare JPEG as ITU-T T.81 has it, with nothing in it but
 * what it shows. Whatever else a camera writes (the place, the time, its own number) was left out
 * when it was made; here it is seen to that none has come in by another way.
 */

/** Longest side of a picture that is kept, pixels: across a page of A4 some 200 to the inch. */
export const LONGEST_SIDE = 1600;
/** Most bytes of a picture that is kept. */
export const MOST_BYTES = 500_000;

/** A picture as it lies in the file, or in words why it is none that is kept. */
export type ReadJpeg =
	{ readonly width: number; readonly height: number } | { readonly refused: string };

const [BEGIN, END, SCAN] = [0xd8, 0xd9, 0xda];
/** Frames of Huffman coding: baseline, extended, progressive. What readers of PDF know. */
const FRAMES: readonly number[] = [0xc0, 0xc1, 0xc2];
/** Tables, the restart interval, and the head that JFIF asks for. */
const BARE: readonly number[] = [0xc4, 0xdb, 0xdd, 0xe0];

/** Looks through a picture without drawing it. */
export function readJpeg(bytes: Uint8Array): ReadJpeg {
	if (bytes.length > MOST_BYTES) return { refused: `it has more than ${MOST_BYTES / 1000} kB` };
	if (bytes[0] !== 0xff || bytes[1] !== BEGIN) return { refused: 'it is no JPEG' };
	let size: { width: number; height: number } | null = null;
	for (let at = 2; ;) {
		if (bytes[at] !== 0xff) return TORN;
		const marker = bytes[at + 1];
		if (marker === END) return at + 2 === bytes.length && size ? size : TORN;
		const length = two(bytes, at + 2);
		if (marker === undefined || length < 2) return TORN;
		if (FRAMES.includes(marker)) {
			size = { width: two(bytes, at + 7), height: two(bytes, at + 5) };
			const longest = Math.max(size.width, size.height);
			if (longest > LONGEST_SIDE || Math.min(size.width, size.height) < 1)
				return { refused: `it has ${size.width} x ${size.height} pixels` };
		} else if (marker !== SCAN && !BARE.includes(marker))
			return { refused: 'it holds more than what it shows' };
		at += 2 + length;
		if (marker === SCAN) at = endOfScan(bytes, at);
	}
}

/**
 * A JPEG without whatever stands before its scan besides what is needed to draw it, and without
 * whatever follows its end. One that is torn comes back as it is.
 */
export function bareJpeg(bytes: Uint8Array): Uint8Array {
	const kept: Uint8Array[] = [bytes.subarray(0, 2)];
	for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff;) {
		const marker = bytes[at + 1] ?? 0;
		const end = at + 2 + two(bytes, at + 2);
		if (marker === SCAN) {
			const last = pictureEnd(bytes, at);
			return last === null ? bytes : joinedBytes([...kept, bytes.subarray(at, last)]);
		}
		if (FRAMES.includes(marker) || BARE.includes(marker)) kept.push(bytes.subarray(at, end));
		at = end;
	}
	return bytes;
}

/** Past the end that belongs to the scan which begins here; null where there is none. */
function pictureEnd(bytes: Uint8Array, scan: number): number | null {
	for (let at = scan; at + 4 <= bytes.length && bytes[at] === 0xff;) {
		const marker = bytes[at + 1];
		at += 2 + two(bytes, at + 2);
		if (marker === SCAN) at = endOfScan(bytes, at);
		if (bytes[at] === 0xff && bytes[at + 1] === END) return at + 2;
	}
	return null;
}

const TORN: ReadJpeg = { refused: 'it is torn' };

/** Where the next marker stands: of those within a scan, only restarts do. */
function endOfScan(bytes: Uint8Array, from: number): number {
	for (let at = from; at < bytes.length - 1; at++) {
		const next = bytes[at + 1] ?? 0;
		if (bytes[at] === 0xff && next !== 0 && (next < 0xd0 || next > 0xd7)) return at;
	}
	return bytes.length;
}

const two = (bytes: Uint8Array, at: number): number =>
	(bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0);
