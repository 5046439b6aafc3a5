import type { Job } from '../../job';
import type { Blank } from '../../wrap';
import type { ClothLayouts } from '../layouts';
import type { SearchSession } from '../search-session';
import { layCloth } from './rolls';

/** How far a plan is when its boards are laid out: cloth takes next to no time. */
const BOARDS_DONE = 0.95;

/** Lays all blanks of a job, cloth by cloth in the order of the rack. */
export async function layCloths(
	job: Job,
	blanks: readonly Blank[],
	search: SearchSession,
): Promise<ClothLayouts[]> {
	const cloths: ClothLayouts[] = [];
	for (const cloth of job.stock.cloths) {
		const mine = blanks.filter((b) => b.cloth === cloth.id);
		if (mine.length === 0) continue;
		const watch = () => search.tell({ stage: `cloth: ${cloth.name}`, done: BOARDS_DONE });
		cloths.push(
			await search.once([cloth, mine, job.stock.rolls], () =>
				layCloth(job, cloth, mine, search.budget, watch),
			),
		);
	}
	return cloths;
}
