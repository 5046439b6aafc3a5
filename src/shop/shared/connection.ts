import { createClient, ErrorReply, RESP_TYPES } from '@redis/client';
import { StoreAway } from '../keeping';

/** An answer of the store. */
export type Answer = Buffer | number | null | readonly Answer[];

/** How long nothing may be heard until a connection is held for dead, milliseconds. */
const SILENCE = 5000;
const PING = 1000;

/** What a store must be set to, so that what it says it has is on its disk and stays there. */
const MUST = { appendonly: 'yes', appendfsync: 'always', 'maxmemory-policy': 'noeviction' } as const;

/**
 * A connection to the store that several servers share: Redis, or Valkey, which speaks the same.
 * Once it has ended it stays so; another is made. The door through which the client of the store
 * enters.
 */
export class Connection {
	readonly #clients: readonly [commands: Client, bell: Client];
	#over = false;
	/** Told once, when it can be relied upon no more. */
	onEnd: (why: string) => void = () => undefined;

	private constructor(clients: readonly [Client, Client]) {
		this.#clients = clients;
		for (const client of clients) client.on('error', (fault: Error) => this.end(fault.message));
	}

	/**
	 * Connects, and listens on a bell from then on. Rejects when it cannot be reached, or does not
	 * keep what it is given.
	 */
	static async to(url: string, bell: string, rung: (word: string) => void): Promise<Connection> {
		const connection = new Connection([clientOf(url), clientOf(url)]);
		try {
			const [commands, listening] = connection.#clients;
			await Promise.all([commands.connect(), listening.connect()]);
			await listening.subscribe(bell, rung);
			await connection.#looksAfterIt();
			return connection;
		} catch (fault) {
			connection.close();
			throw fault;
		}
	}

	/** Rejects with `StoreAway` when nobody knows whether it is done. */
	async do(
		script: string,
		keys: readonly string[],
		args: readonly (string | Uint8Array)[],
	): Promise<Answer> {
		return this.#ask(['EVAL', script, String(keys.length), ...keys, ...args]);
	}

	async read(command: 'GET' | 'HGETALL', key: string): Promise<Answer> {
		return this.#ask([command, key]);
	}

	/** Rings the bell, for whoever hears it now. */
	async ring(bell: string, word: string): Promise<void> {
		await this.#ask(['PUBLISH', bell, word]);
	}

	close(): void {
		this.#over = true;
		for (const client of this.#clients) client.destroy();
	}

	async #ask(words: readonly (string | Uint8Array)[]): Promise<Answer> {
		if (this.#over) throw new StoreAway('The shared store is away.');
		try {
			return await this.#clients[0].sendCommand(words.map(bytesOf), AS_BYTES);
		} catch (fault) {
			const message = fault instanceof Error ? fault.message : String(fault);
			if (fault instanceof ErrorReply && /^(OOM|MISCONF)/.test(message)) throw fault;
			this.end(message);
			throw new StoreAway(`The shared store is away: ${message}`, { cause: fault });
		}
	}

	async #looksAfterIt(): Promise<void> {
		for (const [name, must] of Object.entries(MUST)) {
			const answer = await this.#ask(['CONFIG', 'GET', name]);
			const is = Array.isArray(answer) ? String(answer[1]) : '';
			if (is !== must)
				throw new TypeError(
					`its ${name} is "${is}" and must be "${must}", or it may lose what it says it has`,
				);
		}
	}

	/** It is not to be relied upon any more. */
	end(why: string): void {
		if (this.#over) return;
		this.close();
		this.onEnd(why);
	}
}

type Client = ReturnType<typeof clientOf>;

function clientOf(url: string) {
	return createClient({
		...{ url, RESP: 2, disableOfflineQueue: true, pingInterval: PING, maintNotifications: 'disabled' },
		socket: { reconnectStrategy: false, connectTimeout: SILENCE, socketTimeout: SILENCE },
	});
}

const AS_BYTES = { typeMapping: { [RESP_TYPES.BLOB_STRING]: Buffer } };
const bytesOf = (word: string | Uint8Array): string | Buffer =>
	typeof word === 'string' ? word : Buffer.from(word.buffer, word.byteOffset, word.length);
