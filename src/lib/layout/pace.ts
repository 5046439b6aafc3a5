import type { Search } from '../nest';

/**
 * Work units of each search of a usual plan: good while the person types; 'keep looking' asks for
 * more.
 */
export const EFFORT = 1000;

/**
 * Asked between slices of work whether to go on; it may take its time (a worker reads its messages
 * meanwhile).
 */
export type Watch<Answer> = (best: Answer, effort: number) => Promise<boolean> | boolean;

/**
 * Drives a search to its end, or until `watch` says stop: then the best answer so far is taken. The
 * search itself never waits and never reads a clock; this is the only place where time comes in,
 * and it cannot change what an unstopped search finds.
 */
export async function pursue<Answer>(
	search: Search<Answer>,
	watch: Watch<Answer>,
): Promise<Answer> {
	for (;;) {
		const step = search.next();
		if (step.done) return step.value;
		if (!(await watch(step.value.best, step.value.effort))) return step.value.best;
	}
}
