import { WebSocket } from 'ws';

import { type DeviceWord, frame, SharedDocument, SPEECH, unframe } from '../../../lib/store';

/** Looks at what was told before a word is given up, some 20 s. */
const PATIENCE = 10_000;

type Word = Readonly<Record<string, unknown>>;

/** A device that says just what it is told to, and counts what it is answered. */
export class RawDevice {
	readonly doc = new SharedDocument();
	readonly words: Word[] = [];
	/** Numbers of the updates the shop has said to have kept. */
	readonly kept = new Set<number>();
	closed = false;
	readonly #socket: WebSocket;
	readonly #name: string;
	#n = 0;

	constructor(port: number, doc: string) {
		this.#name = doc;
		this.#socket = new WebSocket(`ws://localhost:${port}/documents`);
		this.#socket.on('error', () => (this.closed = true));
		this.#socket.on('close', () => (this.closed = true));
		this.#socket.on('message', (data: Buffer) => {
			const { word, rest } = unframe(new Uint8Array(data));
			this.words.push(word);
			if (word['say'] === 'kept') this.kept.add(Number(word['n']));
			if (word['say'] === 'state' && Number(word['size']) > 0)
				this.doc.take(rest.subarray(0, Number(word['size'])));
			if (word['say'] === 'update') this.doc.take(rest);
		});
		this.doc.onUpdate((update, by) => {
			if (by === 'here') this.say({ say: 'update', doc, n: ++this.#n }, update);
		});
	}

	/** Says who it is, and opens its document; resolves when it has it, rejects when sent away. */
	async in(secret: string): Promise<void> {
		await this.opened();
		this.say({ say: 'hello', secret, device: 'raw', speech: SPEECH });
		this.say({ say: 'open', doc: this.#name }, this.doc.standing());
		await this.told('state');
	}

	/** Resolves when the socket stands, whether it is let in or not. */
	async opened(): Promise<void> {
		await new Promise((resolve, reject) => {
			this.#socket.once('open', resolve);
			this.#socket.once('error', reject);
		});
	}

	/** Waits for such a word; rejects when the socket ends, or nothing of it comes for long. */
	async told(say: string): Promise<Word> {
		for (let waits = 0; waits < PATIENCE; waits++) {
			const word = this.words.find((one) => one['say'] === say);
			if (word) return word;
			if (this.closed) throw new Error(`ended; told: ${JSON.stringify(this.words)}`);
			await new Promise((done) => setTimeout(done, 2));
		}
		throw new Error(`never told "${say}"; told: ${JSON.stringify(this.words)}`);
	}

	/** One edit, told at once. */
	type(key: string, text: string): void {
		this.doc.together(() => this.doc.put('typed', key, text));
	}

	say(word: DeviceWord, bytes: Uint8Array = new Uint8Array(0)): void {
		if (!this.closed && this.#socket.readyState === WebSocket.OPEN)
			this.#socket.send(frame(word, bytes));
	}

	sendRaw(bytes: Uint8Array | string): void {
		this.#socket.send(bytes);
	}

	/** What is waiting to be sent. */
	get waiting(): number {
		return this.#socket.bufferedAmount;
	}

	close(): void {
		this.#socket.terminate();
		this.doc.close();
	}
}
