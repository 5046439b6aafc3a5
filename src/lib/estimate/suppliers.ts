import type { Job, Problem } from '../job';
import { type Money, money, printMoney, sumMoney } from '../measure';
import type { OrderLine, SupplierOrder } from './types';

/** What is bought from whom; whoever nothing is bought from is left out. */
export function bySupplier({ stock }: Job, lines: readonly OrderLine[]): SupplierOrder[] {
	const bought = lines.filter((l) => l.buy > 0);
	const known = new Set(stock.suppliers.map((s) => s.id));
	const nobody: Pick<SupplierOrder, 'id' | 'name' | 'least'> = { id: '', name: '', least: NONE };
	return [...stock.suppliers, nobody].flatMap(({ id, name, least }): SupplierOrder[] => {
		const mine = bought.filter((l) => (known.has(l.supplier) ? l.supplier : '') === id);
		if (mine.length === 0) return [];
		return [{ id, name, least, total: sumMoney(mine.map((l) => l.total)) }];
	});
}

const NONE = money(0);

/** Orders that the supplier would not send for so little. */
export function tooSmall(job: Job, suppliers: readonly SupplierOrder[]): Problem[] {
	const say = (amount: Money): string =>
		printMoney(amount, job.shop.currency, job.shop.ruler.decimal);
	return suppliers
		.filter(({ total, least }) => total < least)
		.map(({ id, name, total, least }): Problem => {
			const at = job.stock.suppliers.findIndex((s) => s.id === id);
			return {
				path: ['stock', 'suppliers', at, 'least'],
				what: `The order from ${name} comes to ${say(total)}; they send none under ${say(least)}.`,
				fix: 'Order more of what the rack runs low of, order it with another job, or buy it elsewhere.',
				kind: 'check',
			};
		});
}
