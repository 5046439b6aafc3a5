import { untrack } from 'svelte';
import type { Plan } from '../../plan';
import { figuresOn } from '../../print';
import type { Desk } from '../state';
import { type PlanNews, planNews } from './plan-news';

/** What the bench needs of the desk. */
type Followed = Pick<Desk, 'id' | 'plan' | 'ruler'> & {
	readonly shared: { readonly changes: number };
	readonly watch: { readonly busy: boolean };
};

/**
 * The plan the bench works by. What is done here is in it at once; what somebody else has changed
 * is announced, and is in it when the person at the bench says so: nobody finds another cut on the
 * screen than the one the fence was set for.
 */
export class HeldPlan {
	plan = $state.raw<Plan | null>(null);
	/** What a newer plan would change here; null for nothing. */
	news = $state.raw<PlanNews | null>(null);
	readonly #desk: Followed;
	#job = '';
	/** Changes by others that are in the plan held. */
	#changes = 0;

	constructor(desk: Followed) {
		this.#desk = desk;
	}

	/** Called whenever the desk has another plan. */
	follow(): void {
		const { id, plan, shared, watch } = this.#desk;
		const { changes } = shared;
		const { busy } = watch;
		untrack(() => {
			if (id !== this.#job) {
				this.#job = id;
				this.plan = this.news = null;
			}
			if (!plan || plan === this.plan) return;
			if (!this.plan || changes === this.#changes) return this.#hold(plan, changes);
			// A first plan may be followed by a better one: it is announced when it stands.
			if (busy) return;
			this.news = planNews(this.plan, plan, figuresOn(this.#desk.ruler));
			if (!this.news) this.#hold(plan, changes);
		});
	}

	/** The person at the bench takes the newer plan. */
	take(): void {
		const { plan, shared } = this.#desk;
		if (plan) this.#hold(plan, shared.changes);
	}

	#hold(plan: Plan, changes: number): void {
		this.plan = plan;
		this.news = null;
		this.#changes = changes;
	}
}
