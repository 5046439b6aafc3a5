import type { JobFile } from '../../../../job';
import type { Plan } from '../../../../plan';
import type { Desk } from '../../../state';

/** A change made at the sheets, and the plan as it was before. */
interface Made {
	readonly what: string;
	readonly before: Plan;
}

/**
 * The last change made at the sheets: it is one step of undo, and what it did stays in view until
 * another is made or it is taken back.
 */
export class ChangeShown {
	readonly #desk: Desk;
	made = $state.raw<Made | null>(null);

	constructor(desk: Desk) {
		this.#desk = desk;
	}

	/** Can it still be taken back as the last step? */
	readonly isLast: boolean = $derived.by(
		() => this.made !== null && this.#desk.undoes === this.made.what,
	);

	make(how: (file: JobFile) => JobFile, what: string): void {
		const { plan } = this.#desk;
		if (!plan || !this.#desk.mayEdit) return;
		// What is typed letter by letter is weighed against the plan before the first of them.
		const before = this.isLast && this.made?.what === what ? this.made.before : plan;
		this.#desk.alter(how, what);
		this.made = { what, before };
	}

	takeBack(): void {
		if (this.isLast) this.#desk.undo();
		this.made = null;
	}
}
