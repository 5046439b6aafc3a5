import { materialOf, materialName } from '../../job';
import { type BoardLayouts, boundText } from '../../layout';
import type { SheetLayout } from '../../nest';
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
	shortCaution,
	subheading,
} from '../page';
import { partLabel, figuresOn, type Figures, packetText } from '../wording';
import { cuttingTable } from './cutting-table';
import { sheetDrawing } from './drawing';

/** A page (or more) for each sheet: its layout to scale, and under it the cuts with boxes to tick. */
export function sheetPages(plan: Plan): Leaf[] {
	let first = true;
	return plan.boards.flatMap((boards) => {
		if (boards.faults.length > 0) return refusedPages(plan, boards);
		const leaves = boards.answer.layouts.flatMap((layout, i) => {
			const page = sheetPage(plan, boards, layout, i, first);
			first = false;
			return page;
		});
		return [...leaves, ...unplacedPages(plan, boards)];
	});
}

function sheetPage(
	plan: Plan,
	boards: BoardLayouts,
	layout: SheetLayout,
	i: number,
	first: boolean,
): Leaf[] {
	const figures = figuresOn(plan.job.shop.ruler);
	const titled = {
		name: `${materialName(plan.job, boards.material)}, sheet ${i + 1} of ${boards.answer.layouts.length}`,
		title: titleOf(plan, boards, i),
		chapter: `Sheets of ${materialName(plan.job, boards.material)}`,
	};
	let best: Leaf[] = [];
	// Cuts on the page of their drawing are worth more than easy reading: the first setting with the fewest pages.
	for (const setting of SETTINGS) {
		const blocks = sheetBlocks(plan, boards, layout, i, first, figures, setting);
		const leaves = leavesOf(plan, titled, blocks, figures);
		if (best.length === 0 || leaves.length < best.length) best = leaves;
		if (best.length === 1) break;
	}
	return best;
}

/** Size of the table's letters and room for the drawing, from roomy to tight. */
const SETTINGS = [
	{ size: 3.2, height: 140 },
	{ size: 2.7, height: 140 },
	{ size: 2.7, height: 105 },
] as const;

function sheetBlocks(
	plan: Plan,
	boards: BoardLayouts,
	layout: SheetLayout,
	i: number,
	first: boolean,
	figures: Figures,
	setting: { readonly size: number; readonly height: number },
): Block[] {
	const width = widthOf(plan);
	const drawing = sheetDrawing(plan, boards, i, { width, height: setting.height }, figures);
	const packet = packetText({ plan, boards, index: i });
	return [
		heading(titleOf(plan, boards, i), width, noteOf(plan, boards, layout, i, figures)),
		{ height: drawing.height, marks: drawing.marks },
		...cautionBlocks(plan, 'sheets', shownOn(plan, boards, layout, i), first, width, shortCaution),
		...(packet === '' ? [] : [paragraph(packet, width)]),
		space(2),
		...cuttingTable({ plan, boards, index: i }, width, figures, setting.size),
	];
}

function titleOf(plan: Plan, boards: BoardLayouts, i: number): string {
	return `Sheet ${i + 1} of ${boards.answer.layouts.length}: ${materialName(plan.job, boards.material)}`;
}

function noteOf(
	plan: Plan,
	boards: BoardLayouts,
	layout: SheetLayout,
	i: number,
	figures: Figures,
): string {
	const material = materialOf(plan.job, boards.material);
	const source = boards.sources[i];
	const from = { offcut: 'from the rack', owned: 'from the rack', buy: 'to buy' };
	return [
		figures.size(layout.length, layout.width),
		material === null ? '' : `measured ${figures.length(material.measured)}`,
		boards.problem.method === 'saw'
			? `kerf ${figures.length(boards.problem.kerf)}`
			: `bit ${figures.length(boards.problem.bit)}`,
		source === undefined ? '' : `${source.name}, ${from[source.kind]}`,
		source?.cut === true ? 'already cut' : '',
		boundText(boards),
	]
		.filter((t) => t !== '')
		.join('  ·  ');
}

/** What a caution may be about to be printed on this page. */
function shownOn(plan: Plan, boards: BoardLayouts, layout: SheetLayout, i: number): string[] {
	const labels = new Set(layout.placed.map((p) => partLabel(plan, p.id)));
	return [
		`sheet:${boards.material}/${i}`,
		`sheet:${layout.sheet}/${layout.copy}`,
		`material:${boards.material}`,
		...[...labels].map((label) => `part:${label}`),
		...layout.placed.map((p) => `part:${p.id}`),
		...layout.cuts.map((cut) => `cut:${boards.material}/${i}/${cut.n}`),
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
		subheading(`Not laid out: ${materialName(plan.job, boards.material)}`, width),
		...table(
			{
				columns: [
					{ head: 'Part', width: { share: 1 } },
					{ head: 'Count', width: 14, align: 'end' },
					{ head: 'Why', width: { share: 2 } },
				],
				rows: boards.answer.unplaced.map((u) => ({
					cells: [nameOf(plan, u.id), String(u.count), u.why],
				})),
			},
			width,
		),
	];
	return leavesOf(plan, { name: 'Not laid out', title: 'Parts without a sheet' }, blocks);
}

function nameOf(plan: Plan, id: string): string {
	const part = plan.parts.find((p) => p.id === id);
	return part === undefined ? id : `${part.label} ${part.name}`;
}
