import { nth } from '../../measure';
import { type Mark, placed } from '../drawing';

/**
 * Something that takes its height of a page: a heading, a row, a drawing. Its marks start at 0,0.
 */
export interface Block {
	readonly height: number;
	readonly marks: readonly Mark[];
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
	const pages: Mark[][] = [];
	let page: Mark[] = [];
	let y = 0;
	for (let i = 0; i < blocks.length; i++) {
		const block = nth(blocks, i);
		if (y > 0 && y + together(blocks, i) > height + 1e-6) {
			pages.push(page);
			page = [];
			y = 0;
			if (block.again !== undefined) y = set(page, block.again, y);
		}
		if (y === 0 && block.marks.length === 0) continue;
		y = set(page, block, y);
	}
	return [...pages, page];
}

function set(page: Mark[], block: Block, y: number): number {
	page.push(...placed(block.marks, { x: 0, y }));
	return y + block.height;
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
