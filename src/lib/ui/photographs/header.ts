/*
 * A file is looked at before the browser is asked to draw it: what it is goes by its first bytes
 * and never by its name, and one that would take all the memory of a phone is never drawn.
 */

/** Bytes of a file that is looked at. */
export const MOST_FILE = 60_000_000;
/** Drawn, each takes four bytes: 480 MB. Phones' cameras give 12 to 50 million, some 108. */
const MOST_PIXELS = 120_000_000;

/** A picture the browser may be asked for, or in words why not. */
export type Looked = { readonly type: string } | { readonly refused: string };

const CHOOSE = 'Choose a photograph (JPEG, PNG or WebP).';

/** What a file is, by its bytes. */
export function pictureKind(bytes: Uint8Array): Looked {
	if (bytes.length === 0) return { refused: 'The file is empty: take the photograph again.' };
	if (bytes.length > MOST_FILE)
		return {
			refused: `The file has ${Math.ceil(bytes.length / 1e6)} MB, and ${MOST_FILE / 1e6} MB is the most: send it smaller from the camera.`,
		};
	const form = FORMS.find(({ is }) => is(bytes));
	if (!form) return { refused: strangerWords(bytes) };
	const size = form.size(bytes);
	if (!size) return TORN;
	const [width, height] = size;
	if (width < 1 || height < 1) return TORN;
	if (width * height > MOST_PIXELS)
		return {
			refused: `The picture says it has ${width} x ${height} pixels, more than any camera this is for: set the camera to less than ${MOST_PIXELS / 1e6} million.`,
		};
	return form.isWhole?.(bytes) === false ? TORN : { type: form.type };
}

const TORN = {
	refused: 'The picture is torn: part of the file is missing. Copy it from the camera again.',
};

interface Form {
	readonly type: string;
	readonly is: (bytes: Uint8Array) => boolean;
	/** Null where the bytes do not tell. */
	readonly size: (bytes: Uint8Array) => readonly [number, number] | null;
	readonly isWhole?: (bytes: Uint8Array) => boolean;
}

const HEIC = 'image/heic';

const FORMS: readonly Form[] = [
	{
		type: 'image/jpeg',
		is: (b) => b[0] === 0xff && b[1] === 0xd8 && b[2] === 0xff,
		size: jpegSize,
		isWhole: hasJpegEnd,
	},
	{
		type: 'image/png',
		is: (b) => has(b, 1, 'PNG\r\n'),
		size: (b) => [big(b, 16, 4), big(b, 20, 4)],
		isWhole: (b) => find(b, 'IEND', b.length - 64) >= 0,
	},
	{
		type: 'image/gif',
		is: (b) => has(b, 0, 'GIF8'),
		size: (b) => [little(b, 6, 2), little(b, 8, 2)],
	},
	{
		type: 'image/webp',
		is: (b) => has(b, 0, 'RIFF') && has(b, 8, 'WEBP'),
		size: webpSize,
		isWhole: (b) => b.length >= little(b, 4, 4) + 8,
	},
	{
		type: 'image/bmp',
		is: (b) => has(b, 0, 'BM'),
		size: (b) => [little(b, 18, 4), little(b, 22, 4)],
	},
	{ type: 'image/avif', is: (b) => has(b, 4, 'ftypavif'), size: boxedSize },
	{ type: HEIC, is: isHeic, size: boxedSize },
];

function isHeic(bytes: Uint8Array): boolean {
	return ['heic', 'heix', 'hevc', 'mif1', 'msf1'].some((brand) => has(bytes, 4, `ftyp${brand}`));
}

/** What is to be said of a form this browser was asked to draw and could not. */
export function unreadWords(type: string): string {
	return type === HEIC
		? 'This browser cannot read HEIC pictures. Set the camera to its most compatible form (JPEG), or send the photograph to this device as JPEG.'
		: 'This browser cannot read the picture: it is torn, or of a kind it does not know. ' + CHOOSE;
}

