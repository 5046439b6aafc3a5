/*
 * Many files as one, kept as they are: a browser asks before it saves the second file of a click.
 * Signatures and fields by the published description of the ZIP format (APPNOTE 6.3.10, sections
 * 4.3.7, 4.3.12 and 4.3.16); the sum is the CRC-32 of ISO 3309.
 */

import { joinedBytes } from '../../job';

interface Entry {
	readonly name: string;
	readonly data: string | Uint8Array;
}

/** Nothing in it depends on the clock: the same files give the same bytes. */
export function zipped(entries: readonly Entry[]): Uint8Array {
	const parts: Uint8Array[] = [];
	const list: Uint8Array[] = [];
	let at = 0;
	for (const entry of entries) {
		const name = bytesOf(entry.name);
		const data = bytesOf(entry.data);
		const about = fields(crc32(data), data.length, name.length);
		const local = [...short(0x4b50, 0x0403), ...about, ...short(0)];
		parts.push(Uint8Array.from(local), name, data);
		const central = [...short(0x4b50, 0x0201, VERSION), ...about, ...short(0, 0, 0, 0), ...long(0)];
		list.push(Uint8Array.from([...central, ...long(at)]), name);
		at += local.length + name.length + data.length;
	}
	const size = list.reduce((sum, { length }) => sum + length, 0);
	const n = entries.length;
	const end = [...short(0x4b50, 0x0605, 0, 0, n, n), ...long(size), ...long(at), ...short(0)];
	return joinedBytes([...parts, ...list, Uint8Array.from(end)]);
}

/** To take out: 2.0. */
const VERSION = 20;
/** Names are UTF-8. */
const UTF8 = 0x0800;
/** The first day there is in it, at midnight. */
const DAY = 0x0021;

/** What the local head and the list have in common, after the signature. */
function fields(sum: number, size: number, name: number): number[] {
	return [
		...short(VERSION, UTF8, 0, 0, DAY),
		...long(sum),
		...long(size),
		...long(size),
		...short(name),
	];
}

const bytesOf = (data: string | Uint8Array): Uint8Array =>
	typeof data === 'string' ? new TextEncoder().encode(data) : data;

const short = (...numbers: number[]): number[] => numbers.flatMap((n) => [n & 255, n >>> 8]);
const long = (n: number): number[] => [n & 255, (n >>> 8) & 255, (n >>> 16) & 255, n >>> 24];

function crc32(bytes: Uint8Array): number {
	let sum = -1;
	for (const byte of bytes) {
		sum ^= byte;
		for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
	}
	return ~sum >>> 0;
}
