const CHANNEL = 'kerf-and-nap jobs';

/**
 * The same job may stand open in two windows, and the database keeps what was written last. Windows
 * tell each other of their edits, so that nobody works on unaware.
 */
export class OtherWindows {
	/** Marks of jobs that another window has changed since they were opened here. */
	#changed = $state.raw<readonly string[]>([]);
	readonly #channel: BroadcastChannel;

	constructor() {
		this.#channel = new BroadcastChannel(CHANNEL);
		this.#channel.onmessage = (event: MessageEvent<unknown>) => {
			if (typeof event.data === 'string') this.#changed = [...this.#changed, event.data];
		};
	}

	changed(id: string): boolean {
		return this.#changed.includes(id);
	}

	/** The job here has been changed and written. */
	tell(id: string): void {
		this.#channel.postMessage(id);
	}

	/** The job has been fetched anew, or the person wants to go on with this one. */
	forget(id: string): void {
		this.#changed = this.#changed.filter((other) => other !== id);
	}

	close(): void {
		this.#channel.close();
	}
}
