import type { Part } from '../../design';
import { type Job, materialName, materialOf } from '../../job';
import type { SheetsAnswer } from '../../nest';
import type { BoardLayouts } from '../layouts';
import type { Watch } from '../pace';
import type { SearchSession } from '../search-session';
import { layMaterial } from './boards';

/**
 * A sheet is dearer than a strip of cloth, and fewer of them are possible: boards are searched this
 * many times as long.
 */
const LONGER = 4;

/** Lays all parts of a job, material by material in the order they are first used. */
export async function layBoards(
	job: Job,
	parts: readonly Part[],
	search: SearchSession,
): Promise<BoardLayouts[]> {
	const used = [...new Set(parts.map((p) => p.material))];
	const materials = used.filter((id) => materialOf(job, id) !== null);
	const budget = { ...search.budget, effort: LONGER * search.budget.effort };
	const boards: BoardLayouts[] = [];
	for (const [i, material] of materials.entries()) {
		const stage = `boards: ${materialName(job, material)}`;
		const watch: Watch<SheetsAnswer> = (best, effort) =>
			search.tell({
				stage,
				done: (i + Math.min(1, effort / budget.effort)) / (materials.length + 1),
				sheets: best.layouts.length,
			});
		const mine = parts.filter((p) => p.material === material);
		// What is pinned of another board, or spoiled there, is no reason to look again.
		const [pinned, byHand] = [job.pinned, job.byHand].map((of) =>
			of.filter((p) => p.material === material),
		);
		boards.push(
			await search.once([material, mine, job.shop, job.stock, pinned, byHand], () =>
				layMaterial(job, material, mine, budget, watch),
			),
		);
	}
	return boards;
}
