import { DrawnSheets, undrawnText } from '../../layout';
import { nth } from '../../measure';
import type { Plan } from '../../plan';
import { offcutName, type SheetAt, sheetName, figuresOn, type Figures } from '../wording';
import {
	type Block,
	type Leaf,
	leavesOf,
	widthOf,
	table,
	type Row,
	heading,
	paragraph,
	space,
	subheading,
} from '../page';

/** Which part comes from which sheet, to be ticked off as the pieces are stacked. */
export function cuttingListPages(plan: Plan): Leaf[] {
	const sound = plan.boards.filter((b) => b.faults.length === 0 && b.answer.layouts.length > 0);
	if (sound.length === 0) return [];
	const width = widthOf(plan);
	const figures = figuresOn(plan.job.shop.ruler);
	const blocks: Block[] = [heading('Cutting list by sheet', width)];
	const drawn = new DrawnSheets(plan.boards);
	for (const boards of sound)
		boards.answer.layouts.forEach((layout, i) => {
			if (!drawn.has(layout)) return;
			const at = { plan, boards, index: i };
			const name = `${sheetName(at)}, ${figures.size(layout.length, layout.width)}`;
			blocks.push(subheading(name, width), ...sheetTable(at, width, figures), space(3.5));
		});
	const left = undrawnText(drawn.undrawn);
	if (left !== '') blocks.push(paragraph(left, width));
	return leavesOf(plan, { name: 'Cutting list', title: 'Cutting list' }, blocks, figures);
}

function sheetTable(at: SheetAt, width: number, figures: Figures): Block[] {
	const { plan, boards, index } = at;
	const { placed, offcuts } = nth(boards.answer.layouts, index);
	const ids = [...new Set(placed.map((p) => p.id))];
	const rows = ids.map((id): Row => {
		const part = plan.parts.find((p) => p.id === id);
		const count = placed.filter((p) => p.id === id).length;
		return {
			of: `part:${id}`,
			cells: [
				{ tick: true },
				{ text: part?.label ?? id, weight: 'semibold' },
				part?.name ?? '',
				String(count),
				part === undefined ? '' : figures.size(part.length, part.width),
				part?.bevels.length ? part.bevels.map((b) => b.edge).join(', ') : '',
			],
		};
	});
	const left = offcuts.map((o): Row => ({
		cells: [
			{ tick: true },
			'',
			`${offcutName(at, o)}, back to the rack`,
			'1',
			figures.size(o.length, o.width),
			'',
		],
	}));
	return table(
		{
			columns: [
				{ head: '', width: 3.6 },
				{ head: 'Mark', width: 16 },
				{ head: 'Part', width: { share: 1 } },
				{ head: 'Pcs', width: 9, align: 'end' },
				{ head: boards.problem.method === 'saw' ? 'Cut size' : 'Size', width: 42, align: 'end' },
				{ head: 'Bevelled edges', width: 26 },
			],
			rows: [...rows, ...left],
		},
		width,
	);
}
