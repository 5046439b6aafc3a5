import type { Cloth, Job } from '../../job';
import type { Budget, RollAnswer } from '../../nest';
import type { Blank } from '../../wrap';
import type { ClothLayouts, RollLayout } from '../layouts';
import type { Watch } from '../pace';
import { chooseCut } from './cut-ways';
import { withoutNap } from './rolls';

/**
 * Lays all blanks of one cloth in the way it is cut in; of each roll, what the nap costs besides.
 */
export async function layCloth(
	job: Job,
	cloth: Cloth,
	blanks: readonly Blank[],
	budget: Budget,
	watch: Watch<RollAnswer>,
): Promise<ClothLayouts> {
	const { taken, by, ways } = await chooseCut(job, blanks, { cloth, budget, watch });
	const shown: RollLayout[] = [];
	for (const roll of taken.rolls)
		shown.push({ ...roll, napless: await withoutNap(roll, { cloth, by, budget, watch }) });
	const { unplaced } = taken;
	return { cloth: cloth.id, rolls: shown, unplaced, ...(ways ? { ways } : {}) };
}
