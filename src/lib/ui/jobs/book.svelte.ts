import type { Store, StoredJob } from '../../store';

/** The jobs kept in this browser as the page lists them: in use, put away and thrown away. */
export class Book {
	/** Those in use; null until the database has answered. */
	jobs = $state.raw<readonly StoredJob[] | null>(null);
	/** Put away, the last one first. */
	archived = $state.raw<readonly StoredJob[]>([]);
	thrown = $state.raw<readonly StoredJob[]>([]);
	failed = $state(false);
	readonly #store: Pick<Store, 'jobs' | 'thrownJobs'>;

	constructor(store: Pick<Store, 'jobs' | 'thrownJobs'>) {
		this.#store = store;
	}

	async refresh(): Promise<void> {
		try {
			const [jobs, thrown] = await Promise.all([this.#store.jobs(), this.#store.thrownJobs()]);
			this.jobs = jobs.filter(({ archived }) => archived === undefined);
			this.archived = jobs
				.filter(({ archived }) => archived !== undefined)
				.sort((a, b) => (b.archived ?? 0) - (a.archived ?? 0));
			this.thrown = thrown;
			this.failed = false;
		} catch {
			this.failed = true;
		}
	}
}
