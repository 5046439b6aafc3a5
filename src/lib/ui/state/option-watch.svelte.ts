import type { OutputKind } from '../../print';
import type { JobFile } from '../../job';
import type { Progress } from '../../layout';
import type { Plan } from '../../plan';
import { type OptionsAsked, priceOptions } from '../planning';

/** Prices the options of one plan, by whatever plans them. */
type Pricer = (of: Plan, file: JobFile, tell: (progress: Progress) => void) => OptionsAsked;

/** Papers that say what the options come to. */
export const PRICED: readonly OutputKind[] = ['quote', 'cost-sheet'];

/**
 * The options of the plan in view: priced when they are asked for, in a worker of their own, and
 * kept as long as that plan is in view.
 */
export class OptionWatch {
	/** The plan with its options priced; null while they are not. */
	priced = $state.raw<Plan | null>(null);
	/** How far the pricing is; null when none is under way. */
	progress = $state.raw<Progress | null>(null);
	/** In words, why it could not be done; empty for nothing. */
	failed = $state('');
	readonly #pricer: Pricer;
	#of: Plan | null = null;
	#asked: OptionsAsked | null = null;

	constructor(pricer: Pricer = priceOptions) {
		this.#pricer = pricer;
	}

	/** The plan with its options priced, for as long as nobody stops it; the plan itself then. */
	async of(plan: Plan, file: JobFile): Promise<Plan> {
		if (plan.job.options.length === 0) return plan;
		if (this.#of === plan && this.priced) return this.priced;
		this.stop();
		this.#of = plan;
		this.priced = null;
		this.failed = '';
		this.progress = { stage: 'options', done: 0 };
		const asked = this.#pricer(plan, file, (progress) => {
			if (this.#asked === asked) this.progress = progress;
		});
		this.#asked = asked;
		const made = await asked.plan.catch((error: unknown) => {
			this.failed = error instanceof Error ? error.message : String(error);
			return null;
		});
		if (this.#asked !== asked) return plan;
		this.progress = null;
		this.#asked = null;
		this.priced = made;
		return made ?? plan;
	}

	/** The plan with its options priced, if they are those of this plan; itself without options. */
	pricedOf(plan: Plan): Plan | null {
		if (plan.job.options.length === 0) return plan;
		return this.priced !== null && this.#of === plan ? this.priced : null;
	}

	/** Gives up what is under way. */
	stop(): void {
		const asked = this.#asked;
		this.#asked = null;
		this.progress = null;
		asked?.end();
	}
}
