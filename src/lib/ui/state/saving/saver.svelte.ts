import type { Store, StoredJob } from '../../store';
import { WriteQueue, type Writing } from './write-queue';

/** Writes each change to the browser's database at once, and says whether it could. */
export class Saver {
	state = $state<Writing>('saved');
	readonly #store: Store;
	readonly #queue = new WriteQueue((state) => (this.state = state));

	constructor(store: Store) {
		this.#store = store;
	}

	keep(job: StoredJob): void {
		this.#queue.add(`job ${job.id}`, () => this.#store.keep(job));
	}

	keepThing(key: string, value: unknown): void {
		this.#queue.add(`thing ${key}`, () => this.#store.setThing(key, value));
	}

	settled(): Promise<void> {
		return this.#queue.settled();
	}
}
