import { materialOf, type Job, sawOf } from '../../job';
import { nth } from '../../measure';
import { packets } from '../../nest';
import type { BoardLayouts } from '../layouts';

/** Sheets that lie on the saw together: indexes of their layouts, the lowest first. */
export type Stack = readonly number[];

/**
 * Groups of sheets that are cut alike, each in the stacks it is cut in. Empty when the saw cuts one
 * sheet at a time, when no stack would hold two, and for sheets by router. Sheets that are cut
 * already are left out.
 */
export function packetsOf(job: Job, boards: BoardLayouts): readonly (readonly Stack[])[] {
	const highest = sawOf(job).packet;
	const board = materialOf(job, boards.material);
	if (boards.problem.method !== 'saw' || highest === null || board === null) return [];
	if (boards.faults.length > 0) return [];
	const open = boards.answer.layouts.flatMap((_, i) => (boards.sources[i]?.cut ? [] : [i]));
	const layouts = open.map((i) => nth(boards.answer.layouts, i));
	return packets(layouts, board.measured, highest)
		.map((packet) => {
			let from = 0;
			return packet.stacks.map((count) =>
				packet.layouts.slice(from, (from += count)).map((i) => nth(open, i)),
			);
		})
		.filter((stacks) => stacks.some((stack) => stack.length > 1));
}
