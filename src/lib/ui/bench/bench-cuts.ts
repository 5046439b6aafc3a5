import type { BoardLayouts } from '../../layout';
import type { JobFile } from '../../job';
import type { Plan } from '../../plan';
import { tickedCuts } from '../state';

/** One sheet as the bench sees it. */
export interface BenchSheet {
	readonly boards: BoardLayouts;
	readonly index: number;
	/** Its place among all sheets of the job, from 1. */
	readonly n: number;
	/** Cut numbers in order, or 1 to the number of parts on a routed sheet. */
	readonly steps: readonly number[];
	readonly ticked: readonly number[];
}

/**
 * The sheets that are still to be cut, in the order they are printed. A layout that failed its
 * check is never cut.
 */
export function benchSheets(plan: Plan, file: JobFile): BenchSheet[] {
	let n = 0;
	const sheets: BenchSheet[] = [];
	for (const boards of plan.boards) {
		for (const [index, layout] of boards.answer.layouts.entries()) {
			n++;
			if (boards.sources[index]?.cut || boards.faults.length > 0) continue;
			const steps =
				layout.cuts.length > 0 ? layout.cuts.map((c) => c.n) : layout.placed.map((_, i) => i + 1);
			sheets.push({ boards, index, n, steps, ticked: tickedCuts(file, boards, index) });
		}
	}
	return sheets;
}

/** Where the saw goes on: the first sheet with a step not ticked. */
export function nextStep(
	sheets: readonly BenchSheet[],
): { sheet: BenchSheet; step: number } | null {
	for (const sheet of sheets) {
		const step = sheet.steps.find((s) => !sheet.ticked.includes(s));
		if (step !== undefined) return { sheet, step };
	}
	return null;
}
