import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { MOST_FILE, pictureKind } from '../../src/lib/ui/photographs/header';
import { runs } from '../depth';
import { jpeg, withCamera } from '../job/photographs/made-pictures';

const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
	Uint8Array.from(parts.flatMap((p) => (typeof p === 'string' ? [...text(p)] : [...p])));
const four = (n: number): number[] => [n >>> 24, (n >> 16) & 255, (n >> 8) & 255, n & 255];
const back = (list: readonly number[]): number[] => [...list].reverse();

const png = (width: number, height: number): Uint8Array =>
	bytes(
		[0x89],
		'PNG\r\n',
		[0x1a, 0x0a],
		four(13),
		'IHDR',
		four(width),
		four(height),
		[8, 2, 0, 0, 0],
		'IEND',
	);
const webp = (width: number, height: number): Uint8Array =>
	bytes(
		...['RIFF', back(four(22)), 'WEBP', 'VP8X', back(four(10)), four(0)],
		...[back(four(width - 1)).slice(0, 3), back(four(height - 1)).slice(0, 3)],
	);
const boxed = (brand: string, width: number, height: number): Uint8Array =>
	bytes(four(24), `ftyp${brand}`, four(0), four(20), 'ispe', four(0), four(width), four(height));

describe('a file that is to be a photograph', () => {
	it.each([
		['a JPEG', jpeg(64, 48), 'image/jpeg'],
		['a JPEG with what a camera wrote', withCamera(jpeg(64, 48)), 'image/jpeg'],
		['a PNG', png(4000, 3000), 'image/png'],
		['a WebP', webp(4000, 3000), 'image/webp'],
		['a HEIC, which some browsers read', boxed('heic', 4032, 3024), 'image/heic'],
		['an AVIF', boxed('avif', 4032, 3024), 'image/avif'],
	])('may be %s, by its bytes', (_, file, type) => {
		expect(pictureKind(file)).toEqual({ type });
	});

	it.each([
		['nothing', new Uint8Array(0), 'empty'],
		['a PDF', text('%PDF-1.7 …'), 'a PDF'],
		['a drawing with a script', text('\ufeff <svg><script>x()</script></svg>'), 'SVG'],
		['a page', text('<!doctype html>'), 'SVG, XML or HTML'],
		['a raw picture', bytes('II*', [0]), 'raw picture'],
		['words', text('Dear Sir'), 'no picture'],
		['a JPEG without its end', jpeg(640, 480).slice(0, -2), 'torn'],
		['the beginning of a JPEG', jpeg(640, 480).slice(0, 30), 'torn'],
		['a PNG without its end', png(10, 10).slice(0, -4), 'torn'],
		['a WebP cut off', webp(10, 10).slice(0, -3), 'torn'],
		['one of no size', png(0, 10), 'torn'],
		['a JPEG of 60,000 x 60,000', withCamera(jpeg(60_000, 8)), ''],
		['a PNG that would fill the memory', png(60_000, 60_000), '60000 x 60000'],
		['a HEIC that would', boxed('heic', 60_000, 60_000), '60000 x 60000'],
		['one of too many bytes', new Uint8Array(MOST_FILE + 1), '61 MB'],
	])('is refused where it is %s, in words', (name, file, why) => {
		if (name.startsWith('a JPEG of')) {
			// Its head alone, changed to what it says it is.
			const at = file.findIndex((b, i) => b === 0xff && file[i + 1] === 0xc0);
			file.set([0xea, 0x60, 0xea, 0x60], at + 5);
			why = '60000 x 60000';
		}
		expect(pictureKind(file)).toEqual({ refused: expect.stringContaining(why) as string });
	});

	it('is one or the other, whatever its bytes', () => {
		const heads = [
			jpeg(64, 48),
			png(9, 9),
			webp(9, 9),
			boxed('heic', 9, 9),
			text('GIF89a'),
			text('BM'),
		];
		fc.assert(
			fc.property(
				fc.constantFrom(...heads),
				fc.nat(60),
				fc.uint8Array({ maxLength: 80 }),
				(head, cut, noise) => {
					const kind = pictureKind(bytes([...head.slice(0, cut)], [...noise]));
					expect('type' in kind || kind.refused.length > 10).toBe(true);
				},
			),
			{ numRuns: runs(300) },
		);
	});
});
