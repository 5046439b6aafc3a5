import type { Need } from '../design';
import type { Job, Problem } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import type { Length } from '../measure';
import { type Built, items } from './items';
import { makeOrder } from './order';
import { makeQuote } from './quote';
import type { Order, Quote } from './types';

/** What a plan came to before anybody asked what it costs. */
export interface Priced extends Built {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly needs: readonly Need[];
	/** Seams in all the cloth. */
	readonly seamLength: Length;
}

/** What to buy and what to ask for it, and what is missing to say so. */
export interface Estimate {
	readonly order: Order;
	readonly quote: Quote;
	readonly problems: readonly Problem[];
}

export function estimate(job: Job, work: Priced): Estimate {
	const { order, problems } = makeOrder(job, work.boards, work.cloths, work.needs, work.reels);
	const quote = makeQuote(job, { ...work, ...toBuild(job), order, items: items(job, work) });
	return { order, quote, problems };
}

/** How many boxes and panels are put together; a pair is two panels. */
export function toBuild(job: Job): { boxes: number; panels: number } {
	return {
		boxes: job.boxes.reduce((sum, b) => sum + b.count, 0),
		panels: job.panels.reduce((sum, p) => sum + p.count * (p.pair === 'both' ? 2 : 1), 0),
	};
}
