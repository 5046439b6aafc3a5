import type { Plan } from '../../plan';
import { type Drawing, placed } from '../drawing';
import { type Block, flow } from './flow';
import { pageArea, type Leaf, type Paper } from './frame';

/** The paper of the job's shop. */
export function paperOf(plan: Plan): Paper {
	return { size: plan.job.shop.paper };
}

/** Blocks on as many leaves as they take, all under one title; further ones say so. */
export function leavesOf(
	plan: Plan,
	titled: { readonly name: string; readonly title: string; readonly chapter?: string },
	blocks: readonly Block[],
	figures?: { readonly rounded: boolean },
): Leaf[] {
	const paper = paperOf(plan);
	const pages = flow(blocks, pageArea(paper).height);
	return pages.map((marks, i) => ({
		name: pages.length === 1 ? titled.name : `${titled.name} (${i + 1} of ${pages.length})`,
		title: i === 0 ? titled.title : `${titled.title}, continued`,
		paper,
		chapter: titled.chapter ?? titled.name,
		marks,
		rounded: figures?.rounded ?? false,
	}));
}

export function widthOf(plan: Plan): number {
	return pageArea(paperOf(plan)).width;
}

/** A drawing as a block, centred; one wider or taller than its room is made smaller. */
export function drawingBlock(drawing: Drawing, width: number, most: number): Block {
	const scale = Math.min(1, width / drawing.width, most / drawing.height);
	const x = (width - drawing.width * scale) / 2;
	return {
		height: drawing.height * scale + 3,
		marks: placed(drawing.marks, { x, y: 0, scale }),
	};
}
