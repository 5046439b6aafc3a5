import type { JobFile } from '../../job';
import { stockHeld, stockOnRack } from '../claims';
import type { FoundJob } from '../database';
import { factIn, fileIn, type SharedDocument } from '../document';
import { withRack } from '../rack';
import { SHARES_RACK } from './job-in-hand';
import { thrownIn } from './thrown';

/**
 * The plain record of a job nobody has in hand, from its document; null for a document that holds
 * none.
 *
 * @param rack the shop's, as it is kept beside its document
 */
export function recordOfJob(
	doc: SharedDocument,
	{ id, rack, changed }: { readonly id: string; readonly rack: unknown; readonly changed: number },
): FoundJob | null {
	const own = fileIn(doc);
	if (typeof own !== 'object' || own === null || Array.isArray(own)) return null;
	const { name } = own as JobFile;
	const thrown = thrownIn(doc);
	const sharesRack = factIn(doc, SHARES_RACK) === true;
	return {
		id,
		name: typeof name === 'string' ? name : '',
		file: sharesRack ? withRack(own, rack) : onOwnRack(doc, own),
		changed,
		sharesRack,
		merged: true,
		...(thrown === undefined ? {} : { thrown }),
	};
}

/** The job with its own rack as it is once what is booked of it is counted off. */
function onOwnRack(doc: SharedDocument, own: JobFile): JobFile {
	const held = stockHeld(own);
	const stock = stockOnRack(doc, held, null);
	return stock === held ? own : { ...own, stock: stock as JobFile['stock'] };
}
