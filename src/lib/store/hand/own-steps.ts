import { lastOf } from '../../measure';
import type { StoredStep } from '../database';
import { joined, type RegisterEdit } from '../document';

/** Steps kept; enough for a day at the bench. */
const DEPTH = 500;

export type StepEdits = StoredStep['edits'];
/** Steps to be written by their number; null for one that is gone. */
export type StepChanges = Map<number, StoredStep | null>;

/** The steps one writer made in one job: what can be taken back, and done again. */
export class OwnSteps {
	readonly owner: string;
	readonly #first: number;
	#past: readonly StoredStep[];
	/** The one taken back last stands last. */
	#future: readonly StoredStep[];
	#run: string | null = null;

	/**
	 * @param kept the steps as they were kept, in any order
	 * @param first the number of the first one, where none is known
	 */
	constructor(owner: string, kept: readonly StoredStep[] = [], first = 1) {
		this.owner = owner;
		this.#first = first;
		const inOrder = kept.toSorted((a, b) => a.n - b.n);
		this.#past = inOrder.filter(({ undone }) => !undone);
		this.#future = inOrder.filter(({ undone }) => undone).reverse();
	}

	get last(): StoredStep | undefined {
		return this.#past.at(-1);
	}
	get next(): StoredStep | undefined {
		return this.#future.at(-1);
	}

	/**
	 * A change more. Those that carry the same `run` one after another (the letters of one field)
	 * are one step; null always makes a step of its own.
	 */
	made(edits: StepEdits, what: string, run: string | null): StepChanges {
		const last = run !== null && run === this.#run ? this.last : undefined;
		const changes: StepChanges = new Map(this.#future.map(({ n }) => [n, null]));
		const step: StoredStep = last
			? { ...last, edits: together(last.edits, edits) }
			: {
					owner: this.owner,
					n: (this.last?.n ?? this.#first - 1) + 1,
					what,
					run,
					edits,
					undone: false,
				};
		const past = [...(last ? this.#past.slice(0, -1) : this.#past), step];
		for (const { n } of past.slice(0, -DEPTH)) changes.set(n, null);
		this.#past = past.slice(-DEPTH);
		this.#future = [];
		this.#run = run;
		return changes.set(step.n, step);
	}

	/** What is now said more fully belongs to the last step, and is none of its own. */
	amended(edits: StepEdits): StepChanges {
		const { last } = this;
		if (!last) return new Map();
		const step = { ...last, edits: together(last.edits, edits) };
		this.#past = this.#past.with(-1, step);
		return new Map([[step.n, step]]);
	}

	/** The run is over: the next change is a step of its own. */
	settle(): void {
		this.#run = null;
	}

	/** The last step was taken back by these edits. */
	undone(edits: StepEdits): StepChanges {
		const step = { ...lastOf(this.#past), edits, undone: true };
		this.#past = this.#past.slice(0, -1);
		this.#future = [...this.#future, step];
		this.#run = null;
		return new Map([[step.n, step]]);
	}

	/** The step taken back last was done again by these edits. */
	redone(edits: StepEdits): StepChanges {
		const step = { ...lastOf(this.#future), edits, undone: false };
		this.#future = this.#future.slice(0, -1);
		this.#past = [...this.#past, step];
		this.#run = null;
		return new Map([[step.n, step]]);
	}
}

function together(first: StepEdits, second: StepEdits): StepEdits {
	const docs = new Map<string, readonly RegisterEdit[]>(first);
	for (const [doc, edits] of second) docs.set(doc, joined(docs.get(doc) ?? [], edits));
	return [...docs];
}
