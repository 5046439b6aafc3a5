import { docOfJob, type Store } from '../database';
import { SharedDocument } from '../document';

/** Is all of this update in the store's document of the job? */
export async function holdsAlready(store: Store, id: string, update: Uint8Array): Promise<boolean> {
	const doc = new SharedDocument();
	for (const { bytes } of await store.updatesAfter(docOfJob(id), 0)) doc.take(bytes);
	let isNew = false;
	doc.onUpdate(() => (isNew = true));
	doc.take(update);
	doc.close();
	return !isNew;
}
