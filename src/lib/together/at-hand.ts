import type { Job } from '../job';
import type { Plan } from '../plan';
import type { JoinedRack } from './rack';

/** What is at hand when all are laid out at once; each list by the place of the job. */
export interface AtHand {
	/** The jobs as they were read, with the rack each knows of. */
	readonly racks: readonly Job[];
	readonly tags: readonly string[];
	/** Each by itself. */
	readonly plans: readonly Plan[];
	readonly rack: JoinedRack;
}
