import { sha256, textOfBytes } from '../../../src/lib/job';

/*
 * Pictures made here and taken by nobody. A grey JPEG whose scan is of no more than what its head
 * promises: a block of eight by eight has one bit for no change of brightness and one for its end.
 */

/** Grey, of this many pixels; the seed tells two of the same size apart. */
export function jpeg(width: number, height: number, seed = 0): Uint8Array {
	const blocks = Math.ceil(width / 8) * Math.ceil(height / 8);
	// Two bits a block (DC of category 0, end of block): 00, padded with ones.
	const scan = new Uint8Array(Math.ceil((2 * blocks) / 8));
	const rest = (2 * blocks) % 8;
	if (rest > 0) scan[scan.length - 1] = 0xff >> rest;
	return Uint8Array.from([
		...[0xff, 0xd8],
		...segment(0xe0, [0x4a, 0x46, 0x49, 0x46, 0, 1, 1, 0, 0, 1, 0, 1, 0, 0]),
		...segment(0xdb, [0, ...Array.from({ length: 64 }, (_, i) => 1 + ((seed + i) % 250))]),
		...segment(0xc0, [8, ...two(height), ...two(width), 1, 1, 0x11, 0]),
		...segment(0xc4, [0x00, 2, ...Array.from({ length: 15 }, () => 0), 0, 1]),
		...segment(0xc4, [0x10, 2, ...Array.from({ length: 15 }, () => 0), 0, 1]),
		...segment(0xda, [1, 1, 0, 0, 63, 0]),
		...scan,
		...[0xff, 0xd9],
	]);
}

export const segment = (marker: number, body: readonly number[]): number[] => [
	...[0xff, marker],
	...two(body.length + 2),
	...body,
];
export const two = (n: number): number[] => [n >> 8, n & 255];

/** The same with something of a camera's in it: what it wrote, before all else. */
export function withCamera(picture: Uint8Array, words = 'Exif\0\0 52.1 N'): Uint8Array {
	const body = [...words].map((letter) => letter.charCodeAt(0));
	return Uint8Array.from([
		...picture.subarray(0, 2),
		...segment(0xe1, body),
		...picture.subarray(2),
	]);
}

/** As a job names it, with what it shows. */
export function photographOf(picture: Uint8Array, more: object = {}) {
	const hash = sha256(picture);
	return { picture: hash, width: 64, height: 48, bytes: picture.length, ...more };
}

/** As a file carries them. */
export const carried = (...all: readonly Uint8Array[]): Record<string, string> =>
	Object.fromEntries(all.map((picture) => [sha256(picture), textOfBytes(picture)]));
