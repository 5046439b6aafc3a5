import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { alikeSheets } from '../../src/lib/layout';
import { bounds } from '../../src/lib/geometry';
import { mm, plainMoney, printMoney, showMass, type Money } from '../../src/lib/measure';
import { plan as planned, type Plan } from '../../src/lib/plan';
import { orderGroups } from '../../src/lib/print/lists/order-pages';
import type { Drawing, Mark, TextMark } from '../../src/lib/print/drawing';
import { costPack, printPack, quotePack } from '../../src/lib/print/pack';
import { partDrawings } from '../../src/lib/print/parts';
import { writePdf } from '../../src/lib/print/pens/pdf';
import {
	amountText,
	buyText,
	costLines,
	figuresOn,
	quoteShown,
	sheetTitle,
} from '../../src/lib/print/wording';
import { samples } from '../plan/samples';
import { cardOn, holesMissing } from './cards-on-paper';
import { FONTS } from './fixture';
import { crossesOn, missingIn } from './holes-on-paper';
import { cutRows, textLines } from './paper-lines';
import { type ReadPage, readPdf } from './pdf-reader';
import { expectSawn, type Sheet, sheetsOf } from './sheet/held-against-plan';
import { expectTables, type Wanted } from './tables-on-paper';

/*
 * Each sample in both rulers: its papers are written, read back by another reader, and the figures
 * of their tables held against the plan. The one thing both use is the formatter of figures.
 */

const META = { title: 'Figures', author: '', date: '2026-11-30' };
const UNITS = ['mm', 'in'] as const;
/** What a ruler's figures are rounded to. */
const STEPS = { mm: 0.1, in: 1 / 32 };

const inUnit = (file: JobFile, unit: (typeof UNITS)[number]): JobFile => ({
	...file,
	shop: { ...file.shop, ruler: { ...file.shop?.ruler, unit } },
});

/** Some papers in one file: it is the faces in it that take long to write and to read. */
async function read(papers: readonly ReturnType<typeof printPack>[]): Promise<ReadPage[][]> {
	const { pages } = await readPdf(writePdf(papers.flat(), FONTS, META));
	const rest = [...pages];
	return papers.map((paper) => rest.splice(0, paper.length));
}

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

/** Where each blank lies: along the roll, and from its own edge, selvedge and all. */
function clothTables({ job, cloths, blanks }: Plan): Wanted[] {
	const figures = figuresOn(job.shop.ruler);
	return cloths
		.flatMap(({ rolls }) => rolls)
		.filter(({ answer }) => answer.placed.length > 0)
		.map(({ roll, problem, answer }) => {
			const full = job.stock.rolls.find((r) => r.id === roll)!.width;
			const selvedge = Math.floor((full - problem.width) / 2);
			const lying = [...answer.placed].sort((a, b) => a.x - b.x || a.y - b.y);
			return {
				heads: ['Mark', 'Blank', 'Size as it lies', 'Along', 'From edge', 'Lies'],
				columns: {
					Mark: lying.map((p) => blanks.find((b) => b.id === p.id)!.label),
					'Size as it lies': lying.map((p) => figures.size(p.length, p.width)),
					Along: lying.map((p) => figures.bench(p.x)),
					'From edge': lying.map((p) => figures.bench(p.y + selvedge)),
				},
			};
		});
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
			const papers = await read([printPack(plan), costPack(plan), quotePack(plan)]);
			const [bench = [], cost = [], quote = []] = papers;
			return { ...one, plan, bench, cost, quote };
		}),
);

describe.each(CASES)('$name in $unit', ({ plan, unit, bench, cost, quote }) => {
	it('has every figure of parts, order, costs and quote on its papers as in the plan', () => {
		const all = [...partsTables(plan), ...fetchTable(plan)];
		expect(expectTables(bench, all)).toBeGreaterThan(3 * plan.parts.length);
		expectTables(cost, [...costTables(plan), ...orderTables(plan)]);
		if (quote.length > 0) expectTables(quote, quoteTable(plan));
	});

	it('has every blank at its place along and across the roll', () => {
		const tables = clothTables(plan);
		const laid = plan.cloths.flatMap((c) => c.rolls.flatMap((r) => r.answer.placed));
		expect(expectTables(bench, tables)).toBe(4 * laid.length);
	});

	it('is sawn by what the paper says into the parts of the plan', () => {
		for (const sheet of sheetsOf(plan).filter(isDrawnAlone)) {
			const rows = cutRows(bench, sheetTitle(sheet.at));
			const numbers = rows.flatMap(([name = '']) => numbersIn(name));
			expect(numbers.sort((a, b) => a - b)).toEqual(sheet.layout.cuts.map((c) => c.n));
			expectSawn(sheet, rows);
		}
	});

	it('has every card of a part word by word, and a cross where it says that a hole is', () => {
		for (const card of cardsOf(plan)) {
			const found = cardOn(bench, card);
			expect(found, `${card.title} on paper`).toBeDefined();
			expect(holesMissing(card, found!, STEPS[unit]).missing).toEqual([]);
		}
	});

	it('has every hole that it lists drawn at its ordinates, and lists every hole', () => {
		let listed = 0;
		for (const page of bench) {
			for (const list of textLines(page).flatMap(({ text }) => (isList(text) ? [text] : [])))
				listed += countOf(list);
			expect(missingIn(page, crossesOn(page), PATTERN, STEPS[unit])).toEqual([]);
		}
		expect(listed).toBe(fixed(plan));
	});
});

