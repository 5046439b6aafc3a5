import { materialName, writeCsv, type Delimiter } from '../../job';
import {
	plainMoney,
	printForBench,
	snap,
	ticks,
	TICKS_PER_INCH,
	type Money,
	type Ruler,
} from '../../measure';
import type { Cut, SheetLayout } from '../../nest';
import type { Plan } from '../../plan';
import {
	amountOf,
	cutKind,
	moreText,
	offcutName,
	packOf,
	partLabel,
	rackLabels,
	type SheetAt,
} from '../wording';
import { cutFromText, inCuttingOrder } from '../runs';
import { linesFrom } from './order-pages';

/*
 * Lists for a spreadsheet: one kind of record a file, each figure alone in its cell and its unit in
 * the next. Figures are those of the pages, with the decimal sign of the job; a decimal comma asks
 * for the semicolon between cells.
 */

type Cell = string | number;

export function orderCsv(plan: Plan): string {
	const { ruler, currency } = plan.job.shop;
	const price = (amount: Money) => plainMoney(amount, currency, ruler.decimal);
	const rows = plan.order.lines.map((line) => {
		const need = amountOf(line.need, ruler);
		const pack = packOf(line, ruler);
		return [
			...[line.what, line.code, need.number],
			...[line.rack, line.fromRack, line.spare].map((amount) => amountOf(amount, ruler).number),
			...[need.unit, line.buy, line.unit, pack.number, pack.unit],
			...[price(line.each), price(line.total), currency, line.for.join('; ')],
			...[nameOf(plan, line.supplier), line.priced, moreText(line)],
		];
	});
	return csvOf(plan, [
		[
			...['what', 'code', 'need', 'on the rack', 'from the rack', 'spare', 'unit'],
			...['to buy', 'bought by', 'each holds', 'each holds unit'],
			...['price each', 'price total', 'currency', 'for'],
			...['supplier', 'price of', 'why more'],
		],
		...rows,
	]);
}

const nameOf = ({ job }: Plan, supplier: string): string =>
	job.stock.suppliers.find((s) => s.id === supplier)?.name ?? '';

/** One supplier's list for the mail: codes and how many, no prices. */
export interface SupplierCsv {
	/** Mark of the supplier; 'anybody' for what anybody sells. */
	readonly id: string;
	readonly text: string;
}

export function supplierCsvs(plan: Plan): SupplierCsv[] {
	const { ruler } = plan.job.shop;
	return plan.order.suppliers.map((from) => {
		const rows = linesFrom(plan, from).map((line) => {
			const pack = packOf(line, ruler);
			return [line.code, line.what, line.buy, line.unit, pack.number, pack.unit];
		});
		const head = ['code', 'what', 'how many', 'of', 'each holds', 'each holds unit'];
		return { id: from.id || 'anybody', text: csvOf(plan, [head, ...rows]) };
	});
}

/** Every sheet's cuts in their order. */
export function cuttingListCsv(plan: Plan): string {
	const { ruler } = plan.job.shop;
	const rows = everySheet(plan, (at, layout, head) =>
		layout.cuts.map((cut) => [
			...head,
			...[cut.n, cutKind(cut)],
			...(cut.kind === 'slant'
				? ['', '', 'marked line']
				: [figure(cut.fence, ruler), ruler.unit, cut.fenceEdge]),
			freed(at, cut),
		]),
	);
	const head = ['sheet', 'board', 'cut', 'kind', 'fence', 'unit', 'from', 'frees'];
	return csvOf(plan, [head, ...rows]);
}

