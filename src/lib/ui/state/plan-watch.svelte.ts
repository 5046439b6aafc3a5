import { EFFORT } from '../../layout/pace';
import type { Saving } from '../../layout/savings';
import type { Plan, Progress } from '../../plan';
import type { Planner } from '../planner';
import { byPlace } from './by-place';

/** Typing goes on while the plan follows: it is asked for when the keys have been still this long. */
const STILL = 120;

/** Effort of each further 'keep looking'. */
const FURTHER = 10;

/** The plan of the open job as it follows the edits. */
export class PlanWatch {
	/** The newest plan there is; it stays in view while the next one is made. */
	plan = $state.raw<Plan | null>(null);
	/** Its problems by the place they speak of. */
	readonly byPlace = $derived(byPlace(this.plan?.problems ?? []));
	/** Set while a plan is being made. */
	progress = $state.raw<Progress | null>(null);
	busy = $state(false);
	/** A sentence when planning broke (a bug, never a bad job). */
	broke = $state<string | null>(null);
	/** Effort behind the plan in view; 0 for the usual one. */
	effort = $state(0);

	#n = 0;
	#timer: ReturnType<typeof setTimeout> | undefined;
	readonly #planner: Planner;

	constructor(planner: Planner) {
		this.#planner = planner;
	}

	/** The job changed: plan it when the keys are still. */
	follow(file: unknown, effort = 0, wait = STILL): void {
		const n = ++this.#n;
		this.busy = true;
		clearTimeout(this.#timer);
		this.#timer = setTimeout(() => void this.#ask(file, n, effort), wait);
	}

	/** Look ten times as long as last time. The plan in view stays until a better one is there. */
	lookFurther(file: unknown): void {
		this.follow(file, (this.effort === 0 ? EFFORT : this.effort) * FURTHER, 0);
	}

	/** What would save a sheet of the plan in view. Null without a plan, or when the job moved on meanwhile. */
	async savings(): Promise<readonly Saving[] | null> {
		if (!this.plan || this.busy) return null;
		const n = ++this.#n;
		this.busy = true;
		const found = await this.#planner.savings(this.plan, n).catch(() => null);
		if (n !== this.#n) return null;
		this.busy = false;
		return found;
	}

	/** Enough: take the best found so far. */
	async stop(): Promise<void> {
		await this.#planner.stop();
	}

	/** Forget the plan in view: another job is opened. */
	clear(): void {
		this.#n++;
		clearTimeout(this.#timer);
		this.plan = this.progress = this.broke = null;
		this.busy = false;
		this.effort = 0;
	}

	async #ask(file: unknown, n: number, effort: number): Promise<void> {
		const tell = (progress: Progress): void => {
			if (n === this.#n) this.progress = progress;
		};
		try {
			const plan = await this.#planner.plan(file, { n, effort }, tell);
			if (n !== this.#n) return;
			if (plan) {
				this.plan = plan;
				this.effort = effort;
			}
			this.broke = null;
		} catch (error) {
			if (n !== this.#n) return;
			this.broke = error instanceof Error ? error.message : String(error);
		}
		this.busy = false;
		this.progress = null;
	}
}
