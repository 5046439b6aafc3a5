import type { Job } from '../job';
import { boardCautions } from './board-cautions';
import type { Caution } from './caution';
import type { Dangers } from './dangers';
import { workCautions } from './work-cautions';

/** The safety notes that belong to this plan, and only those. */
export function cautionsFor(job: Job, of: Dangers): Caution[] {
	return [...boardCautions(job, of.parts, of.boards), ...workCautions(job, of)];
}
