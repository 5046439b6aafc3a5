import type { Need } from '../design';
import type { Job, Problem } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { money } from '../measure';
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
	return { order: { lines, total }, problems: [...unpriced(job, lines), ...sundries.problems] };
}

/**
 * Sheets and cloth that have to be bought but have no price: the order and the quote would be short
 * of them in silence.
 */
function unpriced(job: Job, lines: Order['lines']): Problem[] {
	return lines
		.filter((l) => l.buy > 0 && l.each === 0 && l.group !== 'sundries')
		.map((l): Problem => {
			const list = l.group === 'sheets' ? ('sheets' as const) : ('rolls' as const);
			const at = job.stock[list].findIndex((thing: { id: string }) => thing.id === l.id);
			return {
				path: ['stock', list, at, 'price'],
				what: `${l.what} (${l.id}) has to be bought but has no price, so the order and the quote are too low.`,
				fix: 'Give its price.',
				kind: 'check',
			};
		});
}
