import type { BoardLayouts, ClothLayouts } from '../../layout';
import { money, ticks } from '../../measure';
import type { Order, Quote } from '../types';
import type { Tally } from './together';

interface Counted {
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	readonly order: Order;
	readonly quote: Pick<Quote, 'left'>;
}

/** What plans come to that are still to be carried out, one or several. */
export function tallyOf(plans: readonly Counted[]): Tally {
	const sum = (of: (plan: Counted) => number): number => plans.reduce((n, p) => n + of(p), 0);
	return {
		sheets: sum(({ boards }) => boards.reduce((n, b) => n + sheetsIn(b), 0)),
		bought: sum(({ order }) =>
			order.lines.reduce((n, l) => n + (l.group === 'sheets' ? l.buy : 0), 0),
		),
		pull: ticks(sum(({ cloths }) => cloths.reduce((n, c) => n + pullIn(c), 0))),
		ordered: money(sum(({ order }) => order.total)),
		fromRack: money(sum(({ quote }) => quote.left.fromRack)),
		minutes: sum(({ quote }) => quote.left.labour.reduce((n, l) => n + l.minutes, 0)),
		labour: money(sum(({ quote }) => quote.left.labourCost)),
	};
}

/** Sheets and offcuts that are still to be cut. */
export const sheetsIn = ({ sources }: Pick<BoardLayouts, 'sources'>): number =>
	sources.filter((s) => !s.cut).length;

/** Cloth that is still to be pulled. */
export const pullIn = ({ rolls }: Pick<ClothLayouts, 'rolls'>): number =>
	rolls.reduce((sum, r) => sum + (r.pulled ? 0 : r.pull), 0);
