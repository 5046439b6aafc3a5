import type { Part } from '../../design';
import type { Outline } from '../../geometry';
import type { Plan } from '../../plan';
import { pageArea, type Leaf, leavesOf, paperOf, setPages, widthOf } from '../page';
import { figuresOn } from '../wording';
import { blankTemplate } from './blank-template';
import { isCircle, partTemplate } from './part-template';
import { pieceBlocks, pieceRows } from './piece-blocks';
import { holdsPiece, type TracedPiece, piecesOf } from './pieces';
import type { Template } from './template';
import { mapLeaf } from './tile-map';
import { tileLeaf, tileShows } from './tile-page';
import { tileName, tiling, type Tiling } from './tile';

const OVERLAP = 10;
/** Room for the marks at the edges of a tile, inside its page. */
const MARGIN = 6;

/**
 * Parts whose shape cannot be set out with a rule and a square: curves, more than four corners, odd
 * holes.
 */
function needsTemplate(part: Part): boolean {
	const curved = (o: Outline) => o.some((c) => (c.bulge ?? 0) !== 0);
	// Corners that only bevels make, one face reaching past the other, are set out from the drawing
	// of the board.
	const many = part.bevels.length === 0 && (part.outline?.length ?? 0) > 4;
	const shaped = part.outline !== undefined && (curved(part.outline) || many);
	return shaped || part.holes.some((h) => !isCircle(h) && (curved(h) || h.length > 4));
}

/**
 * Parts and blanks that are cut by a pattern: those with something that has to be traced, in the
 * order of the plan.
 */
export function templatesOf(plan: Plan): Template[] {
	const all = [
		...plan.parts.filter(needsTemplate).map((part) => partTemplate(part, plan)),
		...plan.blanks.map((blank) => blankTemplate(blank, plan)),
	];
	return all.filter((t) => piecesOf(t, roomOf(plan), stepOf(plan)).length > 0);
}

/**
 * Sheets of paper that templates.pdf takes, maps and all; 0 when there is nothing to cut by a
 * pattern.
 */
export function templateLength(plan: Plan): number {
	const leaves = templatesOf(plan).flatMap((t) => templateOf(plan, t));
	return leaves.length === 0 ? 0 : setPages(leaves).length;
}

/** What a page holds of a template, heads and feet of a piece left out, mm. */
function roomOf(plan: Plan): { readonly width: number; readonly height: number } {
	const { width, height } = pageArea(paperOf(plan));
	return { width, height: height - TITLE };
}

/** Title of a template and the head of a piece, mm. */
const TITLE = 34;

/** What the frames of the pieces are laid to: half a centimetre, a quarter of an inch. */
function stepOf({ job }: Plan): number {
	return job.shop.ruler.unit === 'in' ? 25.4 / 4 : 5;
}

/** One template: its pieces, or, where a page does not hold one, pages that overlap. */
export function templateOf(plan: Plan, template: Template): Leaf[] {
	const width = widthOf(plan);
	const figures = figuresOn(plan.job.shop.ruler);
	const room = roomOf(plan);
	const pieces = piecesOf(template, room, stepOf(plan));
	const tiles = tilingOf(plan, template);
	const parted = pieces.length > 0 && pieces.every(({ window }) => holdsPiece(window, room));
	if (!parted || paperFor(pieces, room) > tiles.columns * tiles.rows)
		return tileLeaves(plan, template, tiles);
	const title = `Template ${template.name}`;
	const blocks = [
		...pieceBlocks(template, pieces, width, figures),
		...pieceRows(template, pieces, width, figures),
	];
	return leavesOf(plan, { name: title, title, chapter: 'Templates' }, blocks, figures);
}

/** Pages that pieces take, near enough to choose by. */
function paperFor(
	pieces: readonly TracedPiece[],
	room: { readonly width: number; readonly height: number },
): number {
	const area = pieces.reduce((sum, { window: w }) => sum + (w.width + 5) * (w.height + 12), 0);
	return area / (0.75 * room.width * room.height);
}

function tilingOf(plan: Plan, template: Template): Tiling {
	const paper = paperOf(plan);
	const room = (landscape: boolean) => {
		const area = pageArea({ ...paper, landscape });
		return { width: area.width - 2 * MARGIN, height: area.height - 2 * MARGIN };
	};
	return tiling(template, room(false), room(true), OVERLAP);
}

/** The map and the tiles of one template. */
function tileLeaves(plan: Plan, template: Template, tiles: Tiling): Leaf[] {
	const paper = { ...paperOf(plan), landscape: tiles.landscape };
	const leaves: Leaf[] = [];
	for (let row = 0; row < tiles.rows; row++)
		for (let column = 0; column < tiles.columns; column++)
			if (tileShows(template, tiles, { column, row }))
				leaves.push(tileLeaf(template, tiles, { column, row }, paper, MARGIN));
	if (leaves.length === 1) return leaves;
	return [mapLeaf(template, tiles, paperOf(plan), tileName), ...leaves];
}
