import { nth } from '../../measure';
import { type Mark, placed } from '../drawing';

/**
 * Something that takes its height of a page: a heading, a row, a drawing. Its marks start at 0,0.
 */
export interface Block {
	readonly height: number;
	readonly marks: readonly Mark[];
	/**
	 * Its marks where they are costly: made when the block is set on a page, and never for a setting
	 * that is only tried. `marks` is empty then.
	 */
	readonly later?: () => readonly Mark[];
	/** Stays on one page with the next block: a heading, the head of a table. */
	readonly keep?: boolean;
	/** Repeated at the top when a page breaks before this block: the head of its table. */
	readonly again?: Block;
}

/** Paper between two blocks; left out at the top of a page. */
export function space(height: number): Block {
	return { height, marks: [] };
}

/**
 * Blocks set one under the other on as many pages as they take. Returns the marks of each page,
 * from 0,0. A block taller than a page stands alone on one; whoever makes such blocks makes them
 * smaller.
 */
export function flow(blocks: readonly Block[], height: number): Mark[][] {
	return spread(blocks, height).map((page) =>
		page.flatMap(({ block, y }) => placed(block.later?.() ?? block.marks, { x: 0, y })),
	);
}

/** How many pages the blocks take; nothing is drawn for it. */
export function pagesTaken(blocks: readonly Block[], height: number): number {
	return spread(blocks, height).length;
}

interface Set {
	readonly block: Block;
	readonly y: number;
}

/** Which blocks stand on each page, and how far down. */
function spread(blocks: readonly Block[], height: number): Set[][] {
	const pages: Set[][] = [];
	let page: Set[] = [];
	let y = 0;
	const set = (block: Block): void => {
		page.push({ block, y });
		y += block.height;
	};
	for (let i = 0; i < blocks.length; i++) {
		const block = nth(blocks, i);
		if (y > 0 && y + together(blocks, i) > height + 1e-6) {
			pages.push(page);
			page = [];
			y = 0;
			if (block.again !== undefined) set(block.again);
		}
		if (y > 0 || !isBlank(block)) set(block);
	}
	return [...pages, page];
}

function isBlank(block: Block): boolean {
	return block.later === undefined && block.marks.length === 0;
}

/** Height of the block and of all that has to stay with it. */
function together(blocks: readonly Block[], first: number): number {
	let height = 0;
	for (let i = first; i < blocks.length; i++) {
		height += nth(blocks, i).height;
		if (nth(blocks, i).keep !== true) break;
	}
	return height;
}
