import { alikeSheets, type BoardLayouts, DrawnSheets, undrawnText } from '../../layout';
import { nth } from '../../measure';
import type { Plan } from '../../plan';
import {
	cautionBlocks,
	space,
	type Block,
	type Leaf,
	leavesOf,
	pageArea,
	setPages,
	paperOf,
	widthOf,
	refusedBlocks,
	table,
	heading,
	paragraph,
	subheading,
} from '../page';
import {
	alikeText,
	figuresOn,
	type Figures,
	packetText,
	partTitle,
	type SheetAt,
	sheetNote,
	sheetsNamed,
	shownOnSheet,
	unplacedTitle,
} from '../wording';
import { materialName } from '../../job';
import { routedTable } from './routed-table';
import { sheetDrawing } from './drawing';
import { type Heights, ROOMY, stripBlocks, stripWork } from './strips';

/** Leaves at such heights of their drawings. */
type AtHeights = (heights: Heights) => Leaf[];

/** From roomy to tight. */
const HEIGHTS: readonly Heights[] = [ROOMY, { sheet: 82, strip: 74 }];

/**
 * Each sheet: its cuts strip by strip, each strip with its list; a routed sheet whole, and where
 * its parts lie. One goes on where the one before ended, with the largest drawings that need no
 * page more than smaller ones.
 */
export function sheetPages(plan: Plan): Leaf[] {
	let first = true;
	const drawn = new DrawnSheets(plan.boards);
	const sheets = plan.boards.flatMap((boards): AtHeights[] => {
		if (boards.faults.length > 0) return [() => refusedPages(plan, boards)];
		const leaves = alikeSheets(boards).flatMap((alike) => {
			if (!drawn.has(nth(boards.answer.layouts, nth(alike, 0)))) return [];
			const leaf = sheetLeaf(plan, boards, alike, first);
			first = false;
			return [leaf];
		});
		return [...leaves, () => unplacedPages(plan, boards)];
	});
	const settings = HEIGHTS.map((heights) => sheets.flatMap((leaves) => leaves(heights)));
	const taken = settings.map((leaves) => setPages(leaves).length);
	const fewest = nth(settings, taken.indexOf(Math.min(...taken)));
	return [...fewest, ...undrawnPages(plan, undrawnText(drawn.undrawn))];
}

function undrawnPages(plan: Plan, text: string): Leaf[] {
	if (text === '') return [];
	const width = widthOf(plan);
	const title = 'Sheets that are not drawn';
	return leavesOf(plan, { name: title, title }, [heading(title, width), paragraph(text, width)]);
}

/** The room for the drawing of a routed sheet, mm. */
const ROUTED = 140;

/** A sheet, or several that are alike. */
function sheetLeaf(
	plan: Plan,
	boards: BoardLayouts,
	alike: readonly number[],
	first: boolean,
): AtHeights {
	const at: SheetAt = { plan, boards, index: nth(alike, 0) };
	const figures = figuresOn(plan.job.shop.ruler);
	const [which, board] = [sheetsNamed(boards, alike), materialName(plan.job, boards.material)];
	const titled = {
		name: `${board}, ${which.toLowerCase()}`,
		title: `${which}: ${board}`,
		chapter: `Sheets of ${board}`,
	};
	const width = widthOf(plan);
	const said = [alikeText(boards, alike), packetText(at)].filter((t) => t !== '');
	const about = alike.flatMap((index) => [...shownOnSheet({ plan, boards, index })]);
	const shown = { where: 'sheets', about, first } as const;
	const between = [
		...cautionBlocks(plan, shown, width),
		...said.map((text) => paragraph(text, width)),
		space(2),
	];
	const title = heading(titled.title, width, sheetNote(at, figures));
	const work = stripWork(at, pageArea(paperOf(plan)), figures);
	if (work === null) {
		const routed = [title, ...routedBlocks(at, figures, between)];
		return () => leavesOf(plan, { ...titled, whole: true }, routed, figures);
	}
	return (heights) =>
		leavesOf(plan, titled, [title, ...stripBlocks(work, between, heights)], figures);
}

/** A routed sheet: its layout, and where its parts lie. */
function routedBlocks(at: SheetAt, figures: Figures, between: readonly Block[]): Block[] {
	const { plan, boards, index } = at;
	const width = widthOf(plan);
	const drawing = sheetDrawing(plan, boards, index, { width, height: ROUTED }, figures);
	return [
		{ height: drawing.height, marks: drawing.marks },
		...between,
		...routedTable(at, width, figures),
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
