import { nth } from '../../measure';
import { type Drawing, placed } from '../drawing';
import { type Block, space } from './flow';
import { drawingBlock } from './leaves';
import { subheading } from './paragraphs';

/** Width of what stands beside another on a page, mm: half of it, with paper between. */
export const HALF_PAGE = 88;

/** Drawings in their order, each under its title, two beside each other where both are narrow. */
export function drawingRows(drawings: readonly Drawing[], width: number, most: number): Block[] {
	return inRows(drawings).flatMap((row) => [
		{ ...space(3), keep: true },
		rowBlock(row, row.every(isNarrow) ? HALF_PAGE : width, width, most),
	]);
}

const isNarrow = (drawing: Drawing): boolean => drawing.width <= HALF_PAGE;

function inRows(drawings: readonly Drawing[]): Drawing[][] {
	const rows: Drawing[][] = [];
	for (const drawing of drawings) {
		const row = rows.at(-1);
		if (row?.length === 1 && isNarrow(nth(row, 0)) && isNarrow(drawing)) row.push(drawing);
		else rows.push([drawing]);
	}
	return rows;
}

/** Some blocks, and others beside them, each half as wide as the page, as one. */
export function halves(left: readonly Block[], right: readonly Block[], width: number): Block {
	const [a, b] = [stacked(left), stacked(right)];
	return {
		height: Math.max(a.height, b.height),
		marks: [...a.marks, ...placed(b.marks, { x: width - HALF_PAGE, y: 0 })],
	};
}

/**
 * Two beside each other, so that they take half the paper: each has beside it the one of those to
 * come that is most nearly as tall.
 */
export function inPairs(blocks: readonly Block[], width: number): Block[] {
	const waiting = [...blocks];
	const rows: Block[] = [];
	for (let left = waiting.shift(); left !== undefined; left = waiting.shift()) {
		const tall = left.height;
		const off = waiting.map((b) => Math.abs(b.height - tall));
		const right = waiting.splice(off.indexOf(Math.min(...off)), 1);
		rows.push(halves([left], right, width));
	}
	return rows;
}

function stacked(blocks: readonly Block[]): Block {
	let height = 0;
	const marks = blocks.flatMap((block) => {
		const at = placed(block.marks, { x: 0, y: height });
		height += block.height;
		return at;
	});
	return { height, marks };
}

function rowBlock(row: readonly Drawing[], room: number, width: number, most: number): Block {
	const [left = [], right = []] = row.map((drawing) => {
		const title = subheading(drawing.title, room);
		return [title, drawingBlock(drawing, room, most - title.height)];
	});
	return halves(left, right, width);
}
