import { type Mark, rect, placed } from '../drawing';
import { pageArea, type Leaf, type Paper, space, heading, paragraph } from '../page';
import type { Template } from './template';
import { padOf, spanOf, type Tiling } from './tile';

/** The whole template small, with the pages that make it up, and how to put them together. */
export function mapLeaf(
	template: Template,
	tiles: Tiling,
	paper: Paper,
	nameOf: (column: number, row: number) => string,
): Leaf {
	const area = pageArea(paper);
	const pages = tiles.columns * tiles.rows;
	const map = mapMarks(template, tiles, area.width, nameOf);
	const blocks = [
		heading(`Template ${template.name}`, area.width, `${pages} pages, full size`),
		paragraph(`${template.seen}.`, area.width, { ink: 'pencil' }),
		space(3),
		{ height: map.height + 5, marks: map.marks },
		paragraph(
			'Print all pages at 100 % and measure the bar on one of them first. The pages overlap: cut each along the chain line on its left and upper side, lay it on its neighbour mark on mark, and tape it. Check one long size with a tape before marking out.',
			area.width,
		),
	];
	return {
		name: `Template ${template.name}, map`,
		title: `Template ${template.name}, map`,
		paper,
		chapter: 'Templates',
		whole: true,
		blocks,
	};
}

/** The template at the scale that fits, each page as a frame with its name. */
function mapMarks(
	template: Template,
	tiles: Tiling,
	room: number,
	nameOf: (column: number, row: number) => string,
): { readonly marks: Mark[]; readonly height: number } {
	const wide = spanOf(tiles.columns, tiles.width, tiles.overlap);
	const tall = spanOf(tiles.rows, tiles.height, tiles.overlap);
	const scale = Math.min(room / wide, 150 / tall);
	const pad = padOf(template, tiles);
	const marks = placed(template.marks, { x: pad.x * scale, y: pad.y * scale, scale });
	for (let row = 0; row < tiles.rows; row++)
		for (let column = 0; column < tiles.columns; column++) {
			const x = column * (tiles.width - tiles.overlap) * scale;
			const y = row * (tiles.height - tiles.overlap) * scale;
			const [width, height] = [tiles.width * scale, tiles.height * scale];
			const steps = rect(x, y, width, height);
			marks.push({ kind: 'path', steps, line: 'narrow', ink: 'chalk' });
			marks.push({
				kind: 'text',
				x: x + width / 2,
				y: y + height / 2 + 1.6,
				text: nameOf(column, row),
				size: 4.6,
				anchor: 'middle',
				weight: 'semibold',
				ink: 'chalk',
				halo: true,
			});
		}
	return { marks, height: tall * scale };
}
