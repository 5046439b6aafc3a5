import type { OrderLine } from '../../estimate';
import { type Money, plainMoney, printMoney, type Ruler } from '../../measure';
import type { Plan } from '../../plan';
import {
	type Block,
	cautionBlocks,
	heading,
	type Leaf,
	leavesOf,
	type Row,
	space,
	subheading,
	table,
	wholePlan,
	widthOf,
} from '../page';
import { amountText, buyText } from '../wording';
import { totalLine } from './sums';

const GROUPS: Readonly<Record<OrderLine['group'], string>> = {
	sheets: 'Sheets',
	cloth: 'Cloth',
	sundries: 'Sundries',
};

/** What the bench fetches off the rack and what has to be bought first; no prices. */
export function fetchPages(plan: Plan): Leaf[] {
	if (plan.order.lines.length === 0) return [];
	const width = widthOf(plan);
	const { ruler } = plan.job.shop;
	const rows = plan.order.lines.map((l): Row => ({
		cells: [
			{ tick: true },
			[l.what, l.code].filter((t) => t !== '').join('  ·  '),
			amountText(l.need, ruler),
			amountText(l.rack, ruler),
			{ text: l.buy > 0 ? buyText(l, ruler) : '', weight: 'semibold' },
		],
	}));
	const columns = [
		{ head: '', width: 3.6 },
		{ head: 'What', width: { share: 6 } },
		{ head: 'Need', width: { share: 2 } },
		{ head: 'Off the rack', width: { share: 2 } },
		{ head: 'To buy', width: { share: 4 } },
	];
	return leavesOf(plan, { name: 'Order', title: 'To fetch and to buy' }, [
		heading('To fetch and to buy', width),
		...table({ columns, rows }, width),
		...cautionBlocks(plan, wholePlan(plan, 'order'), width),
	]);
}

/**
 * What to buy, in the seller's units, with what the rack already holds, what will be left over and
 * what it costs.
 */
export function orderPages(plan: Plan): Leaf[] {
	if (plan.order.lines.length === 0) return [];
	const width = widthOf(plan);
	const { currency, ruler } = plan.job.shop;
	const plain = (m: Money) => plainMoney(m, currency, ruler.decimal);
	const blocks: Block[] = [heading('Order', width, `prices in ${currency}`)];
	for (const group of ['sheets', 'cloth', 'sundries'] as const) {
		const lines = plan.order.lines.filter((l) => l.group === group);
		if (lines.length === 0) continue;
		blocks.push(
			subheading(GROUPS[group], width),
			...orderTable(lines, width, plain, ruler),
			space(4),
		);
	}
	const total = printMoney(plan.order.total, currency, ruler.decimal);
	blocks.push(totalLine('Total of the order', total, width));
	return leavesOf(plan, { name: 'Order', title: 'Order: shop only' }, blocks);
}

function orderTable(
	lines: readonly OrderLine[],
	width: number,
	plain: (m: Money) => string,
	ruler: Ruler,
): Block[] {
	const rows = lines.map((l): Row => ({
		cells: [
			l.buy > 0 ? { tick: true } : '',
			whatText(l),
			amountText(l.need, ruler),
			amountText(l.rack, ruler) || 'none',
			{ text: buyText(l, ruler), ...(l.buy > 0 ? { weight: 'semibold' as const } : {}) },
			plain(l.each),
			plain(l.total),
			amountText(l.spare, ruler),
		],
	}));
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'What', width: { share: 11 } },
				{ head: 'Need', width: { share: 3 } },
				{ head: 'On the rack', width: { share: 3 } },
				{ head: 'To buy', width: { share: 5 } },
				{ head: 'Each', width: 15, align: 'end' },
				{ head: 'Total', width: 16, align: 'end' },
				{ head: 'Left over', width: { share: 3 } },
			],
			rows,
		},
		width,
	);
}

/** Name, supplier's code, and what a sundry is for. */
function whatText(line: OrderLine): string {
	const spare = line.sparePercent > 0 ? `${line.sparePercent} % spare is counted in` : '';
	const purposes = line.for.length === 0 ? '' : `for ${line.for.join(', ')}`;
	return [line.what, line.code, purposes, spare].filter((t) => t !== '').join('\n');
}