/** What is worked on each part, card by card as its owner's page shows them. */
function cardsOf({ job, parts, boxes, panels }: Plan): Drawing[] {
	const figures = figuresOn(job.shop.ruler);
	const owners = [...new Set(parts.map((p) => p.owner))];
	return owners.flatMap((owner) =>
		partDrawings(
			job,
			parts.filter((p) => p.owner === owner),
			{ boxes, panels },
			figures,
		),
	);
}

/** Sheets alike have one drawing, which names them all. */
const isDrawnAlone = ({ at: { boards, index } }: Sheet): boolean =>
	alikeSheets(boards).some((alike) => alike.length === 1 && alike[0] === index);

const inMm = (name: string) => CASES.find((c) => c.name === name && c.unit === 'mm')!;
const PANELS = inMm('camper-bench.json');

it('is sawn wrong where one fence figure on the paper is wrong', () => {
	const [sheet] = sheetsOf(PANELS.plan);
	const title = sheetTitle(sheet!.at);
	const [, fence] = cutRows(PANELS.bench, title).find(([, text]) => /^\d/.test(text!))!;
	const wrong = PANELS.bench.map((page) => ({
		...page,
		texts: page.texts.map((t) => (t.text === fence ? { ...t, text: `9${fence}` } : t)),
	}));
	expect(() => expectSawn(sheet!, cutRows(wrong, title))).toThrow(/found|to deeply equal/);
});

it('misses a single hole that is said elsewhere, and a word that is not on the paper', () => {
	const cards = cardsOf(PANELS.plan);
	const card = cards.find((c) => saysHole(c, 1))!;
	const found = cardOn(PANELS.bench, card)!;
	expect(holesMissing(card, found, STEPS.mm)).toEqual({ of: 1, missing: [] });
	const moved = {
		...card,
		marks: card.marks.map((m) => (isSingle(m) ? { ...m, text: m.text.replace(/\d$/, '') } : m)),
	};
	expect(holesMissing(moved, found, STEPS.mm).missing).toHaveLength(1);
	expect(cardOn(PANELS.bench, moved)).toBeUndefined();
});

const isSingle = (m: Mark): m is TextMark =>
	m.kind === 'text' && /^Hole\s1\s.*↑\s\d+$/.test(m.text);
const saysHole = ({ marks }: Drawing, count: number): boolean =>
	marks.filter(isSingle).length === count &&
	!marks.some((m) => m.kind === 'text' && /^Holes?\s[2-9]/.test(m.text));

it('misses a hole that is listed and not drawn', () => {
	const page = PANELS.bench.find((p) => textLines(p).some(({ text }) => isList(text)))!;
	const crosses = crossesOn(page);
	const noticed = crosses.filter((_, i) => {
		const rest = crosses.filter((_, k) => k !== i);
		return i % 4 === 0 && missingIn(page, rest, PATTERN, STEPS.mm).length > 0;
	});
	expect(noticed.length).toBeGreaterThan(0);
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
		[PANELS.bench, clothTables(PANELS.plan)],
		[cost, [...costTables(plan), ...orderTables(plan)]],
	] as const) {
		const figures = tables.flatMap(({ columns }) => Object.values(columns).map(([first]) => first));
		const printed = figures.filter((f) => pages.some((p) => p.texts.some((t) => t.text === f)));
		expect(printed.length).toBeGreaterThan(3);
		for (const figure of printed)
			expect(() => expectTables(wrong(pages, figure!), tables), figure).toThrow();
	}
});

/** Lists of places of at least so many holes make a pattern that is met only where it is drawn. */
const PATTERN = 3;

const isList = (text: string): boolean => /^Holes \d+ to \d+ /.test(text);

function countOf(text: string): number {
	const [, from, to] = /^Holes (\d+) to (\d+) /.exec(text)!;
	return Number(to) - Number(from) + 1;
}

/** 1, 2, 3, 4 of '1–4 trim'. */
function numbersIn(name: string): number[] {
	const [, from, to] = /^(\d+)(?:–(\d+))? /.exec(name) ?? [];
	const [a, b] = [Number(from), Number(to ?? from)];
	return Array.from({ length: b - a + 1 }, (_, i) => a + i);
}

/** What is drilled in lists: fixings, screws of devices, magnets; screws into boards of boxes. */
function fixed({ panels, boxes, parts }: Plan): number {
	const ofPanels = panels.map(({ detail: d }) => {
		if (!d) return 0;
		const screws = d.devices.reduce((sum, v) => sum + v.at.holes.length, 0);
		const magnets = d.covers.reduce((sum, c) => sum + c.magnets.length, 0);
		return (d.both ? 2 : 1) * ((d.fixings?.at.length ?? 0) + screws + magnets);
	});
	const owned = new Set(boxes.flatMap((box) => box.parts.map((p) => p.id)));
	const ofBoards = parts
		.filter((p) => owned.has(p.id))
		.map((p) => p.holes.filter((h) => bounds(h).length < SCREW).length)
		.filter((n) => n > 1);
	return [...ofPanels, ...ofBoards].reduce((a, b) => a + b, 0);
}

/** No wider hole is a screw's. */
const SCREW = mm(9);
