import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { type DocumentLog, type LogEntry, StoreAway } from '../keeping';
import type { Answer } from './connection';
import { ADD, MAKE_ONE } from './scripts';

/** Entries, and bytes that are not packed, before they are made into one. */
const MANY = 300;
const LOOSE = 16_000;
/** Bytes that are added at one go. */
const AT_ONCE = 16_000_000;

interface Waiting {
	readonly bytes: Uint8Array;
	readonly kept: (entry: LogEntry) => void;
	readonly failed: (fault: unknown) => void;
}

/** Does one thing in the store, with the document's stream and the standings as its keys. */
type Do = (script: string, args: readonly (string | Uint8Array)[]) => Promise<Answer>;

/** Entries as the store tells them: number, then fields. */
type Told = readonly [id: Buffer, fields: readonly Buffer[]][];

/**
 * The updates of one document in the shared store. Every server sees them in the one order they
 * have there: each turn at the store tells first what others have added, then adds what waits here.
 */
export class StreamLog implements DocumentLog {
	onKept: DocumentLog['onKept'] = () => undefined;
	readonly #doc: string;
	readonly #bell: string;
	readonly #do: Do;
	#last = '0-0';
	#size = 0;
	#loose = 0;
	#entries = 0;
	#queue: Waiting[] = [];
	#mustLook = false;
	#running: Promise<void> | null = null;

	constructor(doc: string, bell: string, work: Do) {
		this.#doc = doc;
		this.#bell = bell;
		this.#do = work;
	}

	get size(): number {
		return this.#size;
	}

	get isLong(): boolean {
		return this.#entries >= MANY || this.#loose >= LOOSE;
	}

	/** All there is so far. */
	async begin(): Promise<readonly LogEntry[]> {
		const entries: LogEntry[] = [];
		this.onKept = (entry) => void entries.push(entry);
		await this.#turn([]);
		return entries;
	}

	append(bytes: Uint8Array): Promise<LogEntry> {
		return new Promise((kept, failed) => {
			this.#queue.push({ bytes, kept, failed });
			this.#running ??= this.#run();
		});
	}

	/** Another server has added to it. */
	look(): void {
		this.#mustLook = true;
		this.#running ??= this.#run();
	}

	/** Left as it is when another server has added to it meanwhile. */
	async compact(whole: () => Uint8Array): Promise<void> {
		await this.#idle();
		const bytes = whole();
		const done = await this.#do(MAKE_ONE, [this.#doc, this.#last, deflateRawSync(bytes)]);
		if (done !== 1) return;
		this.#size = bytes.length;
		this.#entries = 1;
		this.#loose = 0;
	}

	close(): Promise<void> {
		return this.#idle();
	}

	async #idle(): Promise<void> {
		while (this.#running) await this.#running;
	}

	/** All that came while the store was busy goes in one go. */
	async #run(): Promise<void> {
		while (this.#queue.length > 0 || this.#mustLook) {
			this.#mustLook = false;
			const batch = this.#nextBatch();
			try {
				await this.#turn(batch);
			} catch (fault) {
				for (const { failed } of batch) failed(fault);
			}
		}
		this.#running = null;
	}

	#nextBatch(): Waiting[] {
		let bytes = 0;
		const end = this.#queue.findIndex((one) => (bytes += one.bytes.length) > AT_ONCE);
		return this.#queue.splice(0, end < 0 ? this.#queue.length : Math.max(end, 1));
	}

	async #turn(batch: readonly Waiting[]): Promise<void> {
		const updates = batch.map(({ bytes }) => bytes);
		const answer = await this.#do(ADD, [this.#bell, this.#doc, this.#last, ...updates]);
		const [others, own, at] = answer as [Told, [Buffer, Buffer][], Buffer];
		for (const [id, fields] of others) {
			const entry = entryOf(fields);
			this.#count(id, entry.bytes, fields.length > 4);
			this.onKept(entry, 'another server');
		}
		batch.forEach(({ bytes, kept }, i) => {
			const [id, mark] = own[i] ?? [];
			if (!id || !mark) throw new StoreAway('The shared store told less than it was asked.');
			const entry = { mark: String(mark), at: Number(at), bytes };
			this.#count(id, bytes, false);
			this.onKept(entry, 'here');
			kept(entry);
		});
	}

	#count(id: Buffer, { length }: Uint8Array, packed: boolean): void {
		this.#last = String(id);
		this.#size += length;
		this.#entries++;
		if (!packed) this.#loose += length;
	}
}

function entryOf([mark, bytes, , at, packed]: readonly Buffer[]): LogEntry {
	if (!mark || !bytes) throw new TypeError('An entry of the shared store is torn.');
	const whole = packed ? inflateRawSync(bytes) : bytes;
	return { mark: String(mark), at: Number(at), bytes: new Uint8Array(whole) };
}
