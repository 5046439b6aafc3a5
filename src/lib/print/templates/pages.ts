import type { Part } from '../../design';
import type { Outline } from '../../geometry';
import { toMm } from '../../measure';
import type { Plan } from '../../plan';
import type { Blank } from '../../wrap';
import { type PathMark, line, outlineSteps, polyline, onPaper, type View } from '../drawing';
import { pageArea, type Leaf, paperOf } from '../page';
import { mapLeaf } from './tile-map';
import { tileLeaf } from './tile-page';
import { tileName, tiling, type Template, type Tiling } from './tile';

const OVERLAP = 10;
/** Room for the marks at the edges of a tile, inside its page. */
const MARGIN = 6;
/** Templates of more pages than this are printed only when asked for by name. */
const MOST_PAGES = 12;

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

/** Templates of the pack: every shaped part, unless it takes too many pages. */
export function templateLeaves(plan: Plan): Leaf[] {
	return plan.parts
		.filter(needsTemplate)
		.map((part) => partTemplate(part))
		.filter((t) => pagesOf(plan, t) <= MOST_PAGES)
		.flatMap((t) => templateOf(plan, t));
}

/**
 * Parts and blanks that are cut by a pattern: every shaped part, every cloth blank, in the order of
 * the plan.
 */
export function templatesOf(plan: Plan): Template[] {
	return [
		...plan.parts.filter(needsTemplate).map(partTemplate),
		...plan.blanks.map((blank) => blankTemplate(blank)),
	];
}

/**
 * Sheets of paper that templates.pdf takes, maps and all; 0 when there is nothing to cut by a
 * pattern.
 */
export function templateLength(plan: Plan): number {
	return templatesOf(plan).reduce((sum, t) => {
		const pages = pagesOf(plan, t);
		return sum + pages + (pages > 1 ? 1 : 0);
	}, 0);
}

/** Pages a template takes, its map not counted. */
function pagesOf(plan: Plan, template: Template): number {
	const { columns, rows } = tilingOf(plan, template);
	return columns * rows;
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
export function templateOf(plan: Plan, template: Template): Leaf[] {
	const tiles = tilingOf(plan, template);
	const paper = { ...paperOf(plan), landscape: tiles.landscape };
	const leaves: Leaf[] = [];
	for (let row = 0; row < tiles.rows; row++)
		for (let column = 0; column < tiles.columns; column++)
			leaves.push(tileLeaf(template, tiles, { column, row }, paper, MARGIN));
	if (leaves.length === 1) return leaves;
	return [mapLeaf(template, tiles, paperOf(plan), tileName), ...leaves];
}

/** A part as a pattern: its outline and holes, a cross in each round hole. */
export function partTemplate(part: Part): Template {
	const width = toMm(part.length);
	const height = toMm(part.width);
	const view: View = { x: 0, y: height, scale: 1 };
	const outline: Outline = part.outline ?? [
		{ x: 0, y: 0 },
		{ x: part.length, y: 0 },
		{ x: part.length, y: part.width },
		{ x: 0, y: part.width },
	];
	const shapes = [outline, ...part.holes].map((o): PathMark => ({
		kind: 'path',
		steps: outlineSteps([o], view),
		line: 'wide',
	}));
	return {
		id: part.id,
		name: `${part.label} ${part.name}`,
		width,
		height,
		seen: `${part.face} face${upText(part)}`,
		marks: [...shapes, ...part.holes.filter(isCircle).flatMap((h) => cross(h, view))],
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
	return {
		id: blank.id,
		// A panel and its cloth bear the same mark: the pages must not be taken for each other.
		name: `${blank.label} ${blank.name}, cloth`,
		width: toMm(blank.length),
		height,
		seen: 'BACK of the cloth: a mirror of what shows; the nap points right',
		marks: [{ kind: 'path', steps: outlineSteps([blank.outline], view), line: 'wide' }, ...marks],
	};
}
