import { money, type Money, printMoney, type Ruler } from '../../measure';
import type { Plan } from '../../plan';

/** One line of the cost sheet; those marked 'aside' are part of the line above and not added. */
export interface CostLine {
	readonly label: string;
	readonly amount: Money;
	readonly as: 'line' | 'sum' | 'aside';
}

/**
 * The cost sheet from what is bought to what the customer pays: each sum is the lines since the
 * sum before and that one. Lines of nothing are left out, but for the sums. What spoil costs stands
 * after the total: the customer does not pay for it.
 */
export function costLines({ job, quote }: Pick<Plan, 'job' | 'quote'>): CostLine[] {
	const { shop } = job;
	const per = (n: number): string => percentText(n, shop.ruler);
	const { by, percent } = shop.profit;
	const of = by === 'markup' ? 'of the cost' : 'of cost and profit';
	const line = (label: string, amount: Money): CostLine => ({ label, amount, as: 'line' });
	const sum = (label: string, amount: Money): CostLine => ({ label, amount, as: 'sum' });
	const material = money(quote.bought + quote.fromRack - quote.credit);
	const isFree = quote.bought + quote.fromRack === 0;
	const lines = [
		line('Material bought: whole sheets, steps and packs', quote.bought),
		line('Material off the rack, at its list price', quote.fromRack),
		{
			...line(`${isFree ? OFFCUTS : 'of all this'}, in the work itself`, quote.used),
			as: 'aside' as const,
		},
		{ ...line('of all this, cut, pulled or used already', quote.booked), as: 'aside' as const },
		line('Offcuts credited', money(-quote.credit)),
		line('Labour', quote.labourCost),
		line(`Overhead, ${per(shop.overhead)} of labour`, quote.overhead),
		sum('Cost', quote.cost),
		line(
			`Markup on material, ${per(shop.materialMarkup)} of ${printMoney(material, shop.currency, shop.ruler.decimal)}`,
			quote.materialMarkup,
		),
		line(`Profit, ${by} ${per(percent)} ${of}`, quote.profit),
		sum('Net', quote.net),
		line(`Tax, ${per(shop.tax.percent)}`, quote.tax),
		sum('Total', quote.total),
		line("Spoil, the shop's own: cut again, in no figure above", quote.spoil.cost),
		{
			...line('spoiled so far, material spent before, at its list price', quote.spoil.lost),
			as: 'aside' as const,
		},
	];
	return lines.filter((l) => l.as === 'sum' || l.amount !== 0);
}

/** They bear no price of their own. */
const OFFCUTS = 'offcuts that an earlier job paid for';

/** What all that is earned comes to, however it was asked for. */
export function earnedText({ job, quote }: Pick<Plan, 'job' | 'quote'>): string {
	const { ruler } = job.shop;
	const [markup, margin] = [percentText(quote.markup, ruler), percentText(quote.margin, ruler)];
	return `Earned in all: markup ${markup} of the cost, margin ${margin} of the net price.`;
}

export function percentText(n: number, ruler: Ruler): string {
	return `${String(Math.round(n * 100) / 100).replace('.', ruler.decimal)} %`;
}
