import type { Job } from '../job';
import type { Budget } from '../nest';
import { EFFORT } from './pace';

/** How far the searches of a plan are. */
export interface Progress {
	readonly stage: string; // 'boards: birch plywood 18'
	readonly done: number; // 0..1
	readonly sheets?: number;
}

/** The search behind a plan. Kept with the job, it finds the same layouts again, on any machine. */
export interface SearchRecord {
	readonly seed: number;
	readonly effort: number;
	/** The report at which somebody said 'enough'; null when every search went to its end. */
	readonly stopped: number | null;
}

/** Searches ended before: what did not change since is not looked for again. */
export interface Memory {
	get(key: string): Remembered | undefined;
	set(key: string, found: Remembered): void;
}

interface Remembered {
	readonly answer: unknown;
	/** How often the search reported. */
	readonly reports: number;
}

export interface SearchOptions {
	readonly seed?: number;
	readonly effort?: number;
	readonly watch?: (progress: Progress) => Promise<boolean> | boolean;
	readonly memory?: Memory;
}

/**
 * All searches of one plan: their budget, who is told how far they are, and when they end. Told to
 * stop once, every later search takes its first good answer and stops as well. Reports come at the
 * same places in the same job, so that the number of the one at which it was stopped is enough to
 * stop there again.
 */
export class SearchSession {
	readonly budget: Budget;
	#reports = 0;
	#stopped: number | null = null;
	readonly #last: number | null;
	readonly #options: SearchOptions;

	constructor(job: Pick<Job, 'seed' | 'look'>, options: SearchOptions) {
		const { seed, effort } = options;
		this.#options = options;
		this.budget = { seed: seed ?? job.seed, effort: effort ?? job.look?.effort ?? EFFORT };
		const own = seed === undefined && effort === undefined;
		this.#last = own ? (job.look?.stopped ?? null) : null;
	}

	get record(): SearchRecord {
		return { ...this.budget, stopped: this.#stopped };
	}

	/** A report; false when the search is to end with the best it has. */
	async tell(progress: Progress): Promise<boolean> {
		if (this.#stopped !== null) return false;
		this.#reports++;
		const goOn = (await this.#options.watch?.(progress)) ?? true;
		if (!goOn || this.#reports === this.#last) this.#stopped = this.#reports;
		return this.#stopped === null;
	}

	/**
	 * The answer of a search that depends on nothing but `on` and the budget: remembered, or found
	 * now.
	 */
	async once<Answer>(on: readonly unknown[], find: () => Promise<Answer>): Promise<Answer> {
		const { memory } = this.#options;
		if (!memory || this.#stopped !== null) return find();
		const key = JSON.stringify([...on, this.budget]);
		const known = memory.get(key);
		if (known && !this.#endsWithin(known.reports)) {
			this.#reports += known.reports;
			return known.answer as Answer;
		}
		const before = this.#reports;
		const answer = await find();
		if (this.#stopped === null) memory.set(key, { answer, reports: this.#reports - before });
		return answer;
	}

	#endsWithin(reports: number): boolean {
		return this.#last !== null && this.#last <= this.#reports + reports;
	}
}

/** Searches remembered, and the most letters of the question worth keeping for one. */
const MOST = 24;
const LONGEST = 400_000;

/** A memory that forgets what was asked for least lately. */
export function remember(): Memory {
	const kept = new Map<string, Remembered>();
	return {
		get(key) {
			const found = kept.get(key);
			if (!found) return undefined;
			kept.delete(key);
			kept.set(key, found);
			return found;
		},
		set(key, found) {
			if (key.length > LONGEST) return;
			kept.set(key, found);
			const [oldest] = kept.keys();
			if (kept.size > MOST && oldest !== undefined) kept.delete(oldest);
		},
	};
}
