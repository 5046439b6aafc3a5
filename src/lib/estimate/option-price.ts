import type { JobOption, Problem } from '../job';
import { money, type Money } from '../measure';
import type { Order, Quote } from './types';

/** What is read of a plan to price an option by it. */
interface Planned {
	readonly order: Order;
	readonly quote: Quote;
	readonly problems: readonly Problem[];
}

/** An option as it is offered: the job planned anew with it, and what that differs by. */
export interface OptionPrice {
	readonly id: string;
	readonly name: string;
	readonly note: string;
	/** Of the whole job with it. */
	readonly net: Money;
	readonly total: Money;
	/** Total with it, less total without; negative where it costs less. */
	readonly difference: Money;
	/** The same of what is bought. */
	readonly bought: Money;
	/** What is wrong with it and is not without it; one that stops anything is not offered. */
	readonly problems: readonly Problem[];
	readonly offered: boolean;
}

/** @param made null where its changes name nothing in the job */
export function optionPrice(
	{ id, name, note }: JobOption,
	without: Planned,
	made: Planned | null,
	problems: readonly Problem[],
): OptionPrice {
	const known = new Set(without.problems.map(said));
	const news = (made?.problems ?? []).filter((p) => p.kind !== 'note' && !known.has(said(p)));
	const found = made ?? without;
	return {
		...{ id, name, note },
		...{ net: found.quote.net, total: found.quote.total },
		difference: money(found.quote.total - without.quote.total),
		bought: money(found.order.total - without.order.total),
		problems: [...problems, ...news],
		offered: problems.length === 0 && made !== null && news.every((p) => p.kind !== 'stop'),
	};
}

const said = ({ what, fix }: Problem): string => `${what} ${fix}`;
