import { sha256 } from '../../job';
import type { Shelf } from '../keeping';
import { docOfPicture } from '../database';
import { bytesIn, pictureDocument } from './picture-document';

/** A picture that is used here for a while. */
export interface PictureInUse {
	/** Null as long as its bytes are not here. */
	readonly bytes: Uint8Array | null;
	giveBack(): void;
}

/**
 * Takes a picture into use: from this browser's database, else, in a shop, from whichever device
 * has it, as soon as that brings it.
 *
 * @param came told when its bytes have come
 */
export async function usePicture(
	shelf: Shelf,
	hash: string,
	came: (bytes: Uint8Array) => void,
): Promise<PictureInUse> {
	const name = docOfPicture(hash);
	const keeper = shelf.borrow(name);
	const stop = keeper.doc.onUpdate((_, by) => {
		const bytes = by === 'elsewhere' ? bytesIn(keeper.doc, hash) : null;
		if (bytes) came(bytes);
	});
	let isUsed = true;
	const giveBack = (): void => {
		if (!isUsed) return;
		isUsed = false;
		stop();
		shelf.giveBack(name);
	};
	try {
		await keeper.load();
	} catch (fault) {
		giveBack();
		throw fault;
	}
	return { bytes: bytesIn(keeper.doc, hash), giveBack };
}

/**
 * Keeps a picture. Resolves with its hash when the database has it; rejects when that has not taken
 * it: it is in memory then, and tried again as long as the page is open.
 */
export async function putPicture(shelf: Shelf, bytes: Uint8Array): Promise<string> {
	const { doc, update } = pictureDocument(bytes);
	const keeper = shelf.borrow(doc);
	try {
		await keeper.load();
		if (keeper.doc.isEmpty) keeper.takeIn(update);
		// Whoever emptied the trash meanwhile has let go of it: it is put back whole.
		keeper.touch();
		await keeper.settled();
		if (keeper.saving !== 'saved')
			throw new Error('The database of this browser has not taken the picture.');
		return sha256(bytes);
	} finally {
		shelf.giveBack(doc);
	}
}
