import { type Mark, type PathMark, clipped, circlePath, line, placed } from '../drawing';
import { type Leaf, pageArea, type Paper } from '../page';
import { padOf, tileName, type Tiling } from './tile';
import type { Template } from './template';
import { TOP_WIDTH, topMark } from './top-mark';

interface TileAt {
	readonly column: number;
	readonly row: number;
}

/**
 * One page of a full-size template. Neighbouring pages overlap; in the middle of the overlap runs
 * the seam, which both show with the same numbered match marks: cut one page along its seam and lay
 * it on the other, mark on mark.
 */
export function tileLeaf(
	template: Template,
	tiles: Tiling,
	at: TileAt,
	paper: Paper,
	margin: number,
): Leaf {
	const name = tileName(at.column, at.row);
	const { x, y } = windowOf(tiles, at);
	const shown = (): Mark[] =>
		placed([...shownOn(template, tiles, at), ...seams(tiles, at)], {
			x: margin - x,
			y: margin - y,
		});
	const single = tiles.columns * tiles.rows === 1;
	return {
		name: single ? `Template ${template.name}` : `Template ${template.name}, ${name}`,
		title: `Template ${template.name}${single ? '' : `, page ${name}`}`,
		paper,
		chapter: 'Templates',
		blocks: [
			{
				height: pageArea(paper).height,
				marks: [],
				later: () => [
					...shown(),
					...cropCorners(tiles, margin),
					...words(template, tiles, name, margin),
				],
			},
		],
	};
}

function windowOf(tiles: Tiling, at: TileAt) {
	const x = at.column * (tiles.width - tiles.overlap);
	const y = at.row * (tiles.height - tiles.overlap);
	return { x, y, width: tiles.width, height: tiles.height };
}

function shownOn(template: Template, tiles: Tiling, at: TileAt): PathMark[] {
	const window = windowOf(tiles, at);
	return placed(template.marks, padOf(template, tiles))
		.filter((mark) => mark.kind === 'path')
		.map((mark): PathMark => ({ ...mark, steps: clipped(mark.steps, window) }))
		.filter((mark) => mark.steps.length > 0);
}

/** Does anything of the template lie on this page? */
export function tileShows(template: Template, tiles: Tiling, at: TileAt): boolean {
	return shownOn(template, tiles, at).length > 0;
}

/**
 * Little corners that frame what the page shows: none missing means that nothing was cut off in
 * printing.
 */
function cropCorners(tiles: Tiling, margin: number): Mark[] {
	const right = margin + tiles.width;
	const bottom = margin + tiles.height;
	const corners = [
		[margin, margin, 1, 1],
		[right, margin, -1, 1],
		[margin, bottom, 1, -1],
		[right, bottom, -1, -1],
	] as const;
	return corners.flatMap(([x, y, dx, dy]): Mark[] => [
		{ kind: 'path', steps: line(x, y, x - 5 * dx, y), line: 'narrow' },
		{ kind: 'path', steps: line(x, y, x, y - 5 * dy), line: 'narrow' },
	]);
}

function words(template: Template, tiles: Tiling, name: string, margin: number): Mark[] {
	const single = tiles.columns * tiles.rows === 1;
	const text = `${single ? '' : `${name}  ·  `}${template.name}  ·  ${template.seen}  ·  full size`;
	const say = (x: number, y: number, text: string): Mark => ({
		...{ kind: 'text', x, y, text, size: 2.8, ink: 'pencil' },
	});
	return [
		...topMark(template.top, margin + 2, margin - 2.8),
		say(margin + 2 + (template.top === null ? 0 : TOP_WIDTH), margin - 1.8, text),
		say(margin + 2, margin + tiles.height + 3.4, template.legend),
	];
}

/** The seams of this tile with their match marks, in the template's own millimetres. */
function seams(tiles: Tiling, at: TileAt): Mark[] {
	const stepX = tiles.width - tiles.overlap;
	const stepY = tiles.height - tiles.overlap;
	const left = at.column * stepX;
	const top = at.row * stepY;
	const marks: Mark[] = [];
	const upright = [at.column, at.column + 1].filter((c) => c > 0 && c < tiles.columns);
	for (const c of upright) {
		const x = c * stepX + tiles.overlap / 2;
		marks.push(seam(line(x, top, x, top + tiles.height)));
		for (const t of [0.25, 0.75])
			marks.push(
				...match(
					x,
					top + t * tiles.height,
					`${tileName(c - 1, at.row)}|${tileName(c, at.row)}`,
					true,
				),
			);
	}
	const level = [at.row, at.row + 1].filter((r) => r > 0 && r < tiles.rows);
	for (const r of level) {
		const y = r * stepY + tiles.overlap / 2;
		marks.push(seam(line(left, y, left + tiles.width, y)));
		for (const t of [0.25, 0.75])
			marks.push(
				...match(
					left + t * tiles.width,
					y,
					`${tileName(at.column, r - 1)}|${tileName(at.column, r)}`,
					false,
				),
			);
	}
	return marks;
}

function seam(steps: PathMark['steps']): Mark {
	return { kind: 'path', steps, line: 'chain', ink: 'chalk' };
}

/** A target on the seam, named after the two pages that meet there. */
function match(x: number, y: number, name: string, upright: boolean): Mark[] {
	const beside = upright ? { x: x + 4.4, y: y + 1 } : { x: x + 4.4, y: y - 1.4 };
	return [
		{ kind: 'path', steps: circlePath(x, y, 1.6), line: 'narrow', ink: 'chalk' },
		{ kind: 'path', steps: line(x - 3.4, y, x + 3.4, y), line: 'narrow', ink: 'chalk' },
		{ kind: 'path', steps: line(x, y - 3.4, x, y + 3.4), line: 'narrow', ink: 'chalk' },
		{ kind: 'text', ...beside, text: name, size: 2.5, ink: 'chalk', halo: true },
	];
}
