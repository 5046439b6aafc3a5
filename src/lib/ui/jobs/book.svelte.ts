import type { Store, StoredJob } from '../../store';

/** The jobs kept in this browser, those in use and those thrown away, as the page lists them. */
export class Book {
	/** Null until the database has answered. */
	jobs = $state.raw<readonly StoredJob[] | null>(null);
	thrown = $state.raw<readonly StoredJob[]>([]);
	failed = $state(false);
	readonly #store: Pick<Store, 'jobs' | 'thrownJobs'>;

	constructor(store: Pick<Store, 'jobs' | 'thrownJobs'>) {
		this.#store = store;
	}

	async refresh(): Promise<void> {
		try {
			[this.jobs, this.thrown] = await Promise.all([this.#store.jobs(), this.#store.thrownJobs()]);
			this.failed = false;
		} catch {
			this.failed = true;
		}
	}
}
