import { docOfPicture, type Store } from '../database';
import { SharedDocument } from '../document';
import { bytesIn } from './picture-document';

/** The pictures of these hashes that are in this browser's database, by their hash. */
export async function picturesHere(
	store: Pick<Store, 'updatesAfter'>,
	hashes: readonly string[],
): Promise<ReadonlyMap<string, Uint8Array>> {
	const here = new Map<string, Uint8Array>();
	for (const hash of hashes) {
		const doc = new SharedDocument();
		for (const { bytes } of await store.updatesAfter(docOfPicture(hash), 0)) taken(doc, bytes);
		const bytes = bytesIn(doc, hash);
		if (bytes) here.set(hash, bytes);
		doc.close();
	}
	return here;
}

/** A torn one is passed over. */
function taken(doc: SharedDocument, update: Uint8Array): void {
	try {
		doc.take(update);
	} catch {
		// Whatever is missing for it shows in the hash.
	}
}
