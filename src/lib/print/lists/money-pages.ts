import { plainMoney, printMoney, type Money, type Ruler } from '../../measure';
import type { OrderLine } from '../../estimate';
import type { Plan } from '../../plan';
import {
	amountText,
	buyText,
	CARPET_HEADS,
	carpetWays,
	costLines,
	earnedText,
	figuresOn,
} from '../wording';
import {
	cautionBlocks,
	space,
	type Block,
	type Leaf,
	leavesOf,
	widthOf,
	table,
	type Row,
	heading,
	paragraph,
	subheading,
	wholePlan,
} from '../page';

const GROUPS: Readonly<Record<OrderLine['group'], string>> = {
	sheets: 'Sheets',
	cloth: 'Cloth',
	sundries: 'Sundries',
};

/**
 * What to buy, in the seller's units, with what the rack already holds and what will be left over.
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
	blocks.push(
		totalLine('Total of the order', printMoney(plan.order.total, currency, ruler.decimal), width),
	);
	blocks.push(...cautionBlocks(plan, wholePlan(plan, 'order'), width));
	return leavesOf(plan, { name: 'Order', title: 'Order list' }, blocks);
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
				{ head: 'What', width: { share: 8 } },
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

function totalLine(label: string, amount: string, width: number): Block {
	return {
		height: 9,
		marks: [
			{
				kind: 'path',
				steps: [
					['M', width - 80, 0],
					['L', width, 0],
				],
				line: 'narrow',
			},
			{ kind: 'text', x: width - 80, y: 5.4, text: label, size: 3.6 },
			{
				kind: 'text',
				x: width,
				y: 5.4,
				text: amount,
				size: 4.4,
				anchor: 'end',
				weight: 'semibold',
			},
		],
	};
}

/** The customer's page: what is made and what it costs; no workings. */
export function quotePages(plan: Plan): Leaf[] {
	const { job, quote } = plan;
	if (quote.lines.length === 0) return [];
	const width = widthOf(plan);
	const print = (m: Money) => printMoney(m, job.shop.currency, job.shop.ruler.decimal);
	const to = [job.customer && `For ${job.customer}`, job.vehicle, job.date].filter(Boolean);
	const blocks: Block[] = [
		heading(
			`Quote: ${job.name}`,
			width,
			job.number === '' ? '' : `number ${job.number}, revision ${job.revision}`,
		),
		...(to.length === 0 ? [] : [paragraph(to.join('\n'), width), space(4)]),
		...table(
			{
				columns: [
					{ head: 'What', width: { share: 1 } },
					{ head: 'Price', width: 40, align: 'end' },
				],
				rows: quote.lines.map((l) => ({ cells: [l.what, print(l.price)] })),
				size: 3.8,
			},
			width,
		),
		space(3),
		sumLine('Net', print(quote.net), width),
		sumLine('Tax', print(quote.tax), width),
		totalLine('Total', print(quote.total), width),
		...(job.shop.name === ''
			? []
			: [space(10), paragraph(job.shop.name, width, { weight: 'semibold' })]),
	];
	return leavesOf(plan, { name: 'Quote', title: 'Quote' }, blocks);
}

function sumLine(label: string, amount: string, width: number): Block {
	return {
		height: 6,
		marks: [
			{ kind: 'text', x: width - 80, y: 4, text: label, size: 3.6 },
			{ kind: 'text', x: width, y: 4, text: amount, size: 3.6, anchor: 'end' },
		],
	};
}

/** The shop's page: bought and used side by side, the hours, markup and margin together. */
export function costPages(plan: Plan): Leaf[] {
	const { job, quote } = plan;
	if (quote.labour.length === 0 && quote.bought === 0) return [];
	const width = widthOf(plan);
	const { currency, ruler } = job.shop;
	const plain = (m: Money) => plainMoney(m, currency, ruler.decimal);
	const rows: Row[] = costLines(plan).map(({ label, amount, as }) => ({
		...row(label, as === 'aside' ? `(${plain(amount)})` : plain(amount)),
		...(as === 'sum' ? { sum: true } : {}),
	}));
	const blocks: Block[] = [
		heading('Cost sheet', width, `for the shop only  ·  amounts in ${currency}`),
		...labourTable(plan, width, plain),
		space(5),
		...table(
			{
				columns: [
					{ head: 'Sum', width: { share: 1 } },
					{ head: currency, width: 36, align: 'end' },
				],
				rows,
			},
			width,
		),
		space(3),
		paragraph(earnedText(plan), width),
		...carpetBlocks(plan, width),
	];
	return leavesOf(plan, { name: 'Cost sheet', title: 'Cost sheet (shop only)' }, blocks);
}

/** What either way of carpeting a box would cost. */
function carpetBlocks(plan: Plan, width: number): Block[] {
	const figures = figuresOn(plan.job.shop.ruler);
	return carpetWays(plan, figures).flatMap(({ title, rows, taken }) => [
		space(4),
		subheading(title, width),
		...table(
			{
				columns: CARPET_HEADS.map((head, i) => ({
					head,
					width: { share: i === 1 ? 1.6 : 1 },
					align: i < 3 ? 'start' : 'end',
				})),
				rows: rows.map((cells) => ({ cells })),
			},
			width,
		),
		paragraph(taken, width, { size: 3.2 }),
	]);
}

function row(label: string, amount: string): Row {
	return { cells: [label, amount] };
}

function labourTable(plan: Plan, width: number, plain: (m: Money) => string): Block[] {
	const { ruler } = plan.job.shop;
	return table(
		{
			columns: [
				{ head: 'Labour', width: { share: 1 } },
				{ head: 'Amount', width: 30, align: 'end' },
				{ head: 'Minutes', width: 20, align: 'end' },
				{ head: 'Cost', width: 24, align: 'end' },
			],
			rows: plan.quote.labour.map((l) => ({
				cells: [
					l.what,
					amountText({ number: l.amount, unit: l.unit }, ruler),
					String(Math.round(l.minutes)),
					plain(l.cost),
				],
			})),
		},
		width,
	);
}
