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
import {
	amountText,
	CARPET_HEADS,
	carpetWays,
	CUT_WAY_HEADS,
	cutWays,
	costLines,
	earnedText,
	figuresOn,
	quoteShown,
	sinceSent,
} from '../wording';

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
		...waysBlocks(plan, width),
		...optionBlocks(plan, width, plain),
		...sinceBlocks(plan, width, plain),
	];
	return leavesOf(plan, { name: 'Cost sheet', title: 'Cost sheet: shop only' }, blocks);
}

/** What either way of carpeting a box, and of cutting blanks off their roll, would cost. */
function waysBlocks(plan: Plan, width: number): Block[] {
	const figures = figuresOn(plan.job.shop.ruler);
	return [
		...carpetWays(plan, figures).map((ways) => ({ heads: CARPET_HEADS, ...ways })),
		...cutWays(plan).map((ways) => ({ heads: CUT_WAY_HEADS, ...ways })),
	].flatMap(({ heads, title, rows, taken }) => [
		space(4),
		subheading(title, width),
		...table(
			{
				columns: heads.map((head, i) => ({
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

/** What each option comes to, those that are not offered with the reason. */
function optionBlocks(plan: Plan, width: number, plain: (m: Money) => string): Block[] {
	if (plan.options.length === 0) return [];
	const rows = plan.options.map((o): Row => ({
		cells: [
			[o.name, ...o.problems.map((p) => `${p.what} ${p.fix}`)].join('\n'),
			o.offered ? plain(o.bought) : '–',
			o.offered ? plain(o.difference) : 'not offered',
			o.offered ? plain(o.total) : '–',
		],
	}));
	const columns = [
		{ head: 'Option', width: { share: 1 } },
		{ head: 'Bought', width: 26, align: 'end' as const },
		{ head: 'Total', width: 26, align: 'end' as const },
		{ head: 'Total with it', width: 30, align: 'end' as const },
	];
	return [
		...[space(4), subheading('Options, as differences', width)],
		...table({ columns, rows }, width),
	];
}

/** The quote as sent beside what the plan comes to now. */
function sinceBlocks(plan: Plan, width: number, plain: (m: Money) => string): Block[] {
	const { sent } = quoteShown(plan);
	const changes = sinceSent(plan);
	if (sent === null) return [];
	const title = `Since the quote was sent on ${sent}`;
	if (changes.length === 0)
		return [space(4), subheading(title, width), paragraph('No figure of it has changed.', width)];
	const columns = [
		{ head: 'What', width: { share: 1 } },
		{ head: 'As sent', width: 30, align: 'end' as const },
		{ head: 'Now', width: 30, align: 'end' as const },
	];
	const told = (m: Money | null): string => (m === null ? 'none' : plain(m));
	const rows = changes.map(({ what, sent, now }): Row => ({
		cells: [what, told(sent), told(now)],
	}));
	return [space(4), subheading(title, width), ...table({ columns, rows }, width)];
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
