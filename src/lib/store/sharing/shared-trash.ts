import { docOfJob } from '../database';
import { seedOf } from '../document';
import { writeThrown } from '../hand';
import type { Shelf } from '../keeping';

/**
 * Throws a job away, or puts it back, on all devices of the shop: it is said in its document, and
 * goes along with it. The record here is changed by whoever lists the jobs.
 *
 * @param at milliseconds since 1970; null puts it back
 */
export async function throwForAll(shelf: Shelf, id: string, at: number | null): Promise<void> {
	const keeper = shelf.borrow(docOfJob(id));
	try {
		await keeper.load();
		const job = await shelf.store.job(id);
		if (job && keeper.doc.isEmpty) keeper.takeIn(seedOf(job.file));
		writeThrown(keeper.doc, at);
		await keeper.settled();
		if (keeper.saving !== 'saved') throw new Error('The database did not take it.');
	} finally {
		shelf.giveBack(docOfJob(id));
	}
}
