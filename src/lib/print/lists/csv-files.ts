import { materialName, writeCsv, type Delimiter } from '../../job';
import { snap, plainMoney, printLength } from '../../measure';
import type { Cut, SheetLayout } from '../../nest';
import type { Plan } from '../../plan';
import {
	amountText,
	buyText,
	cutKind,
	offcutName,
	partLabel,
	rackLabels,
	type SheetAt,
} from '../wording';

/*
 * Lists for a spreadsheet, on the ruler of the job. A decimal comma asks for the semicolon between
 * cells.
 */

export function orderCsv(plan: Plan): string {
	const { ruler, currency } = plan.job.shop;
	const price = (amount: Parameters<typeof plainMoney>[0]) =>
		plainMoney(amount, currency, ruler.decimal);
	const head = [
		'what',
		'code',
		'need',
		'on the rack',
		'from the rack',
		'to buy',
		'each',
		'total',
		'spare',
		'for',
	];
	const rows = plan.order.lines.map((line) => [
		line.what,
		line.code,
		amountText(line.need, ruler),
		amountText(line.rack, ruler),
		amountText(line.fromRack, ruler),
		buyText(line, ruler),
		price(line.each),
		price(line.total),
		amountText(line.spare, ruler),
		line.for.join('; '),
	]);
	const total = ['total', currency, '', '', '', '', '', price(plan.order.total), '', ''];
	return writeCsv([head, ...rows, total], delimiter(plan));
}

/** Every sheet with its cuts in their order; a routed sheet lists where its parts lie. */
export function cuttingListCsv(plan: Plan): string {
	const head = [
		'sheet',
		'board',
		'cut',
		'kind',
		'fence',
		'from',
		'part',
		'name',
		'length',
		'width',
		'x',
		'y',
		'turned',
	];
	let n = 0;
	const rows = plan.boards
		.filter((boards) => boards.faults.length === 0)
		.flatMap((boards) =>
			boards.answer.layouts.flatMap((layout, index) =>
				sheetRows({ plan, boards, index }, layout, ++n),
			),
		);
	const unit = `lengths in ${plan.job.shop.ruler.unit}`;
	return writeCsv([[...head, unit], ...rows.map((row) => [...row, ''])], delimiter(plan));
}

function sheetRows(at: SheetAt, layout: SheetLayout, n: number): (string | number)[][] {
	const { plan, boards } = at;
	const labels = rackLabels(at);
	const board = materialName(plan.job, boards.material);
	const on = (l: number) => printLength(snap(l), plan.job.shop.ruler).text;
	const cuts = layout.cuts.map((cut) => [
		n,
		board,
		cut.n,
		cutKind(cut),
		cut.kind === 'slant' ? '' : on(cut.fence),
		cut.kind === 'slant' ? 'marked line' : cut.fenceEdge,
		freed(at, cut),
		...['', '', '', '', '', ''],
	]);
	const parts = layout.placed.map((placed) => {
		const part = plan.parts.find((p) => p.id === placed.id);
		const place = [on(placed.length), on(placed.width), on(placed.x), on(placed.y), placed.turn];
		return [n, board, '', 'part', '', '', part?.label ?? placed.id, part?.name ?? '', ...place];
	});
	const offcuts = layout.offcuts.map((o, i) => {
		const place = [on(o.length), on(o.width), on(o.x), on(o.y), ''];
		return [n, board, '', 'offcut', '', '', labels[i] ?? '', 'back to the rack', ...place];
	});
	return [...cuts, ...parts, ...offcuts];
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

function delimiter(plan: Plan): Delimiter {
	return plan.job.shop.ruler.decimal === ',' ? ';' : ',';
}
