export type Writing = 'saved' | 'saving' | 'failed';

/**
 * One write under way, the newest of each kind waiting. A reload in the middle of a word loses
 * nothing but a write that had not begun.
 */
export class WriteQueue {
	readonly #tell: (state: Writing) => void;
	readonly #waiting = new Map<string, () => Promise<void>>();
	#running: Promise<void> | null = null;

	constructor(tell: (state: Writing) => void) {
		this.#tell = tell;
	}

	add(key: string, write: () => Promise<void>): void {
		this.#waiting.set(key, write);
		this.#tell('saving');
		this.#running ??= this.#run();
	}

	/** Resolves when everything is written. */
	async settled(): Promise<void> {
		while (this.#running) await this.#running;
	}

	async #run(): Promise<void> {
		let failed = false;
		for (;;) {
			const next = this.#waiting.entries().next().value;
			if (!next) break;
			this.#waiting.delete(next[0]);
			try {
				await next[1]();
			} catch {
				// A full disk or a private window: the screen says so, and the job can be saved as
				// a file.
				failed = true;
			}
		}
		this.#running = null;
		this.#tell(failed ? 'failed' : 'saved');
	}
}
