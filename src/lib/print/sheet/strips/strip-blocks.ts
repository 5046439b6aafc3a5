import { nth } from '../../../measure';
import type { Figures, SheetAt } from '../../wording';
import { type Block, paragraph, space, subheading } from '../../page';
import { type CutGroup, cutGroups, everyGroup, stripNames } from './cut-groups';
import { cutList, settingsAgain } from './cut-list';
import { stripDrawing } from './strip-drawing';

/** How high a drawing of a sheet and one of a strip may be, mm. */
export interface Heights {
	readonly sheet: number;
	readonly strip: number;
}

export const ROOMY: Heights = { sheet: 105, strip: 95 };

/**
 * A sawn sheet as it is worked: the sheet with the cuts that part it, its list; then each strip
 * with its own. A drawing stays with its list where both fit on a page. `between` comes after the
 * first drawing. Nothing where nothing is sawn.
 */
export function stripBlocks(
	at: SheetAt,
	page: { readonly width: number; readonly height: number },
	figures: Figures,
	between: readonly Block[] = [],
	heights: Heights = ROOMY,
): Block[] {
	const layout = nth(at.boards.answer.layouts, at.index);
	const whole = cutGroups(layout);
	if (whole === null) return [];
	const names = stripNames(whole);
	const groups = everyGroup(whole).flatMap((group) => {
		const drawn = groupBlocks(at, group, page.width, figures, heights);
		const list = cutList(at, group, names, page.width, figures);
		const set = group === whole ? [...drawn, ...between.map(kept)] : drawn;
		return together([...set, ...list, space(4)], page.height);
	});
	const again = settingsAgain(layout.cuts, figures);
	return [...groups, ...(again === '' ? [] : [paragraph(again, page.width, { size: 3.2 })])];
}

function groupBlocks(
	at: SheetAt,
	group: CutGroup,
	width: number,
	figures: Figures,
	heights: Heights,
): Block[] {
	const sheet = group.name === '';
	const height = sheet ? heights.sheet : heights.strip;
	const drawing = stripDrawing(at, group, { width, height }, figures);
	const scale = {
		kind: 'text',
		x: width,
		y: 3.4,
		size: 2.7,
		anchor: 'end',
		ink: 'pencil',
	} as const;
	const block: Block = {
		height: drawing.height + 2,
		marks: [...drawing.marks, { ...scale, text: drawing.scale }],
		keep: true,
	};
	if (sheet) return [block];
	const { length, width: wide } = group.region;
	return [subheading(`Strip ${group.name}: ${figures.size(length, wide)}`, width), block];
}

function kept(block: Block): Block {
	return { ...block, keep: true };
}

/** Blocks that stay on one page, when one page holds them. */
function together(blocks: readonly Block[], height: number): Block[] {
	const all = blocks.reduce((sum, b) => sum + b.height, 0);
	if (all > height) return [...blocks];
	return blocks.map((b, i) => (i < blocks.length - 2 ? kept(b) : b));
}
