import { nth } from '../../measure';
import { type Mark, placed } from '../drawing';

/**
 * Something that takes its height of a page: a heading, a row, a drawing. Its marks start at 0,0.
 */
export interface Block {
	readonly height: number;
	readonly marks: readonly Mark[];
	/**
	 * Its marks where they are costly: made when the block is set on a page, never for a setting
	 * that is only tried. `marks` is empty then.
	 */
	readonly later?: () => readonly Mark[];
	/** Stays on one page with the next block: a heading, the head of a table. */
	readonly keep?: boolean;
	/** Stands at the top of a page. */
	readonly fresh?: boolean;
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
	return broken(blocks, height).map(drawnOn);
}

/** A block where it stands on its page. */
export interface OnPage {
	readonly block: Block;
	/** Which of the blocks it is; the head of a table that goes on counts as the row under it. */
	readonly index: number;
	readonly y: number;
}

/** Which blocks stand on each page, and how far down. */
export function broken(blocks: readonly Block[], height: number): OnPage[][] {
	const pages: OnPage[][] = [];
	let page: OnPage[] = [];
	let y = 0;
	const rooms = roomFor(blocks, height);
	blocks.forEach((block, index) => {
		const full = y + nth(rooms, index) > height + 1e-6;
		if (y > 0 && (full || block.fresh === true)) {
			pages.push(page);
			page = [];
			y = 0;
			if (block.again !== undefined) {
				page.push({ block: block.again, index, y });
				y += block.again.height;
			}
		}
		if (y === 0 && isBlank(block)) return;
		page.push({ block, index, y });
		y += block.height;
	});
	return [...pages, page];
}

/** The marks of a page, from 0,0. */
export function drawnOn(page: readonly OnPage[]): Mark[] {
	return page.flatMap(({ block, y }) => placed(block.later?.() ?? block.marks, { x: 0, y }));
}

function isBlank(block: Block): boolean {
	return block.later === undefined && block.marks.length === 0;
}

/**
 * The room that each block asks for where it stands: the first of some that stay together asks for
 * all of them, the others for none. Where no page holds them all, the first asks for as much as
 * shows what they are about, and they part where the page ends.
 */
function roomFor(blocks: readonly Block[], height: number): number[] {
	const rooms: number[] = [];
	for (let first = 0; first < blocks.length; first = rooms.length) {
		const run = runFrom(blocks, first);
		const all = run.reduce((sum, b) => sum + b.height, 0);
		if (all <= height) rooms.push(all, ...run.slice(1).map(() => 0));
		else {
			const begun = run.slice(0, BEGUN).reduce((sum, b) => sum + b.height, 0);
			rooms.push(begun, ...run.slice(1).map((b) => b.height));
		}
	}
	return rooms;
}

/** A gap, a heading, the head of a table and two of its rows. */
const BEGUN = 5;

/** A block and all that has to stay with it. */
function runFrom(blocks: readonly Block[], first: number): Block[] {
	let last = first;
	while (last < blocks.length - 1 && nth(blocks, last).keep === true) last++;
	return blocks.slice(first, last + 1);
}
