import { majorMoney, type Ruler, toMm } from '../../measure';
import type { Job } from '../job';
import { writeCsv } from '../table';
import { goodsOf, kindWord } from './goods';

const HEADINGS = [
	...['kind', 'mark', 'code', 'name', 'supplier', 'least', 'sold by'],
	...['from', 'price', 'currency', 'day'],
];

/** The prices of the rack as a list that reads back the same; a row more for each price break. */
export function writePricesCsv(job: Pick<Job, 'stock' | 'shop'>): string {
	const { currency, ruler } = job.shop;
	const figure = (n: number): string => written(n, ruler);
	const rows = goodsOf(job, ruler).flatMap((goods) => {
		const thing = job.stock[goods.list].find((t: { readonly id: string }) => t.id === goods.id);
		if (!thing) return [];
		const counted = 'soldBy' in thing;
		const head = [kindWord(goods.list), goods.id, goods.code, goods.name, goods.supplier];
		const kept = counted ? [thing.least, thing.soldBy] : ['', ''];
		const from = (n: number): string => (counted ? String(n) : `${figure(toMm(n) / 1000)} m`);
		const row = (at: string, price: number): (string | number)[] => [
			...[...head, ...kept, at, figure(majorMoney(price, currency)), currency, thing.priced],
		];
		return [row('', thing.price), ...thing.breaks.map((b) => row(from(b.from), b.price))];
	});
	return writeCsv([HEADINGS, ...rows], ruler.decimal === ',' ? ';' : ',');
}

/** Never three decimals alone, which a reader might take for thousands. */
function written(n: number, { decimal }: Pick<Ruler, 'decimal'>): string {
	const text = /\.\d{3}$/.test(String(n)) ? `${n}0` : String(n);
	return text.replace('.', decimal);
}
