import type { JobFile } from '../../../job';
import type { Store } from '../../../store';

const HOUR = 3_600_000;

/** Keeps the open job as it was, once an hour at most while it is worked on. */
export class HourlyRevisions {
	#kept = 0;

	constructor(private readonly store: Store) {}

	/** Another job is opened. */
	begin(): void {
		this.#kept = 0;
	}

	/** Without an answer of the database there is none. */
	keep(id: string, why: string, file: JobFile): void {
		const at = Date.now();
		if (at - this.#kept < HOUR) return;
		this.#kept = at;
		void import('../../../store/keepsake/revisions')
			.then(({ keepHourlyRevision }) => keepHourlyRevision(this.store, id, { why, at, file }))
			.catch(() => undefined);
	}
}
