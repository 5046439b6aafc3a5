import type { JobFile } from '../lib/job';
import { type Saving, type SpoiledAt, remember, type Progress } from '../lib/layout';
import type { Plan, PlannedAgain, PlanOptions } from '../lib/plan';
import type { PlannedTogether } from '../lib/together';
import type { Ask, PlanningWorker } from '../lib/ui/planning';

/** What the planner is made of; handed in so that a test can plan without a worker. */
export interface Means {
	readonly plan: (file: unknown, options: PlanOptions) => Promise<Plan>;
	readonly withOptions: (of: Plan, file: unknown, options: PlanOptions) => Promise<Plan>;
	readonly planTogether: (
		files: readonly unknown[],
		options: PlanOptions,
	) => Promise<PlannedTogether>;
	readonly planAgain: (
		of: Plan,
		file: JobFile,
		at: SpoiledAt,
		options: PlanOptions,
	) => Promise<readonly PlannedAgain[]>;
	readonly savings: (of: Plan, options: PlanOptions) => Promise<readonly Saving[]>;
	/** Lets waiting messages in. */
	readonly breathe: () => Promise<void>;
	/** Milliseconds, to tell of progress no more often than an eye can follow. */
	readonly clock: () => number;
}

const TELL_EVERY = 60;
/** For all the changes tried together: some seconds on a desk computer. */
const SAVINGS_EFFORT = 6000;

/**
 * One planner: the newest request wins, the older one is stopped at its next breath and answers
 * null.
 */
export function makePlanner(means: Means): PlanningWorker {
	const memory = remember();
	let newest = -1;
	let stopped = -1;
	return {
		async plan(file, { n, ...search }: Ask, tell) {
			newest = Math.max(newest, n);
			let told = 0;
			const watch = async (progress: Progress): Promise<boolean> => {
				const now = means.clock();
				if (now - told >= TELL_EVERY) {
					told = now;
					tell(progress);
				}
				await means.breathe();
				return n === newest && stopped < n;
			};
			await means.breathe();
			if (n !== newest) return null;
			const made = await means.plan(file, { ...search, watch, memory });
			return n === newest ? made : null;
		},
		async options(of, file, { n }, tell) {
			newest = Math.max(newest, n);
			const watch = async (progress: Progress): Promise<boolean> => {
				tell(progress);
				await means.breathe();
				return n === newest && stopped < n;
			};
			const made = await means.withOptions(of, file, { watch, memory });
			return n === newest && stopped < n ? made : null;
		},
		async together(files, { n }, tell) {
			newest = Math.max(newest, n);
			const watch = async (progress: Progress): Promise<boolean> => {
				tell(progress);
				await means.breathe();
				return n === newest && stopped < n;
			};
			const made = await means.planTogether(files, { watch, memory });
			return n === newest ? made : null;
		},
		async savings(of, n) {
			newest = Math.max(newest, n);
			const watch = async (): Promise<boolean> => {
				await means.breathe();
				return n === newest && stopped < n;
			};
			const found = await means.savings(of, { effort: SAVINGS_EFFORT, watch });
			return n === newest ? found : null;
		},
		async again(of, file, at, { n }) {
			newest = Math.max(newest, n);
			const watch = async (): Promise<boolean> => {
				await means.breathe();
				return n === newest && stopped < n;
			};
			const found = await means.planAgain(of, file, at, { watch, memory });
			return n === newest && stopped < n ? found : null;
		},
		stop() {
			stopped = newest;
		},
	};
}
