const CHANNEL = 'kerf-and-nap documents';

/** What a window tells the others. */
export type WindowWord =
	| {
			readonly kind: 'wrote';
			readonly doc: string;
			readonly update: Uint8Array;
			/** Has the store got it? What it has not, whoever hears of it keeps as well. */
			readonly kept: boolean;
	  }
	/** Everything in the store is another than it was. */
	| { readonly kind: 'replaced' };

/** The other windows of this browser, as far as it lets windows speak to each other. */
export class Windows {
	#channel: BroadcastChannel | null;

	constructor(hear: (word: WindowWord) => void, name = CHANNEL) {
		this.#channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(name);
		if (!this.#channel) return;
		this.#channel.onmessage = (event: MessageEvent<WindowWord | null>) => {
			if (typeof event.data === 'object' && event.data !== null) hear(event.data);
		};
	}

	tell(word: WindowWord): void {
		this.#channel?.postMessage(word);
	}

	close(): void {
		this.#channel?.close();
		this.#channel = null;
	}
}
