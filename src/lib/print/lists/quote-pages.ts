import { type Money, printMoney } from '../../measure';
import type { Plan } from '../../plan';
import { type Drawing, line, type Mark, placed, shortened } from '../drawing';
import {
	type Block,
	heading,
	type Leaf,
	leavesOf,
	paragraph,
	sentence,
	space,
	subheading,
	table,
	widthOf,
} from '../page';
import { percentText, type QuoteFigures, quoteShown } from '../wording';
import { pictures } from './pictures';
import { sumLine, totalLine } from './sums';

/**
 * The customer's paper: who offers what to whom, a picture of it, what it costs and until when; no
 * workings. A field the shop has left empty prints nothing.
 */
export function quotePages(plan: Plan): Leaf[] {
	const { job } = plan;
	const quote = quoteShown(plan);
	if (quote.lines.length === 0) return [];
	const width = widthOf(plan);
	const blocks: Block[] = [
		...letterhead(plan, width),
		heading(`Quote: ${job.name}`, width, numberText(plan)),
		...about(plan, quote, width),
		...pictureBlocks(plan, quote.options.length > 0 ? TALLEST.beside : TALLEST.alone, width),
		...priceBlocks(plan, quote, width),
		...optionBlocks(plan, quote, width),
		...saidBlocks(plan, quote, width),
		...acceptance(width),
	];
	return leavesOf(plan, { name: 'Quote', title: 'Quote' }, blocks);
}

function letterhead({ job: { shop } }: Plan, width: number): Block[] {
	const blocks = [
		...(shop.name === '' ? [] : [paragraph(shop.name, width, { size: 5.6, weight: 'semibold' })]),
		...(shop.address.trim() === '' ? [] : [paragraph(shop.address.trim(), width)]),
	];
	return blocks.length === 0 ? [] : [...blocks, space(9)];
}

function numberText({ job }: Plan): string {
	if (job.number === '') return '';
	return job.revision === ''
		? `number ${job.number}`
		: `number ${job.number}, revision ${job.revision}`;
}

function about({ job }: Plan, { sent }: QuoteFigures, width: number): Block[] {
	const date = sent === null ? job.date : `as sent on ${sent}`;
	const lines = [job.customer === '' ? '' : `For ${job.customer}`, job.vehicle, date].filter(
		(t) => t !== '',
	);
	return lines.length === 0 ? [] : [paragraph(lines.join('\n'), width), space(3)];
}

/** More are no help to a customer, and no room for the prices. */
const MOST_PICTURES = 6;
const COLUMNS = 3;
/** Smaller where options ask for room: the line to sign on belongs to the same page. */
const TALLEST = { alone: 44, beside: 28 };

/** What is built, side by side. */
function pictureBlocks(plan: Plan, tallest: number, width: number): Block[] {
	const shown = pictures(plan).slice(0, MOST_PICTURES);
	const rows = Math.ceil(shown.length / COLUMNS);
	const columns = Math.ceil(shown.length / Math.max(rows, 1));
	return [...Array(rows).keys()].map((i) =>
		pictureRow(shown.slice(i * columns, (i + 1) * columns), tallest, width / columns),
	);
}

function pictureRow(shown: readonly Drawing[], tallest: number, each: number): Block {
	const scaleOf = (p: Drawing): number => Math.min((each - 4) / p.width, tallest / p.height);
	const height = Math.max(...shown.map((p) => p.height * scaleOf(p)));
	const marks = shown.flatMap((picture, i): Mark[] => {
		const scale = scaleOf(picture);
		const x = i * each + (each - picture.width * scale) / 2;
		const text = shortened(picture.title, each - 4, 3);
		const middle = { x: (i + 0.5) * each, y: height + 4, anchor: 'middle' } as const;
		return [
			...placed(picture.marks, { x, y: height - picture.height * scale, scale }),
			{ kind: 'text', ...middle, text, size: 3, ink: 'pencil' },
		];
	});
	return { height: height + 8, marks };
}

function priceBlocks({ job }: Plan, quote: QuoteFigures, width: number): Block[] {
	const { currency, ruler } = job.shop;
	const print = (m: Money) => printMoney(m, currency, ruler.decimal);
	const rate = percentText(quote.taxPercent, ruler);
	const of = quote.taxed === quote.net ? '' : ` of ${print(quote.taxed)}`;
	return [
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
		{ ...space(3), keep: true },
		sumLine('Net', print(quote.net), width),
		sumLine(quote.taxPercent === 0 ? 'Tax' : `Tax, ${rate}${of}`, print(quote.tax), width),
		totalLine('Total', print(quote.total), width),
	];
}

/** Alternatives as differences of the total, each with a box for the customer's choice. */
function optionBlocks({ job }: Plan, { options }: QuoteFigures, width: number): Block[] {
	if (options.length === 0) return [];
	const { currency, ruler, tax } = job.shop;
	const print = (m: Money) => printMoney(m, currency, ruler.decimal);
	const signed = (m: Money): string => (m > 0 ? `+ ${print(m)}` : print(m));
	return [
		space(2),
		subheading('Options: tick what is wanted', width),
		...table(
			{
				columns: [
					{ head: '', width: 5 },
					{ head: 'Instead of the above', width: { share: 1 } },
					{ head: 'Difference', width: 36, align: 'end' },
					{ head: 'Total with it', width: 36, align: 'end' },
				],
				rows: options.map(({ name, note, difference, total }) => ({
					cells: [
						{ tick: true },
						[name, note.trim()].filter((t) => t !== '').join('\n'),
						signed(difference),
						print(total),
					],
				})),
				size: 3.6,
			},
			width,
		),
		...sentence(
			[
				tax.percent === 0 ? '' : 'tax included',
				options.length > 1 ? 'each is priced by itself; several together are priced anew' : '',
			],
			width,
		),
	];
}

/** Until when it holds, and on what terms. */
function saidBlocks({ job }: Plan, { sent }: QuoteFigures, width: number): Block[] {
	const { validDays, terms } = job.shop.quote;
	const said = [validText(validDays, sent ?? job.date), terms.trim()].filter((t) => t !== '');
	return said.flatMap((text) => [space(3), paragraph(text, width)]);
}

/** The last day it holds where the job's date is one of the calendar, else how many days. */
export function validText(days: number | null, date: string): string {
	if (days === null) return '';
	const count = days === 1 ? '1 day' : `${days} days`;
	const from = Date.parse(`${date}T00:00:00Z`);
	if (Number.isNaN(from) || dayOf(from) !== date)
		return `This quote is valid for ${count}${date === '' ? '' : ' from its date'}.`;
	return `This quote is valid for ${count}, until ${dayOf(from + days * DAY)}.`;
}

const DAY = 86_400_000; // ms

const dayOf = (time: number): string => new Date(time).toISOString().slice(0, 10);

/** Where the customer accepts it. */
function acceptance(width: number): Block[] {
	const [date, name] = [width * 0.34, width * 0.4];
	const rule = (from: number, to: number, text: string): Mark[] => [
		{ kind: 'path', steps: line(from, 22, to, 22), line: 'narrow' },
		{ kind: 'text', x: from, y: 26, text, size: 2.8, ink: 'pencil' },
	];
	const marks: Mark[] = [
		{ kind: 'text', x: 0, y: 4, text: 'Accepted as quoted', size: 3.6, weight: 'semibold' },
		...rule(0, date, 'Place and date'),
		...rule(name, width, 'Name and signature'),
	];
	return [space(8), { height: 30, marks }];
}
