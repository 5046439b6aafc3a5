import { bytesOfText, textOfBytes } from './bytes';
import { type ReadJpeg, readJpeg } from './jpeg';
import { sha256 } from './sha256';

/*
 * A job in hand names its pictures; a job as a file carries them along, under `pictures`.
 */

const HASH = /^[0-9a-f]{64}$/;

/** The hashes of the pictures that a file names, each once, whatever else is wrong with it. */
export function picturesNamed(file: unknown): string[] {
	const list = (file as { readonly photographs?: unknown } | null | undefined)?.photographs;
	if (!Array.isArray(list)) return [];
	const named = list.map((one: unknown) => (one as { picture?: unknown } | null)?.picture);
	return [...new Set(named)].filter((n): n is string => typeof n === 'string' && HASH.test(n));
}

/** The bytes of a picture carried as text, when they are what its hash says; else why not. */
export function pictureFrom(
	hash: string,
	text: unknown,
): { readonly bytes: Uint8Array } | { readonly refused: string } {
	let bytes: Uint8Array;
	try {
		bytes = bytesOfText(String(text));
	} catch {
		return { refused: 'it is torn' };
	}
	const read: ReadJpeg = readJpeg(bytes);
	if ('refused' in read) return read;
	return sha256(bytes) === hash ? { bytes } : { refused: 'it is another than its name says' };
}

/** A file without the pictures it carries, and those of them that can be read. */
export function takeOutPictures<T>(file: T): {
	readonly file: T;
	readonly pictures: ReadonlyMap<string, Uint8Array>;
	/** Hashes of those that cannot be read. */
	readonly torn: readonly string[];
} {
	const pictures = new Map<string, Uint8Array>();
	if (typeof file !== 'object' || file === null || !('pictures' in file))
		return { file, pictures, torn: [] };
	const { pictures: carried, ...rest } = file;
	const torn: string[] = [];
	for (const [hash, text] of Object.entries(carried ?? {})) {
		const read = pictureFrom(hash, text);
		if ('bytes' in read) pictures.set(hash, read.bytes);
		else torn.push(hash);
	}
	return { file: rest as T, pictures, torn };
}

/** A file that carries these pictures along, in the order of their hashes. */
export function withPictures<T extends object>(
	file: T,
	pictures: ReadonlyMap<string, Uint8Array>,
): T & { readonly pictures?: Readonly<Record<string, string>> } {
	if (pictures.size === 0) return file;
	const listed = [...pictures].sort(([a], [b]) => (a < b ? -1 : 1));
	return {
		...file,
		pictures: Object.fromEntries(listed.map(([hash, bytes]) => [hash, textOfBytes(bytes)])),
	};
}
