import { type Problem, valueAt } from '../../job';
import { type SearchRecord, type Progress, EFFORT, type Saving } from '../../layout';
import type { Plan } from '../../plan';
import { isBetter, type SearchAsk, type Planner } from '../planning';
import { byPlace } from './by-place';

/**
 * Typing goes on while the plan follows: it is asked for when the keys have been still this long.
 */
const STILL = 120;

/**
 * A first plan is held back this long when a better one may be known already: two plans in a blink
 * only flicker.
 */
const HOLD = 250;

/**
 * Effort of each further 'keep looking', and the most: what is found must be found again after each
 * edit.
 */
const FURTHER = 10;
const MOST = 100 * EFFORT;
/** Seeds left to one 'keep looking', however many searches this machine runs side by side. */
const SEEDS = 4;

/** Said where paper is asked for and the plan in view is older than the job. */
export const BEHIND =
	'The plan in view is older than the job, so nothing is printed from it: wait for the new plan; where none comes, undo the last change or go on.';

/** What the last 'keep looking' came to. */
export interface RunningSearch {
	readonly effort: number;
	readonly seed: number;
	/** Was it ended before its time? */
	readonly ended: boolean;
	readonly better: boolean;
}

/** The plan of the open job as it follows the edits. */
export class PlanWatch {
	/** The newest plan there is; it stays in view while the next one is made. */
	plan = $state.raw<Plan | null>(null);
	/** Its problems by the place they speak of. */
	readonly byPlace = $derived(byPlace(this.plan?.problems ?? []));
	/** Set while a plan is being made. */
	progress = $state.raw<Progress | null>(null);
	busy = $state(false);
	/** The job has changed since the plan in view was made: nothing is printed from that one. */
	behind = $state(false);
	/** A sentence when planning broke (a bug, never a bad job). */
	broke = $state<string | null>(null);
	/** The last search of the job as it stands; null after an edit. */
	search = $state.raw<RunningSearch | null>(null);
	/** Told the search behind each new plan in view. */
	onSearched: (record: SearchRecord, by: 'keep looking' | 'stop') => void = () => undefined;

	/** Told when a plan is in view. */
	onShown: () => void = () => undefined;

	/** Problems that no plan knows of, said with those of each plan. */
	noted: readonly Problem[] = [];

	#n = 0;
	#stopped = 0;
	#timer: ReturnType<typeof setTimeout> | undefined;
	readonly #planner: Planner;

	constructor(planner: Planner) {
		this.#planner = planner;
	}

	/** The job changed: plan it when the keys are still. */
	follow(file: unknown, wait = STILL): void {
		const n = ++this.#n;
		this.busy = this.behind = true;
		this.search = null;
		clearTimeout(this.#timer);
		this.#timer = setTimeout(() => void this.#make(n, () => this.#following(file, n)), wait);
	}

	/**
	 * Look longer, or as long with other seeds. The plan in view stays until a better one is there.
	 */
	searchFurther(file: unknown): void {
		if (this.busy || !this.plan) return;
		const n = ++this.#n;
		const { effort, seed } = this.#next(this.plan.search);
		this.busy = true;
		void this.#make(n, () => this.#searching(file, { n, effort, seed }));
	}

	/**
	 * What would save a sheet of the plan in view. Null without a plan, or when the job moved on
	 * meanwhile.
	 */
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
		this.#stopped = this.#n;
		await this.#planner.stop();
	}

	/** Forget the plan in view: another job is opened. */
	clear(): void {
		this.#n++;
		clearTimeout(this.#timer);
		this.plan = this.progress = this.broke = this.search = null;
		this.busy = this.behind = false;
	}

	/**
	 * A job that was searched longer gets a usual plan first: its figures follow the edit at once.
	 */
	async #following(file: unknown, n: number): Promise<void> {
		let timer: ReturnType<typeof setTimeout> | undefined;
		if (searchesLong(file)) {
			const first = await this.#planner.plan(file, { n, effort: EFFORT }, this.#teller(n));
			timer = setTimeout(() => this.#show(n, first), HOLD);
		}
		const plan = await this.#planner.plan(file, { n }, this.#teller(n));
		clearTimeout(timer);
		if (this.#show(n, plan) && plan && this.#stopped === n) this.onSearched(plan.search, 'stop');
	}

	async #searching(file: unknown, ask: SearchAsk): Promise<void> {
		const { n, effort, seed } = ask;
		const before = this.plan;
		const found = await this.#planner.search(file, ask, this.#teller(n));
		if (n !== this.#n) return;
		const better = found !== null && (!before || isBetter(found, before));
		this.search = { effort, seed, ended: this.#stopped === n || found === null, better };
		if (better && this.#show(n, found)) this.onSearched(found.search, 'keep looking');
	}

	/**
	 * What to try after the last search: the same to its end, ten times as long, or as long with
	 * other seeds.
	 */
	#next(record: SearchRecord): { effort: number; seed: number } {
		const last = this.search ?? { ...record, ended: record.stopped !== null };
		if (last.ended && last.effort > EFFORT) return { effort: last.effort, seed: last.seed };
		const effort = Math.min(MOST, last.effort * FURTHER);
		return { effort, seed: last.effort < effort ? last.seed : (last.seed + SEEDS) >>> 0 };
	}

	#show(n: number, plan: Plan | null): boolean {
		if (n !== this.#n || !plan) return false;
		this.plan =
			this.noted.length === 0 ? plan : { ...plan, problems: [...this.noted, ...plan.problems] };
		this.behind = false;
		this.onShown();
		return true;
	}

	#teller(n: number): (progress: Progress) => void {
		return (progress) => {
			if (n === this.#n) this.progress = progress;
		};
	}

	async #make(n: number, work: () => Promise<void>): Promise<void> {
		try {
			await work();
			if (n !== this.#n) return;
			this.broke = null;
		} catch (error) {
			if (n !== this.#n) return;
			this.broke = error instanceof Error ? error.message : String(error);
		}
		this.busy = false;
		this.progress = null;
	}
}

function searchesLong(file: unknown): boolean {
	const effort = valueAt(file, ['look', 'effort']);
	return typeof effort === 'number' && effort > EFFORT;
}
