import {
	hashIn,
	LIMITS,
	makesPicture,
	type NotKept,
	SharedDocument,
	type ShopStanding,
} from '../lib/store';
import { type DocumentLog, type DocumentLogs, NO_MARK, StoreAway } from './keeping';

/** A document somebody has open. */
interface Open {
	readonly doc: SharedDocument;
	readonly log: DocumentLog;
	users: number;
	/** Something in the log cannot be read: it is left there as it is. */
	torn: boolean;
}

/** What came of an update. */
export type Added =
	| ({ readonly kept: true; readonly isNew: boolean } & ShopStanding)
	| { readonly kept: false; readonly why: NotKept; readonly fault?: unknown };

/**
 * The documents of a shop where they are kept. In memory are those that a device has open; of all
 * others only where they stand is known.
 */
export class ShopDocuments {
	/** Told what came by another server; no update for a document nobody here has open. */
	onElsewhere: (doc: string, standing: ShopStanding, update: Uint8Array | null) => void = () =>
		undefined;
	readonly #logs: DocumentLogs;
	readonly #standings = new Map<string, ShopStanding>();
	readonly #open = new Map<string, Promise<Open>>();
	/** Logs being closed: nobody opens one before that is over. */
	readonly #closing = new Map<string, Promise<void>>();

	private constructor(logs: DocumentLogs) {
		this.#logs = logs;
		logs.onMoved = (doc, standing) => this.#moved(doc, standing);
	}

	/** Reads where each document stands; rejects when the place cannot be read. */
	static async in(logs: DocumentLogs): Promise<ShopDocuments> {
		const documents = new ShopDocuments(logs);
		const standings = documents.#standings;
		// What was told meanwhile is newer.
		for (const [doc, standing] of await logs.standings())
			if (!standings.has(doc)) standings.set(doc, standing);
		return documents;
	}

	list(): [doc: string, mark: string, at: number][] {
		return [...this.#standings].map(([doc, { mark, at }]) => [doc, mark, at]);
	}

	standing(doc: string): ShopStanding {
		return this.#standings.get(doc) ?? { mark: NO_MARK, at: 0 };
	}

	/** Are there as many like this one as a shop takes, those begun among them? */
	#isFull(name: string): boolean {
		const isPicture = hashIn(name) !== null;
		const all = new Set([...this.#standings.keys(), ...this.#open.keys()]);
		const alike = [...all].filter((one) => (hashIn(one) !== null) === isPicture);
		return alike.length >= (isPicture ? LIMITS.pictures : LIMITS.documents);
	}

	/** Documents in memory. */
	get inMemory(): number {
		return this.#open.size;
	}

	/** Takes a document into use; null for one more than a shop may have. */
	async use(name: string): Promise<SharedDocument | null> {
		const isNew = !this.#standings.has(name) && !this.#open.has(name);
		if (isNew && this.#isFull(name)) return null;
		const opening = this.#open.get(name) ?? this.#load(name);
		this.#open.set(name, opening);
		opening.catch(() => this.#open.delete(name));
		const open = await opening;
		open.users++;
		return open.doc;
	}

	async leave(name: string): Promise<void> {
		const open = await this.#open.get(name)?.catch(() => null);
		if (!open || --open.users > 0) return;
		await this.#compact(open);
		if (open.users > 0) return;
		this.#open.delete(name);
		open.doc.close();
		const closing = open.log.close().finally(() => this.#closing.delete(name));
		this.#closing.set(name, closing);
		await closing;
	}

	/**
	 * Keeps an update to a document in use: in its log first, then in the document. Rejects when
	 * nobody can say whether it is kept.
	 */
	async add(name: string, update: Uint8Array): Promise<Added> {
		const open = await this.#open.get(name);
		if (!open) return { kept: false, why: 'too many' };
		try {
			if (open.doc.holds(update)) return { kept: true, isNew: false, ...this.standing(name) };
		} catch {
			return { kept: false, why: 'unreadable' };
		}
		if (hashIn(name) !== null && !makesPicture(name, update))
			return { kept: false, why: 'unreadable' };
		if (open.log.size + update.length > LIMITS.document) return { kept: false, why: 'too large' };
		try {
			const { mark, at } = await open.log.append(update);
			return { kept: true, isNew: true, mark, at };
		} catch (fault) {
			if (fault instanceof StoreAway) throw fault;
			return { kept: false, why: 'no room', fault };
		}
	}

	async close(): Promise<void> {
		for (const opening of this.#open.values()) {
			const open = await opening.catch(() => null);
			await open?.log.close();
		}
		this.#open.clear();
	}

	async #load(name: string): Promise<Open> {
		await this.#closing.get(name);
		const { log, entries } = await this.#logs.open(name);
		const doc = new SharedDocument();
		const open: Open = { doc, log, users: 0, torn: false };
		const take = (bytes: Uint8Array): void => {
			try {
				doc.take(bytes);
			} catch {
				open.torn = true; // whatever else holds of the document is told all the same
			}
		};
		log.onKept = ({ mark, at, bytes }, by) => {
			take(bytes);
			this.#standings.set(name, { mark, at });
			if (by === 'another server') this.onElsewhere(name, { mark, at }, bytes);
		};
		for (const { bytes } of entries) take(bytes);
		return open;
	}

	/** Of one that is open its log tells more. */
	#moved(doc: string, standing: ShopStanding): void {
		if (this.#open.has(doc) || standing.mark === this.standing(doc).mark) return;
		this.#standings.set(doc, standing);
		this.onElsewhere(doc, standing, null);
	}

	/** Without room for it the log stays as it is. */
	async #compact(open: Open): Promise<void> {
		if (!open.log.isLong || open.torn) return;
		try {
			await open.log.compact(() => open.doc.whole());
		} catch {
			// It only takes more room until the next time.
		}
	}
}
