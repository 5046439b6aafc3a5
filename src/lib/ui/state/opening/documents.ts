import {
	databaseOfShop,
	type Shelf,
	type Store,
	type openJob,
	type shopAtHand,
} from '../../../store';
import type { SharedView } from '../sharing';

/**
 * What the documents are worked with: fetched when the first plan stands, for the start needs none.
 */
export interface Documents {
	readonly shelf: Shelf;
	readonly openJob: typeof openJob;
	readonly shopAtHand: typeof shopAtHand;
}

/**
 * @param writer marks what this window does as its own
 * @param shared how it is shared, where it is: windows of other documents are not heard
 */
export async function fetchDocuments(
	store: Store,
	writer: string,
	shared: SharedView,
): Promise<Documents> {
	const [{ Shelf }, { openJob, shopAtHand }] = await Promise.all([
		import('../../../store/keeping/shelf'),
		import('../../../store/hand/open-job'),
	]);
	const { membership } = shared;
	const channel = membership ? { channel: databaseOfShop(membership) } : {};
	const shelf = new Shelf(store, { writer, ...channel });
	await shared.begin(shelf);
	return { shelf, openJob, shopAtHand };
}
