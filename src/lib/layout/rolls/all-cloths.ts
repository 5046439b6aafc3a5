import type { Job } from '../../job';
import type { Blank } from '../../wrap';
import type { ClothLayouts } from '../layouts';
import type { SearchSession } from '../search-session';
import { layCloth } from './lay-cloth';
import { notPulled, pulledLayouts, renumbered } from './pulled';

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
		const mine = notPulled(
			job,
			blanks.filter((b) => b.cloth === cloth.id),
		);
		const pulled = pulledLayouts(job, cloth.id);
		if (mine.length === 0 && pulled.length === 0) continue;
		if (mine.length === 0) {
			cloths.push({ cloth: cloth.id, rolls: pulled, unplaced: [] });
			continue;
		}
		const watch = () => search.tell({ stage: `cloth: ${cloth.name}`, done: BOARDS_DONE });
		const rest = await search.once(
			[cloth, mine, job.stock.rolls, job.shop.ruler, job.shop.labour],
			() => layCloth(job, cloth, mine, search.budget, watch),
		);
		const rolls = rest.rolls.map((roll) => renumbered(roll, pulled));
		cloths.push(pulled.length > 0 ? { ...rest, rolls: [...pulled, ...rolls] } : rest);
	}
	return cloths;
}
