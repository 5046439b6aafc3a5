import type { Need } from '../design';
import type { Job, Problem } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import type { Length } from '../measure';
import { type Built, items } from './items';
import { makeOrder } from './order';
import { makeQuote } from './quote';
import { saidFor, spoilOf } from './spoil';
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

/** Layouts of a job as if nothing had been spoiled. */
export type Sound = Pick<Priced, 'boards' | 'cloths'>;

/**
 * @param sound absent where nothing was spoiled; the customer pays what the job would have come to,
 * and what spoil costs is told beside it
 */
export function estimate(job: Job, work: Priced, sound: Sound | null = null): Estimate {
	const made = makeOrder(job, work.boards, work.cloths, work.needs, work.reels);
	const quoteOf = (what: Priced, order: Order): Quote =>
		makeQuote(job, { ...what, ...toBuild(job), order, items: items(job, work) });
	const { problems } = made;
	if (!sound) return { order: made.order, quote: quoteOf(work, made.order), problems };
	const as = { ...work, ...sound };
	const { order } = makeOrder(job, as.boards, as.cloths, as.needs, as.reels);
	const quote = quoteOf(as, order);
	const is = quoteOf({ ...work, parts: withAgain(work, sound) }, made.order);
	return {
		order: saidFor(made.order, work, work.parts),
		quote: { ...quote, spoil: spoilOf(job, work, is, quote) },
		problems,
	};
}

/** Parts with those counted once more that are still to be cut again. */
function withAgain({ parts, boards }: Priced, sound: Sound): Priced['parts'] {
	const open = (all: Sound['boards'], id: string): number =>
		all.reduce(
			(sum, { answer, sources }) =>
				sum +
				answer.layouts
					.filter((_, i) => !sources[i]?.cut)
					.reduce((n, l) => n + l.placed.filter((p) => p.id === id).length, 0),
			0,
		);
	return parts.map((p) => {
		const again = Math.max(0, open(boards, p.id) - open(sound.boards, p.id));
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
