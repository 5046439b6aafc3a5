import type { Need } from '../design';
import type { Job, Problem } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { money } from '../measure';
import type { ReelPlan } from '../runs';
import { clothLines } from './cloth-lines';
import { pricesAsked } from './prices-asked';
import { sheetLines } from './sheet-lines';
import { sundryLines } from './sundry-lines';
import { bySupplier, tooSmall } from './suppliers';
import type { Order } from './types';

/** What to buy, in the seller's units, with what is on the rack beside it. */
export function makeOrder(
	job: Job,
	boards: readonly BoardLayouts[],
	cloths: readonly ClothLayouts[],
	needs: readonly Need[],
	reels: readonly ReelPlan[] = [],
): { order: Order; problems: Problem[] } {
	const sundries = sundryLines(job, needs, reels);
	const lines = [
		...boards.flatMap((b) => sheetLines(job, b)),
		...cloths.flatMap((c) => clothLines(job, c)),
		...sundries.lines,
	];
	const total = money(lines.reduce((sum, l) => sum + l.total, 0));
	const suppliers = bySupplier(job, lines);
	return {
		order: { lines, suppliers, total },
		problems: [...pricesAsked(job, lines), ...tooSmall(job, suppliers), ...sundries.problems],
	};
}
