import type { Job } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { money, type Money } from '../measure';
import { labourLines, type Work } from './labour';
import { worthFromRack, worthOfOffcuts, worthUsed } from './material';
import { shareOut } from './share';
import { NO_SPOIL } from './spoil';
import type { Order, Quote } from './types';

/**
 * A thing the customer gets: a box, a panel, the list of loose parts, with how much of the work it
 * is.
 */
export interface Item {
	readonly what: string;
	readonly weight: number;
}

interface QuoteInput extends Work {
	readonly order: Order;
	readonly cloths: readonly ClothLayouts[];
	readonly boards: readonly BoardLayouts[];
	readonly items: readonly Item[];
}

/**
 * Costs, what is earned, tax and what the customer pays. Each figure is rounded once; the sums are
 * sums of rounded figures.
 */
export function makeQuote(job: Job, input: QuoteInput): Quote {
	const labour = labourLines(job, input);
	const labourCost = money(labour.reduce((sum, l) => sum + l.cost, 0));
	const fromRack = money(worthFromRack(job, input.order));
	const credit = money(job.shop.creditOffcuts ? worthOfOffcuts(job, input.boards) : 0);
	const material = input.order.total + fromRack - credit;
	const overhead = money((labourCost * job.shop.overhead) / 100);
	const cost = money(material + labourCost + overhead);
	const materialMarkup = money((material * job.shop.materialMarkup) / 100);
	const profit = profitOn(cost, job);
	const earned = materialMarkup + profit;
	const net = money(cost + earned);
	const taxed = job.shop.tax.labour
		? net
		: money(materialMarkup + shareOf(cost + profit, cost, material));
	const tax = money((taxed * job.shop.tax.percent) / 100);
	const shares = shareOut(
		net,
		input.items.map((i) => i.weight),
	);
	return {
		bought: input.order.total,
		fromRack,
		used: money(worthUsed(job, input.boards, input.cloths, input.order)),
		credit,
		labour,
		labourCost,
		overhead,
		cost,
		materialMarkup,
		profit,
		markup: cost === 0 ? 0 : (100 * earned) / cost,
		margin: net === 0 ? 0 : (100 * earned) / net,
		net,
		taxed,
		tax,
		total: money(net + tax),
		booked: money(0),
		left: { bought: input.order.total, fromRack, labour, labourCost },
		spoil: NO_SPOIL,
		lines: input.items.map((i, n) => ({ what: i.what, price: shares[n] ?? money(0) })),
	};
}

/**
 * Markup is a share of the cost, margin a share of the price: 40 % margin is 66.67 % markup. The
 * price here is cost and profit: what is earned on material comes to it and is marked up no more.
 */
function profitOn(cost: Money, job: Job): Money {
	const { by, percent } = job.shop.profit;
	if (by === 'markup') return money((cost * percent) / 100);
	return money((cost * percent) / (100 - percent));
}

/**
 * Of a price, the share that material makes of the cost; all of a price that costs nothing. Tax is
 * due on that share only, labour with its overhead is never taxed without asking.
 */
function shareOf(price: number, cost: Money, material: number): number {
	return cost === 0 ? price : (price * material) / cost;
}
