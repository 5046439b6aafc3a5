import { dayNumber, eachStep, type Job, type Path, type Problem, rollOf } from '../job';
import { money, type Money, printMoney } from '../measure';
import type { Order, OrderLine } from './types';

/**
 * Prices that make the order and the quote wrong in silence: none where something has to be
 * bought, one lost in rounding, one given long ago.
 */
export function pricesAsked(job: Job, lines: Order['lines']): Problem[] {
	const bought = lines.filter((l) => l.buy > 0);
	return [
		...bought.filter((l) => l.group !== 'sundries').flatMap((l) => unpriced(job, l)),
		...bought
			.filter((l) => l.group === 'sundries')
			.flatMap((l) => free(job, l, 'has to be bought')),
		...lines
			.filter((l) => l.buy === 0 && l.fromRack.number > 0 && l.id !== '')
			.flatMap((l) => free(job, l, 'comes off the rack')),
		...bought.flatMap((l) => old(job, l)),
	];
}

const LISTS = { sheets: 'sheets', cloth: 'rolls', sundries: 'sundries' } as const;

function placeOf(job: Job, line: OrderLine): Path {
	const list = LISTS[line.group];
	const at = job.stock[list].findIndex((thing: { readonly id: string }) => thing.id === line.id);
	return ['stock', list, at];
}

function unpriced(job: Job, line: OrderLine): Problem[] {
	const path = placeOf(job, line);
	if (line.total === 0 && listPrice(job, line) === 0) {
		const what = `${line.what} (${line.id}) has to be bought but has no price, so the order and the quote are too low.`;
		return [{ path: [...path, 'price'], what, fix: 'Give its price.', kind: 'check' }];
	}
	return line.group === 'cloth' ? coarse(job, line, [...path, 'step']) : [];
}

/** A shop may well give screws, or what it has long paid for: nothing is wrong, and it is told. */
function free(job: Job, line: OrderLine, does: string): Problem[] {
	if (listPrice(job, line) > 0) return [];
	const what = `${line.what} (${line.id}) ${does} but has no price: the quote counts nothing for it.`;
	const fix = 'Give its price, or leave it where it is to cost nothing.';
	return [{ path: [...placeOf(job, line), 'price'], what, fix, kind: 'note' }];
}

function listPrice({ stock }: Job, { group, id }: OrderLine): number {
	const list: readonly { readonly id: string; readonly price: number }[] = stock[LISTS[group]];
	return list.find((thing) => thing.id === id)?.price ?? 0;
}

/** The price of a step may be off by this share of it, by rounding to the least coin. */
const COARSE = 0.01;

function coarse(job: Job, line: OrderLine, path: Path): Problem[] {
	const roll = rollOf(job, line.id);
	const exact = roll ? eachStep(roll, line.buy, job.shop.ruler) : 0;
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

/** A price given longer before the job's date than the shop lets prices hold. */
function old(job: Job, line: OrderLine): Problem[] {
	const { priceAge } = job.shop;
	const [given, today] = [dayNumber(line.priced), dayNumber(job.date)];
	if (priceAge === null || given === null || today === null) return [];
	const age = today - given;
	if (age <= priceAge) return [];
	return [
		{
			path: [...placeOf(job, line), 'priced'],
			what: `The price of ${line.what} (${line.id}) is of ${line.priced}, ${age} days before the date of the job; the shop lets prices hold for ${priceAge}.`,
			fix: 'Ask for the price and give it with its day.',
			kind: 'check',
		},
	];
}
