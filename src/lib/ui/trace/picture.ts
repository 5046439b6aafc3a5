import { findPaper, type FoundPaper } from '../../design';

/*
 * The photograph itself: kept as large as its accuracy needs and no larger, and looked through for
 * the sheet of paper.
 */

/**
 * Longest side of a picture that is kept. A hand marks a corner to a pixel or two; in more pixels
 * than these that is below what a knife follows. Common practice, no source.
 */
export const LONGEST = 4000;
/** Longest side of the picture the paper is looked for in: found to half a pixel there. */
const LOOKED_AT = 1600;

/** A picture ready to be kept, and its size. */
export interface KeptPicture {
	readonly blob: Blob;
	readonly width: number;
	readonly height: number;
}

/**
 * The picture made smaller when it is larger than needed. Rejects when the browser cannot read it.
 */
export async function readyToKeep(file: Blob): Promise<KeptPicture> {
	const picture = await decoded(file);
	const { naturalWidth: width, naturalHeight: height } = picture;
	const by = LONGEST / Math.max(width, height);
	if (by >= 1) return { blob: file, width, height };
	const canvas = drawn(picture, by);
	const blob = await new Promise<Blob | null>((resolve) =>
		canvas.toBlob(resolve, 'image/jpeg', 0.92),
	);
	if (!blob) throw new Error('the picture could not be made smaller');
	return { blob, width: canvas.width, height: canvas.height };
}

/** The sheet of paper in a picture, in its pixels; null when none is seen. */
export async function paperIn(url: string): Promise<FoundPaper | null> {
	const picture = await decoded(url);
	const longest = Math.max(picture.naturalWidth, picture.naturalHeight);
	const by = Math.min(1, LOOKED_AT / longest);
	const canvas = drawn(picture, by);
	const { width, height } = canvas;
	const pixels = canvas.getContext('2d')?.getImageData(0, 0, width, height).data;
	if (!pixels) return null;
	// Shades by the weights of ITU-R BT.601.
	const shades = Uint8ClampedArray.from(
		{ length: width * height },
		(_, i) =>
			0.299 * at(pixels, 4 * i) + 0.587 * at(pixels, 4 * i + 1) + 0.114 * at(pixels, 4 * i + 2),
	);
	const found = findPaper({ width, height, shades });
	if (!found) return null;
	const [across, down] = [picture.naturalWidth / width, picture.naturalHeight / height];
	const large = (p: { readonly x: number; readonly y: number }) => ({
		x: tenth(p.x * across),
		y: tenth(p.y * down),
	});
	const [a, b, c, d] = found.corners;
	return { corners: [large(a), large(b), large(c), large(d)], along: found.along.map(large) };
}

const at = (pixels: Uint8ClampedArray, i: number): number => pixels[i] ?? 0;
const tenth = (n: number): number => Math.round(n * 10) / 10;

function drawn(picture: HTMLImageElement, by: number): HTMLCanvasElement {
	const canvas = document.createElement('canvas');
	canvas.width = Math.max(1, Math.round(picture.naturalWidth * by));
	canvas.height = Math.max(1, Math.round(picture.naturalHeight * by));
	canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
	return canvas;
}

async function decoded(from: Blob | string): Promise<HTMLImageElement> {
	const url = typeof from === 'string' ? from : URL.createObjectURL(from);
	try {
		const picture = new Image();
		picture.src = url;
		await picture.decode();
		return picture;
	} finally {
		if (typeof from !== 'string') URL.revokeObjectURL(url);
	}
}
