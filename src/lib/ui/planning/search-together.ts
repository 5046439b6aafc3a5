import type { Progress } from '../../layout';
import type { Plan } from '../../plan';
import { isBetter } from './best-plan';
import type { PlanningWorker, SearchAsk } from './planner';

/**
 * Several searches side by side, each hand with a seed of its own, counted on from the asked one.
 * The best plan wins; among equals the lowest seed, so that the same number of hands always finds
 * the same. A hand that breaks or answers nothing is done without; null when none answers. Rejects
 * when every hand broke.
 */
export async function searchTogether(
	hands: readonly Pick<PlanningWorker, 'plan'>[],
	file: unknown,
	ask: SearchAsk,
	tell: (progress: Progress) => void,
): Promise<Plan | null> {
	const done = hands.map(() => 0);
	const asked = hands.map((hand, i) =>
		hand.plan(file, { ...ask, seed: (ask.seed + i) >>> 0 }, (progress) => {
			done[i] = progress.done;
			tell({ stage: progress.stage, done: done.reduce((a, b) => a + b, 0) / hands.length });
		}),
	);
	const answers = await Promise.allSettled(asked);
	const plans = answers.flatMap((a) => (a.status === 'fulfilled' && a.value ? [a.value] : []));
	const broken = answers.find((a) => a.status === 'rejected');
	if (broken && answers.every((a) => a.status === 'rejected')) throw broken.reason;
	return plans.reduce<Plan | null>((best, p) => (best && !isBetter(p, best) ? best : p), null);
}
