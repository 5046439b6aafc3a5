import type { Need } from '../design';
import type { Job, Problem } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { type Length, money } from '../measure';
import type { RunPlan } from '../runs';
import { unbooked, unpricedBookings } from './booked';
import { type Built, items } from './items';
import { makeOrder } from './order';
import { makeQuote } from './quote';
import { saidFor, spoilOf } from './spoil';
import type { Left, Order, Quote } from './types';

/** What a plan came to before anybody asked what it costs. */
export interface Priced extends Built {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly needs: readonly Need[];
	readonly runs: readonly RunPlan[];
	/** Seams in all the cloth. */
	readonly seamLength: Length;
}

/** What to buy and what to ask for it, and what is missing to say so. */
export interface Estimate {
	readonly order: Order;
	readonly quote: Quote;
	readonly problems: readonly Problem[];
}

/** Layouts of a job as if nothing had been spoiled. */
export type Sound = Pick<Priced, 'boards' | 'cloths'>;

/**
 * The order is of what is left to do; the quote is of the whole job, whatever of it is booked.
 *
 * @param sound absent where nothing was spoiled; the customer pays what the job would have come to,
 * and what spoil costs is told beside it
 */
export function estimate(job: Job, work: Priced, sound: Sound | null = null): Estimate {
	const { order, problems } = orderOf(job, work);
	const said = [...problems, ...unpricedBookings(job)];
	const quote = wholeQuote(job, { ...work, ...sound });
	if (!sound) return { order, quote, problems: said };
	const is = wholeQuote(job, { ...work, parts: withAgain(work, sound) });
	return {
		order: saidFor(order, work, work.parts),
		quote: { ...quote, left: is.left, spoil: spoilOf(job, work, is, quote) },
		problems: said,
	};
}

/** The same of what is left of a job and nothing else: nobody bears a share for what is done. */
export function estimateLeft(job: Job, work: Priced): Estimate {
	const { order, problems } = orderOf(job, work);
	return { order, quote: quoteOf(job, work, order), problems };
}

/** Of what is booked and what is left; `left` is that alone. */
function wholeQuote(asked: Job, made: Priced): Quote {
	const left = leftOf(asked, made);
	const { job, work } = unbooked(asked, made);
	const quote = quoteOf(job, work, orderOf(job, work).order);
	const booked = quote.bought + quote.fromRack - left.bought - left.fromRack;
	return { ...quote, booked: money(booked), left };
}

function quoteOf(job: Job, work: Priced, order: Order): Quote {
	return makeQuote(job, { ...work, ...toBuild(job), order, items: items(job, work) });
}

function leftOf(job: Job, work: Priced): Left {
	const { bought, fromRack, labour, labourCost } = quoteOf(job, work, orderOf(job, work).order);
	return { bought, fromRack, labour, labourCost };
}

function orderOf(job: Job, { boards, cloths, needs, reels }: Priced): ReturnType<typeof makeOrder> {
	return makeOrder(job, boards, cloths, needs, reels);
}

/** Parts with those counted once more that were cut again, or still are to be. */
function withAgain({ parts, boards }: Priced, sound: Sound): Priced['parts'] {
	const laid = (all: Sound['boards'], id: string): number =>
		all
			.flatMap(({ answer }) => answer.layouts)
			.reduce((sum, { placed }) => sum + placed.filter((p) => p.id === id).length, 0);
	return parts.map((p) => {
		const again = Math.max(0, laid(boards, p.id) - laid(sound.boards, p.id));
		return again > 0 ? { ...p, count: p.count + again } : p;
	});
}

/** How many boxes and panels are put together; a pair is two panels. */
export function toBuild(job: Job): { boxes: number; panels: number } {
	return {
		boxes: job.boxes.reduce((sum, b) => sum + b.count, 0),
		panels: job.panels.reduce((sum, p) => sum + p.count * (p.pair === 'both' ? 2 : 1), 0),
	};
}
