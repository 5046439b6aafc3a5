import type { Plan } from '../../plan';
import { type Drawing, placed } from '../drawing';
import type { Block } from './flow';
import { pageArea, type Paper } from './paper';
import type { Leaf } from './setting';

/** The paper of the job's shop. */
export function paperOf(plan: Plan): Paper {
	return { size: plan.job.shop.paper };
}

/** Blocks under one title; on as many pages as they take, further ones say so. */
export function leavesOf(
	plan: Plan,
	titled: Pick<Leaf, 'name' | 'title' | 'chapter' | 'whole' | 'instead'>,
	blocks: readonly Block[],
	figures?: { readonly rounded: boolean },
): Leaf[] {
	return [{ ...titled, paper: paperOf(plan), blocks, ...(figures && { figures }) }];
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
