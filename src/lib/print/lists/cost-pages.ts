import { type Money, plainMoney } from '../../measure';
import type { Plan } from '../../plan';
import {
	type Block,
	heading,
	type Leaf,
	leavesOf,
	paragraph,
	type Row,
	space,
	subheading,
	table,
	widthOf,
} from '../page';
import { amountText, CARPET_HEADS, carpetWays, costLines, earnedText, figuresOn } from '../wording';

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
		heading('Cost sheet', width, `shop only  ·  amounts in ${currency}`),
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
	return leavesOf(plan, { name: 'Cost sheet', title: 'Cost sheet: shop only' }, blocks);
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