function strangerWords(bytes: Uint8Array): string {
	const what = has(bytes, 0, '%PDF')
		? 'This is a PDF, whatever its name says'
		: has(bytes, 0, 'II*') || has(bytes, 0, 'MM')
			? 'This is a raw picture or a TIFF, which no browser shows'
			: /^\s*(\ufeff)?</.test(new TextDecoder().decode(bytes.subarray(0, 200)))
				? 'This is a drawing or a page (SVG, XML or HTML), not a photograph, and none is taken'
				: 'This is no picture';
	return `${what}. ${CHOOSE}`;
}

/** From the head of the frame (ITU-T T.81 B.2.2), past whatever a camera wrote before it. */
function jpegSize(bytes: Uint8Array): readonly [number, number] | null {
	const at = jpegSegment(bytes, (m) => m >= 0xc0 && m <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(m));
	return at === null ? null : [big(bytes, at + 7, 2), big(bytes, at + 5, 2)];
}

/** Is there an end after the picture's own beginning, not that of a small picture within? */
function hasJpegEnd(bytes: Uint8Array): boolean {
	const scan = jpegSegment(bytes, (marker) => marker === 0xda);
	if (scan === null) return false;
	for (let at = scan + 2; at < bytes.length - 1; at++)
		if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
	return false;
}

function jpegSegment(bytes: Uint8Array, wanted: (marker: number) => boolean): number | null {
	for (let at = 2; at + 8 < bytes.length;) {
		if (bytes[at] !== 0xff) return null;
		const marker = bytes[at + 1] ?? 0;
		if (wanted(marker)) return at;
		if (marker === 0xda) return null;
		at += marker === 0xff ? 1 : 2 + Math.max(2, big(bytes, at + 2, 2));
	}
	return null;
}

/** Of the three ways a WebP is written (RFC 9649). */
function webpSize(bytes: Uint8Array): readonly [number, number] | null {
	if (has(bytes, 12, 'VP8X')) return [1 + little(bytes, 24, 3), 1 + little(bytes, 27, 3)];
	if (has(bytes, 12, 'VP8L')) {
		const bits = little(bytes, 21, 4);
		return [1 + (bits & 0x3fff), 1 + ((bits >>> 14) & 0x3fff)];
	}
	if (has(bytes, 12, 'VP8 ')) return [little(bytes, 26, 2) & 0x3fff, little(bytes, 28, 2) & 0x3fff];
	return null;
}

/** The largest picture in a file of boxes (ISO/IEC 23008-12, 'ispe'). */
function boxedSize(bytes: Uint8Array): readonly [number, number] | null {
	let largest: readonly [number, number] | null = null;
	for (let at = find(bytes, 'ispe', 0); at >= 0; at = find(bytes, 'ispe', at + 4)) {
		if (at > HEAD) break;
		const size = [big(bytes, at + 8, 4), big(bytes, at + 12, 4)] as const;
		if (!largest || size[0] * size[1] > largest[0] * largest[1]) largest = size;
	}
	return largest;
}

/** Bytes in which such a file says how large its pictures are. */
const HEAD = 1_000_000;

function find(bytes: Uint8Array, text: string, from: number): number {
	const end = Math.min(bytes.length - text.length, from + HEAD);
	for (let at = Math.max(0, from); at <= end; at++) if (has(bytes, at, text)) return at;
	return -1;
}

const has = (bytes: Uint8Array, at: number, text: string): boolean =>
	[...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

const big = (bytes: Uint8Array, at: number, count: number): number =>
	Array.from({ length: count }, (_, i) => bytes[at + i] ?? 0).reduce((n, b) => n * 256 + b, 0);

const little = (bytes: Uint8Array, at: number, count: number): number =>
	Array.from({ length: count }, (_, i) => bytes[at + count - 1 - i] ?? 0).reduce(
		(n, b) => n * 256 + b,
		0,
	);
