import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { plainMoney, printMoney, showMass, type Money } from '../../src/lib/measure';
import { plan as planned, type Plan } from '../../src/lib/plan';
import { orderGroups } from '../../src/lib/print/lists/order-pages';
import { costPack, printPack, quotePack } from '../../src/lib/print/pack';
import { writePdf } from '../../src/lib/print/pens/pdf';
import { amountText, buyText, costLines, figuresOn, quoteShown } from '../../src/lib/print/wording';
import { samples } from '../plan/samples';
import { FONTS } from './fixture';
import { type ReadPage, readPdf } from './pdf-reader';
import { expectTables, type Wanted } from './tables-on-paper';

/*
 * Each sample in both rulers: its papers are written, read back by another reader, and the figures
 * of their tables held against the plan. The one thing both use is the formatter of figures.
 */

const META = { title: 'Figures', author: '', date: '2026-11-30' };
const UNITS = ['mm', 'in'] as const;

const inUnit = (file: JobFile, unit: (typeof UNITS)[number]): JobFile => ({
	...file,
	shop: { ...file.shop, ruler: { ...file.shop?.ruler, unit } },
});

const read = async (pages: ReturnType<typeof printPack>): Promise<readonly ReadPage[]> =>
	pages.length === 0 ? [] : (await readPdf(writePdf(pages, FONTS, META))).pages;

/** The parts by owner: how many, how large, how heavy. */
function partsTables({ job, parts }: Plan): Wanted[] {
	const figures = figuresOn(job.shop.ruler);
	return [...new Set(parts.map((p) => p.owner))].map((owner) => {
		const own = parts.filter((p) => p.owner === owner);
		const short = own.map((p) =>
			p.short && p.shift === undefined ? figures.size(p.short.length, p.short.width) : '',
		);
		const both = short.some((t) => t !== '');
		const size = own.map(
			(p) => `${p.shift === undefined ? '' : 'blank '}${figures.size(p.length, p.width)}`,
		);
		const sizes = both ? ['LONG face', 'SHORT face'] : ['Size'];
		return {
			heads: ['Mark', 'Part', 'Board, thickness', 'Pcs', ...sizes, 'Each'],
			columns: {
				Mark: own.map((p) => p.label),
				Pcs: own.map((p) => String(p.count)),
				[both ? 'LONG face' : 'Size']: size,
				...(both ? { 'SHORT face': short } : {}),
				Each: own.map((p) => showMass(p.mass, job.shop.ruler)),
			},
		};
	});
}

function fetchTable({ job, order }: Plan): Wanted[] {
	const { ruler } = job.shop;
	if (order.lines.length === 0) return [];
	return [
		{
			heads: ['What', 'Need', 'Off the rack', 'To buy'],
			columns: {
				Need: order.lines.map((l) => amountText(l.need, ruler)),
				'Off the rack': order.lines.map((l) => amountText(l.rack, ruler)),
				'To buy': order.lines.map((l) => (l.buy > 0 ? buyText(l, ruler) : '')),
			},
		},
	];
}

function orderTables(plan: Plan): Wanted[] {
	const { currency, ruler } = plan.job.shop;
	const plain = (m: Money): string => plainMoney(m, currency, ruler.decimal);
	return orderGroups(plan)
		.filter(({ lines }) => lines.length > 0)
		.map(({ lines }) => ({
			heads: ['What', 'Need', 'On the rack', 'To buy', 'Each', 'Total', 'Left over'],
			columns: {
				Need: lines.map((l) => amountText(l.need, ruler)),
				'On the rack': lines.map((l) => amountText(l.rack, ruler) || 'none'),
				'To buy': lines.map((l) => buyText(l, ruler)),
				Each: lines.map((l) => plain(l.each)),
				Total: lines.map((l) => plain(l.total)),
				'Left over': lines.map((l) => amountText(l.spare, ruler)),
			},
		}));
}

function costTables(plan: Plan): Wanted[] {
	const { currency, ruler } = plan.job.shop;
	const plain = (m: Money): string => plainMoney(m, currency, ruler.decimal);
	const { labour, bought } = plan.quote;
	if (labour.length === 0 && bought === 0) return [];
	const sums = costLines(plan).map(({ amount, as }) =>
		as === 'aside' ? `(${plain(amount)})` : plain(amount),
	);
	const worked: Wanted = {
		heads: ['Labour', 'Amount', 'Minutes', 'Cost'],
		columns: {
			Amount: labour.map((l) => amountText({ number: l.amount, unit: l.unit }, ruler)),
			Minutes: labour.map((l) => String(Math.round(l.minutes))),
			Cost: labour.map((l) => plain(l.cost)),
		},
	};
	return [worked, { heads: ['Sum', currency], columns: { [currency]: sums } }];
}

function quoteTable(plan: Plan): Wanted[] {
	const { currency, ruler } = plan.job.shop;
	const quote = quoteShown(plan);
	const print = (m: Money): string => printMoney(m, currency, ruler.decimal);
	const prices = quote.lines.map((l) => print(l.price));
	return [{ heads: ['What', 'Price'], columns: { Price: prices } }];
}

const CASES = await Promise.all(
	samples
		.filter(({ name }) => name !== 'empty.json')
		.flatMap(({ name, file }) => UNITS.map((unit) => ({ name, unit, file: inUnit(file, unit) })))
		.map(async (one) => {
			const plan = await planned(one.file, { effort: 20, seed: 1 });
			const bench = await read(printPack(plan));
			const cost = await read(costPack(plan));
			return { ...one, plan, bench, cost, quote: await read(quotePack(plan)) };
		}),
);

describe.each(CASES)('$name in $unit', ({ plan, bench, cost, quote }) => {
	it('has every figure of parts, order, costs and quote on its papers as in the plan', () => {
		const all = [...partsTables(plan), ...fetchTable(plan)];
		expect(expectTables(bench, all)).toBeGreaterThan(3 * plan.parts.length);
		expectTables(cost, [...costTables(plan), ...orderTables(plan)]);
		if (quote.length > 0) expectTables(quote, quoteTable(plan));
	});
});

it('fails by one wrong figure in any of the tables', () => {
	const { plan, bench, cost } = CASES[0]!;
	const wrong = (pages: readonly ReadPage[], figure: string): readonly ReadPage[] =>
		pages.map((page) => ({
			...page,
			texts: page.texts.map((t) => (t.text === figure ? { ...t, text: `${figure}1` } : t)),
		}));
	for (const [pages, tables] of [
		[bench, partsTables(plan)],
		[cost, [...costTables(plan), ...orderTables(plan)]],
	] as const) {
		const figures = tables.flatMap(({ columns }) => Object.values(columns).map(([first]) => first));
		const printed = figures.filter((f) => pages.some((p) => p.texts.some((t) => t.text === f)));
		expect(printed.length).toBeGreaterThan(3);
		for (const figure of printed)
			expect(() => expectTables(wrong(pages, figure!), tables), figure).toThrow();
	}
});
