import type { Part } from '../../design';
import type { Outline } from '../../geometry';
import { toMm } from '../../measure';
import type { Plan } from '../../plan';
import type { Blank } from '../../wrap';
import { type PathMark, line, outlineSteps, polyline, onPaper, type View } from '../drawing';
import { pageArea, type Leaf, leavesOf, paperOf, setPages, widthOf } from '../page';
import { figuresOn } from '../wording';
import { pieceBlocks, pieceRows } from './piece-blocks';
import { struckCircle } from './circle';
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

/** A circle is two half turns; a compass sets it out better than a pattern. */
function isCircle(outline: Outline): boolean {
	return outline.length === 2 && outline.every((c) => Math.abs((c.bulge ?? 0) - 1) < 1e-9);
}

/**
 * Parts and blanks that are cut by a pattern: those with something that has to be traced, in the
 * order of the plan.
 */
export function templatesOf(plan: Plan): Template[] {
	const all = [
		...plan.parts.filter(needsTemplate).map((part) => partTemplate(part, plan)),
		...plan.blanks.map((blank) => blankTemplate(blank)),
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

/** A part as a pattern: its outline and holes, a cross in each round hole. */
export function partTemplate(part: Part, plan?: Pick<Plan, 'panels'>): Template {
	const width = toMm(part.length);
	const height = toMm(part.width);
	const view: View = { x: 0, y: height, scale: 1 };
	const outline: Outline = part.outline ?? [
		{ x: 0, y: 0 },
		{ x: part.length, y: 0 },
		{ x: part.length, y: part.width },
		{ x: 0, y: part.width },
	];
	const shape = (o: Outline): PathMark => ({
		kind: 'path',
		steps: outlineSteps([o], view),
		line: 'wide',
	});
	const traced = [outline, ...part.holes.filter((h) => !isCircle(h))].map(shape);
	const round = part.holes.filter(isCircle);
	return {
		id: part.id,
		mark: part.label,
		name: `${part.label} ${part.name}`,
		width,
		height,
		seen: `${part.face} face${upText(part)}`,
		marks: [
			...traced,
			...round.map(shape),
			...round.flatMap((h) => cross(h, view)),
			...middles(width, height),
		],
		traced,
		circles: round.map(shape).flatMap((m) => struckCircle(m) ?? []),
		legend: 'Thick: cut; chain: centre lines.',
		top: plan?.panels.some((p) => p.id === part.owner) ?? false,
	};
}

/** How a bevelled part lies under its pattern: with parallel bevels the pattern is the blank. */
function upText(part: Part): string {
	if (part.bevels.length === 0) return '';
	return part.shift === undefined ? ', LONG face up' : ' up, blank round both faces';
}

function cross(hole: Outline, view: View): PathMark[] {
	const [a, b] = hole.map((c) => onPaper(c, view));
	if (a === undefined || b === undefined) return [];
	const x = (a.x + b.x) / 2;
	const y = (a.y + b.y) / 2;
	const r = Math.hypot(a.x - b.x, a.y - b.y) / 2 + 4;
	return [line(x - r, y, x + r, y), line(x, y - r, x, y + r)].map((steps) => ({
		kind: 'path',
		steps,
		line: 'chain',
	}));
}

/** Ticks across the middle of each side, to lay the pattern to a centre line. */
function middles(width: number, height: number): PathMark[] {
	const [x, y, reach] = [width / 2, height / 2, 4];
	return [
		line(x, -reach, x, reach),
		line(x, height - reach, x, height + reach),
		line(-reach, y, reach, y),
		line(width - reach, y, width + reach, y),
	].map((steps) => ({ kind: 'path', steps, line: 'chain' }));
}

const BLANK_LINES: Partial<Record<Blank['marks'][number]['kind'], PathMark['line']>> = {
	fold: 'dashed',
	centre: 'chain',
	trim: 'phantom',
	step: 'dashed',
};

/**
 * A blank as a pattern for the back of the cloth: it is drawn as the back is seen, so it prints as
 * it is laid.
 */
export function blankTemplate(blank: Blank): Template {
	const height = toMm(blank.width);
	const view: View = { x: 0, y: height, scale: 1 };
	const marks = blank.marks.map((m): PathMark => {
		const spots = m.line.map((p) => onPaper(p, view));
		return {
			kind: 'path',
			steps: m.closed ? [...polyline(spots), ['Z']] : polyline(spots),
			line: BLANK_LINES[m.kind] ?? 'wide',
		};
	});
	const outline: PathMark = {
		kind: 'path',
		steps: outlineSteps([blank.outline], view),
		line: 'wide',
	};
	return {
		id: blank.id,
		mark: blank.label,
		// A panel and its cloth bear the same mark: the pages must not be taken for each other.
		name: `${blank.label} ${blank.name}, cloth`,
		width: toMm(blank.length),
		height,
		seen: 'BACK of the cloth: a mirror of what shows; the nap points right',
		marks: [outline, ...marks, ...middles(toMm(blank.length), height)],
		traced: [outline, ...marks].filter((m) => struckCircle(m) === null),
		circles: marks.flatMap((m) => struckCircle(m) ?? []),
		legend: 'Thick: cut; dashed: fold or step; chain: centre lines; two dots: trim.',
		top: false,
	};
}