/** Every piece of board, its sheet and where it lies there; no sheet for one left over. */
export function partsCsv(plan: Plan): string {
	const { ruler } = plan.job.shop;
	const part = (id: string) => plan.parts.find((p) => p.id === id);
	const named = (id: string): Cell[] => [part(id)?.label ?? id, part(id)?.name ?? ''];
	const size = (length: number, width: number): Cell[] => [
		...[figure(length, ruler), figure(width, ruler), ruler.unit],
	];
	const placed = everySheet(plan, (_, layout, head) =>
		layout.placed.map((p) => [
			...[...head, ...named(p.id), ...size(p.length, p.width)],
			...[figure(p.x, ruler), figure(p.y, ruler), ruler.unit, p.turn],
		]),
	);
	const left = plan.boards.flatMap(({ material, answer }) =>
		answer.unplaced.flatMap(({ id, count }) => {
			const known = part(id);
			const sizes = known ? size(known.length, known.width) : ['', '', ''];
			const row = ['', materialName(plan.job, material), ...named(id), ...sizes, '', '', '', ''];
			return Array.from({ length: count }, () => row);
		}),
	);
	const head = [
		...['sheet', 'board', 'mark', 'name', 'length as it lies', 'width as it lies', 'size unit'],
		...['from left', 'from bottom', 'place unit', 'turned, degrees'],
	];
	return csvOf(plan, [head, ...placed, ...left]);
}

/** What goes back to the rack. */
export function offcutsCsv(plan: Plan): string {
	const { ruler } = plan.job.shop;
	const rows = everySheet(plan, (at, layout, head) => {
		const labels = rackLabels(at);
		return layout.offcuts.map((o, i) => [
			...[...head, labels[i] ?? ''],
			...[figure(o.length, ruler), figure(o.width, ruler), ruler.unit],
			...[figure(o.x, ruler), figure(o.y, ruler), ruler.unit],
		]);
	});
	const head = [
		...['sheet', 'board', 'mark', 'length', 'width', 'size unit'],
		...['from left', 'from bottom', 'place unit'],
	];
	return csvOf(plan, [head, ...rows]);
}

/** Every run as it is cut, in the order of the cutting list. */
export function runsCsv(plan: Plan): string {
	const { ruler } = plan.job.shop;
	const rows = inCuttingOrder(plan.runs, plan.reels).map((run) => [
		...[run.label, run.name, cutFromText(run, plan.reels), run.count],
		...[figure(run.measured, ruler), run.slack],
		...run.ends.flatMap(({ name, extra }) => [name, figure(extra, ruler)]),
		...[figure(run.cut, ruler), ruler.unit],
	]);
	const head = [
		...['mark', 'run', 'cut from', 'how many', 'measured', 'slack, per cent'],
		...['one end', 'left at it', 'other end', 'left at it', 'cut each', 'unit'],
	];
	return csvOf(plan, [head, ...rows]);
}

/** Rows of every sheet, numbered through; a layout that failed its audit gives none. */
function everySheet(
	plan: Plan,
	rows: (at: SheetAt, layout: SheetLayout, head: readonly Cell[]) => Cell[][],
): Cell[][] {
	let n = 0;
	return plan.boards
		.filter((boards) => boards.faults.length === 0)
		.flatMap((boards) =>
			boards.answer.layouts.flatMap((layout, index) =>
				rows({ plan, boards, index }, layout, [++n, materialName(plan.job, boards.material)]),
			),
		);
}

/**
 * The mark of the tape as on the pages; of an inch as a decimal, for a spreadsheet takes 5/8 for a
 * day in August.
 */
function figure(length: number, ruler: Ruler): string {
	const on = snap(length);
	if (ruler.unit !== 'in') return printForBench(on, ruler).text;
	const marks = Math.round(on / (TICKS_PER_INCH / ruler.fraction));
	return String(ticks(marks) / ruler.fraction).replace('.', ruler.decimal);
}

/** The marks of the parts and offcuts a cut sets free. */
function freed(at: SheetAt, cut: Cut): string {
	return cut.gives
		.flatMap(({ kind, id, rect }) => {
			if (kind === 'piece') return [partLabel(at.plan, id ?? '')];
			return kind === 'offcut' ? [offcutName(at, rect)] : [];
		})
		.join('; ');
}

/** With the mark by which a spreadsheet knows that its letters are UTF-8. */
function csvOf(plan: Plan, rows: readonly (readonly Cell[])[]): string {
	const delimiter: Delimiter = plan.job.shop.ruler.decimal === ',' ? ';' : ',';
	return `\ufeff${writeCsv(rows, delimiter)}`;
}
