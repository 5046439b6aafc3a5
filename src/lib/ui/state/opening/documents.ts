import type { Shelf, Store, openJob, shopAtHand } from '../../../store';

/**
 * What the documents are worked with: fetched when the first plan stands, for the start needs none.
 */
export interface Documents {
	readonly shelf: Shelf;
	readonly openJob: typeof openJob;
	readonly shopAtHand: typeof shopAtHand;
}

/** @param writer marks what this window does as its own */
export async function fetchDocuments(store: Store, writer: string): Promise<Documents> {
	const [{ Shelf }, { openJob, shopAtHand }] = await Promise.all([
		import('../../../store/keeping/shelf'),
		import('../../../store/hand/open-job'),
	]);
	return { shelf: new Shelf(store, { writer }), openJob, shopAtHand };
}
