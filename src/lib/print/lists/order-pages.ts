import type { OrderLine, SupplierOrder } from '../../estimate';
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
import { amountText, buyText, moreText } from '../wording';
import { sumLine, totalLine } from './sums';

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
 * what it costs: by supplier where one is named, else by what it is.
 */
export function orderPages(plan: Plan): Leaf[] {
	if (plan.order.lines.length === 0) return [];
	const width = widthOf(plan);
	const { currency, ruler } = plan.job.shop;
	const plain = (m: Money) => plainMoney(m, currency, ruler.decimal);
	const blocks: Block[] = [heading('Order', width, `prices in ${currency}`)];
	for (const group of orderGroups(plan)) {
		if (group.lines.length === 0) continue;
		blocks.push(subheading(group.title, width), ...orderTable(group.lines, width, plain, ruler));
		if (group.sum) blocks.push(space(2), sumLine(...group.sum, width));
		blocks.push(space(4));
	}
	const total = printMoney(plan.order.total, currency, ruler.decimal);
	blocks.push(totalLine('Total of the order', total, width));
	return leavesOf(plan, { name: 'Order', title: 'Order: shop only' }, blocks);
}

/** Lines that stand together, and what they come to in words and figures. */
export interface OrderGroup {
	readonly title: string;
	readonly lines: readonly OrderLine[];
	readonly sum?: readonly [label: string, amount: string];
}

/** The lines of the order by supplier where one is named, else by what they are. */
export function orderGroups(plan: Plan): OrderGroup[] {
	const { lines, suppliers } = plan.order;
	if (suppliers.every((s) => s.id === ''))
		return (['sheets', 'cloth', 'sundries'] as const).map((group) => ({
			title: GROUPS[group],
			lines: lines.filter((l) => l.group === group),
		}));
	const { currency, ruler } = plan.job.shop;
	const bought = suppliers.map((from): OrderGroup => {
		const total = printMoney(from.total, currency, ruler.decimal);
		return {
			title: from.name || 'From anybody',
			lines: linesFrom(plan, from),
			sum: [`From ${from.name || 'anybody'}`, total],
		};
	});
	return [...bought, { title: 'On the rack already', lines: lines.filter((l) => l.buy === 0) }];
}

/** What is bought from one supplier; a line of an unknown one is anybody's. */
export function linesFrom({ order }: Plan, { id }: SupplierOrder): OrderLine[] {
	const known = order.suppliers.map((s) => s.id);
	const of = ({ supplier }: OrderLine): string => (known.includes(supplier) ? supplier : '');
	return order.lines.filter((l) => l.buy > 0 && of(l) === id);
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

/** Name, supplier's code, what a sundry is for, and why more of it is bought than is needed. */
function whatText(line: OrderLine): string {
	const spare = line.sparePercent > 0 ? `${line.sparePercent} % spare is counted in` : '';
	const purposes = line.for.length === 0 ? '' : `for ${line.for.join(', ')}`;
	return [line.what, line.code, purposes, spare, moreText(line)].filter((t) => t !== '').join('\n');
}
