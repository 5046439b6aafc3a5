import type { Need } from '../design/need';
import type { Job } from '../job/job';
import type { Problem } from '../job/problem';
import type { BoardLayouts, ClothLayouts } from '../layout/layouts';
import { money } from '../measure/money';
import { clothLines } from './cloth-lines';
import { sheetLines } from './sheet-lines';
import { sundryLines } from './sundry-lines';
import type { Order } from './types';

/** What to buy, in the seller's units, with what is on the rack beside it. */
export function makeOrder(
	job: Job,
	boards: readonly BoardLayouts[],
	cloths: readonly ClothLayouts[],
	needs: readonly Need[],
): { order: Order; problems: Problem[] } {
	const sundries = sundryLines(job, needs);
	const lines = [
		...boards.flatMap((b) => sheetLines(job, b)),
		...cloths.flatMap((c) => clothLines(job, c)),
		...sundries.lines,
	];
	const total = money(lines.reduce((sum, l) => sum + l.total, 0));
	return { order: { lines, total }, problems: sundries.problems };
}
