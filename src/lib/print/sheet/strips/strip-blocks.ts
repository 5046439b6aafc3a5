import { nth } from '../../../measure';
import type { Figures, SheetAt } from '../../wording';
import type { Mark } from '../../drawing';
import { type Block, paragraph, space, subheading } from '../../page';
import { cutGroups, everyGroup, stripNames } from './cut-groups';
import { cutList, settingsAgain, slantsText } from './cut-list';
import {
	stripDrawing,
	stripHeight,
	stripScale,
	stripScene,
	type StripScene,
} from './strip-drawing';

/** How high a drawing of a sheet and one of a strip may be, mm. */
export interface Heights {
	readonly sheet: number;
	readonly strip: number;
}

export const ROOMY: Heights = { sheet: 99, strip: 89 };

/** For a board that is nearly square, on the smaller scales of the inch. */
const TALL: Heights = { sheet: 118, strip: 118 };

/** A sawn sheet with its lists, to be tried at several heights of its drawings. */
export interface StripWork {
	readonly figures: Figures;
	readonly page: { readonly width: number; readonly height: number };
	readonly groups: readonly { readonly scene: StripScene; readonly list: readonly Block[] }[];
	readonly again: readonly Block[];
}

/** Null where nothing is sawn. */
export function stripWork(
	at: SheetAt,
	page: StripWork['page'],
	figures: Figures,
): StripWork | null {
	const layout = nth(at.boards.answer.layouts, at.index);
	const whole = cutGroups(layout);
	if (whole === null) return null;
	const names = stripNames(whole);
	const groups = everyGroup(whole).map((group) => ({
		scene: stripScene(at, group),
		list: cutList(at, group, names, page.width, figures),
	}));
	const notes = [slantsText(at, layout.cuts), settingsAgain(layout.cuts, figures)];
	return {
		...{ figures, page, groups },
		again: notes.filter((t) => t !== '').map((t) => paragraph(t, page.width, { size: 3.2 })),
	};
}

/**
 * A sawn sheet as it is worked: the sheet with the cuts that part it, its list; then each strip
 * with its own. A drawing stays with its list where both fit on a page. `between` comes after the
 * first drawing.
 */
export function stripBlocks(
	work: StripWork,
	between: readonly Block[] = [],
	heights: Heights = ROOMY,
): Block[] {
	const groups = work.groups.flatMap(({ scene, list }) => {
		const drawn = groupBlocks(scene, work, heights);
		const set = scene.group.name === '' ? [...drawn, ...between.map(kept)] : drawn;
		return together([...set, ...list, space(3)], work.page.height);
	});
	return [...groups, ...work.again];
}

function groupBlocks(scene: StripScene, { page, figures }: StripWork, heights: Heights): Block[] {
	const { group } = scene;
	const room = roomFor(scene, page.width, heights);
	const block: Block = {
		height: stripHeight(scene, room) + 0.5,
		marks: [],
		later: () => drawn(scene, room, figures),
		keep: true,
	};
	if (group.name === '') return [block];
	const { length, width } = group.region;
	return [subheading(`Strip ${group.name}: ${figures.size(length, width)}`, page.width), block];
}

/** Drawn smaller than this, names and numbers of cuts would crowd each other. */
const LEAST = { metric: 1 / 20, inches: 1 / 16 };

/** As high as asked for, but higher where that would be drawn too small. */
function roomFor(scene: StripScene, width: number, asked: Heights) {
	const least = scene.at.plan.job.shop.ruler.unit === 'in' ? LEAST.inches : LEAST.metric;
	const rooms = [asked, ROOMY, TALL].map(({ sheet, strip }) => ({
		width,
		height: scene.group.name === '' ? sheet : strip,
	}));
	return rooms.find((room) => stripScale(scene, room) >= least) ?? nth(rooms, 1);
}

/** The drawing with its scale beside it. */
function drawn(
	scene: StripScene,
	room: { readonly width: number; readonly height: number },
	figures: Figures,
): Mark[] {
	const drawing = stripDrawing(scene, room, figures);
	const place = { x: room.width, y: 3.4, size: 2.7, anchor: 'end', ink: 'pencil' } as const;
	return [...drawing.marks, { kind: 'text', ...place, text: drawing.scale }];
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
