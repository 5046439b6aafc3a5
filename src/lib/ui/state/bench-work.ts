import type { JobFile } from '../../job';
import { type BoardLayouts, pinSheet } from '../../layout';
import type { Plan } from '../../plan';
import { layoutKey } from './layout-key';

/** Cuts of a layout that are ticked. */
export function tickedCuts(file: JobFile, boards: BoardLayouts, index: number): readonly number[] {
	const ticked = file.ticked?.[layoutKey(boards, index)];
	return Array.isArray(ticked) ? ticked : [];
}

/**
 * Ticks a cut, or takes the tick away. With the first tick the saw is in the sheet: its layout is
 * pinned, and later edits plan round it.
 */
export function tickCut(
	file: JobFile,
	plan: Pick<Plan, 'job' | 'boards'>,
	boards: BoardLayouts,
	index: number,
	n: number,
): JobFile {
	const key = layoutKey(boards, index);
	const before = tickedCuts(file, boards, index);
	const after = before.includes(n) ? before.filter((m) => m !== n) : [...before, n].sort(byNumber);
	const ticked = { ...file.ticked, [key]: after };
	if (after.length === 0) delete ticked[key];
	const which = { material: boards.material, index };
	return { ...pinSheet(file, plan.job, plan.boards, which), ticked };
}

const byNumber = (a: number, b: number): number => a - b;
