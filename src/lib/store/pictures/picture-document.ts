import { pictureFrom, sha256, textOfBytes } from '../../job';
import { docOfPicture, hashIn } from '../database';
import { fileIn, seedOf, SharedDocument } from '../document';

/*
 * A picture is a document of its own that is written once: it goes by the hash of its bytes, so
 * whoever makes it makes the very same update, and two that add the same picture have added it
 * once. Kept, carried and backed up it is as any document is.
 */

/** A picture as a document: its name, and the update that makes it. */
export function pictureDocument(bytes: Uint8Array): {
	readonly doc: string;
	readonly update: Uint8Array;
} {
	return { doc: docOfPicture(sha256(bytes)), update: seedOf({ jpeg: textOfBytes(bytes) }) };
}

/** The bytes in a picture's document; null where they are not, or not all, those of its name. */
export function bytesIn(doc: SharedDocument, hash: string): Uint8Array | null {
	const { jpeg } = (fileIn(doc) ?? {}) as { readonly jpeg?: unknown };
	const read = typeof jpeg === 'string' ? pictureFrom(hash, jpeg) : null;
	return read && 'bytes' in read ? read.bytes : null;
}

/** Is this the very update of the document of this name? Throws nothing, whatever it is. */
export function makesPicture(name: string, update: Uint8Array): boolean {
	const hash = hashIn(name);
	if (hash === null) return false;
	const doc = new SharedDocument();
	try {
		doc.take(update);
		const bytes = bytesIn(doc, hash);
		return bytes !== null && isAlike(pictureDocument(bytes).update, update);
	} catch {
		return false;
	} finally {
		doc.close();
	}
}

const isAlike = (a: Uint8Array, b: Uint8Array): boolean =>
	a.length === b.length && a.every((byte, i) => byte === b[i]);
