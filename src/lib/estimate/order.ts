import type { Need } from '../design';
import { type Job, type Path, priceOfLength, type Problem, rollOf } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { money, type Money, printMoney } from '../measure';
import { clothLines } from './cloth-lines';
import { sheetLines } from './sheet-lines';
import { sundryLines } from './sundry-lines';
import type { Order, OrderLine } from './types';

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
 * Sheets and cloth that have to be bought but have no price, or one that is lost in rounding: the
 * order and the quote would be wrong by it in silence.
 */
function unpriced(job: Job, lines: Order['lines']): Problem[] {
	return lines
		.filter((l) => l.buy > 0 && l.group !== 'sundries')
		.flatMap((l): Problem[] => {
			const list = l.group === 'sheets' ? ('sheets' as const) : ('rolls' as const);
			const at = job.stock[list].findIndex((thing: { id: string }) => thing.id === l.id);
			const path = ['stock', list, at];
			const price = job.stock[list][at]?.price ?? 0;
			if (price === 0) {
				const what = `${l.what} (${l.id}) has to be bought but has no price, so the order and the quote are too low.`;
				return [{ path: [...path, 'price'], what, fix: 'Give its price.', kind: 'check' }];
			}
			return list === 'rolls' ? coarse(job, l, [...path, 'step']) : [];
		});
}

/** The price of a step may be off by this share of it, by rounding to the least coin. */
const COARSE = 0.01;

function coarse(job: Job, line: OrderLine, path: Path): Problem[] {
	const roll = rollOf(job, line.id);
	const exact = roll ? priceOfLength(roll, roll.step, job.shop.ruler) : 0;
	if (Math.abs(line.each - exact) <= COARSE * exact) return [];
	const say = (amount: Money): string => printMoney(amount, job.shop.currency);
	const whole = money(exact * line.buy);
	return [
		{
			path,
			what: `A step of ${line.what} (${line.id}) is so short that its price is rounded to ${say(line.each)}: ${line.buy} steps come to ${say(line.total)}, by the length they would be ${say(whole)}.`,
			fix: 'Give the steps the seller counts by, or longer ones.',
			kind: 'check',
		},
	];
}
