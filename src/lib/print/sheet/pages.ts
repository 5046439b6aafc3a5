import type { BoardLayouts } from '../../layout';
import type { Plan } from '../../plan';
import {
	cautionBlocks,
	space,
	type Block,
	type Leaf,
	leavesOf,
	widthOf,
	refusedBlocks,
	table,
	heading,
	paragraph,
	subheading,
} from '../page';
import {
	figuresOn,
	type Figures,
	packetText,
	partTitle,
	type SheetAt,
	sheetName,
	sheetNote,
	sheetTitle,
	shownOnSheet,
	unplacedTitle,
} from '../wording';
import { materialName } from '../../job';
import { cuttingTable } from './cutting-table';
import { sheetDrawing } from './drawing';

/**
 * A page (or more) for each sheet: its layout to scale, and under it the cuts with boxes to tick.
 */
export function sheetPages(plan: Plan): Leaf[] {
	let first = true;
	return plan.boards.flatMap((boards) => {
		if (boards.faults.length > 0) return refusedPages(plan, boards);
		const leaves = boards.answer.layouts.flatMap((_, index) => {
			const page = sheetPage({ plan, boards, index }, first);
			first = false;
			return page;
		});
		return [...leaves, ...unplacedPages(plan, boards)];
	});
}

/** How tight a page is set: the size of the table's letters, and the room for the drawing, mm. */
interface Setting {
	readonly size: number;
	readonly height: number;
}

/** From roomy to tight. */
const SETTINGS: readonly Setting[] = [
	{ size: 3.2, height: 140 },
	{ size: 2.7, height: 140 },
	{ size: 2.7, height: 105 },
];

function sheetPage(at: SheetAt, first: boolean): Leaf[] {
	const { plan, boards } = at;
	const figures = figuresOn(plan.job.shop.ruler);
	const titled = {
		name: sheetName(at),
		title: sheetTitle(at),
		chapter: `Sheets of ${materialName(plan.job, boards.material)}`,
	};
	let best: Leaf[] = [];
	// Cuts on the page of their drawing are worth more than easy reading: the first setting with
	// the fewest pages.
	for (const setting of SETTINGS) {
		const leaves = leavesOf(plan, titled, sheetBlocks(at, first, figures, setting), figures);
		if (best.length === 0 || leaves.length < best.length) best = leaves;
		if (best.length === 1) break;
	}
	return best;
}

function sheetBlocks(at: SheetAt, first: boolean, figures: Figures, setting: Setting): Block[] {
	const { plan, boards, index } = at;
	const width = widthOf(plan);
	const drawing = sheetDrawing(plan, boards, index, { width, height: setting.height }, figures);
	const packet = packetText(at);
	const shown = { where: 'sheets', about: shownOnSheet(at), first } as const;
	return [
		heading(sheetTitle(at), width, sheetNote(at, figures)),
		{ height: drawing.height, marks: drawing.marks },
		...cautionBlocks(plan, shown, width),
		...(packet === '' ? [] : [paragraph(packet, width)]),
		space(2),
		...cuttingTable(at, width, figures, setting.size),
	];
}

function refusedPages(plan: Plan, boards: BoardLayouts): Leaf[] {
	const blocks = refusedBlocks(
		materialName(plan.job, boards.material),
		boards.faults,
		widthOf(plan),
	);
	return leavesOf(plan, { name: 'Not printed', title: 'Layout refused' }, blocks);
}

function unplacedPages(plan: Plan, boards: BoardLayouts): Leaf[] {
	if (boards.answer.unplaced.length === 0) return [];
	const width = widthOf(plan);
	const blocks = [
		subheading(unplacedTitle(plan, boards), width),
		...table(
			{
				columns: [
					{ head: 'Part', width: { share: 1 } },
					{ head: 'Count', width: 14, align: 'end' },
					{ head: 'Why', width: { share: 2 } },
				],
				rows: boards.answer.unplaced.map((u) => ({
					cells: [partTitle(plan, u.id), String(u.count), u.why],
				})),
			},
			width,
		),
	];
	return leavesOf(plan, { name: 'Not laid out', title: 'Parts without a sheet' }, blocks);
}
