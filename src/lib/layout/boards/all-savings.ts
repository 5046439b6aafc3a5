import type { Part } from '../../design';
import type { Job } from '../../job';
import type { BoardLayouts } from '../layouts';
import type { SearchSession } from '../search-session';
import { boardSavings, type Saving } from './savings';

/** What would save a sheet of any material of a job, the largest saving first. */
export async function allSavings(
	job: Job,
	parts: readonly Part[],
	all: readonly BoardLayouts[],
	search: SearchSession,
): Promise<Saving[]> {
	const found: Saving[] = [];
	for (const [i, boards] of all.entries()) {
		const stage = `what would save: ${boards.material}`;
		const watch = () => search.tell({ stage, done: i / all.length });
		found.push(...(await boardSavings(job, parts, boards, search.budget, watch)));
	}
	return found.sort((a, b) => b.money - a.money || b.sheets - a.sheets);
}
