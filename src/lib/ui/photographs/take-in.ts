import { bareJpeg, LONGEST_SIDE, MOST_BYTES, readJpeg } from '../../job';
import { pictureKind, unreadWords } from './header';

/** A photograph as it is kept: upright, small, and with nothing in it but what it shows. */
export interface TakenIn {
	readonly bytes: Uint8Array;
	readonly width: number;
	readonly height: number;
}

/** Tried one after the other until the picture is small enough. */
const QUALITIES = [0.86, 0.76, 0.64, 0.5];
const SMALLER = 0.75;

/**
 * Draws a photograph anew: turned upright as its camera held it, no larger than a card needs. What
 * else is in the file is left behind, the place it was taken among it. In words why it cannot be.
 */
export async function takeIn(file: File): Promise<TakenIn | { readonly refused: string }> {
	const bytes = await file.arrayBuffer().then(
		(buffer) => new Uint8Array(buffer),
		() => null,
	);
	if (!bytes) return { refused: 'The file cannot be read: choose it again.' };
	const looked = pictureKind(bytes);
	if ('refused' in looked) return looked;
	const { type } = looked;
	const drawn = await createImageBitmap(new Blob([bytes], { type }), {
		imageOrientation: 'from-image',
	}).catch(() => null);
	if (!drawn) return { refused: unreadWords(type) };
	try {
		const taken = await asKept(drawn);
		return taken ?? { refused: 'The photograph could not be made smaller: choose another.' };
	} finally {
		drawn.close();
	}
}

async function asKept(picture: ImageBitmap): Promise<TakenIn | null> {
	const longest = Math.max(picture.width, picture.height);
	for (let most = Math.min(LONGEST_SIDE, longest); most >= 1; most *= SMALLER) {
		const canvas = drawnAs(picture, most / longest);
		for (const quality of QUALITIES) {
			const bytes = await jpegOf(canvas, quality);
			const read = bytes && bytes.length <= MOST_BYTES ? readJpeg(bytes) : null;
			if (bytes && read && !('refused' in read)) return { bytes, ...read };
		}
	}
	return null;
}

function drawnAs(picture: ImageBitmap, by: number): HTMLCanvasElement {
	const canvas = document.createElement('canvas');
	canvas.width = Math.max(1, Math.round(picture.width * by));
	canvas.height = Math.max(1, Math.round(picture.height * by));
	const pen = canvas.getContext('2d');
	if (!pen) return canvas;
	pen.imageSmoothingQuality = 'high';
	pen.fillStyle = '#fff'; // a JPEG has no see-through
	pen.fillRect(0, 0, canvas.width, canvas.height);
	pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
	return canvas;
}

async function jpegOf(canvas: HTMLCanvasElement, quality: number): Promise<Uint8Array | null> {
	const blob = await new Promise<Blob | null>((resolve) =>
		canvas.toBlob(resolve, 'image/jpeg', quality),
	);
	return blob ? bareJpeg(new Uint8Array(await blob.arrayBuffer())) : null;
}
