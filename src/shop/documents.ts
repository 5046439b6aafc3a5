import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { isDocName, LIMITS, type NotKept, SharedDocument, type ShopStanding } from '../lib/store';
import { NO_MARK, readLog, UpdateLog } from './update-log';

/** Entries of a file before they are made into one. */
const MANY = 300;
const ENDING = '.log';

/** A document somebody has open. */
interface Open {
	readonly doc: SharedDocument;
	readonly log: UpdateLog;
	users: number;
	entries: number;
	/** Something in the file cannot be read: it is left there as it is. */
	torn: boolean;
}

/** What came of an update. */
export type Added =
	| ({ readonly kept: true; readonly isNew: boolean } & ShopStanding)
	| { readonly kept: false; readonly why: NotKept; readonly fault?: unknown };

/**
 * The documents of a shop in their folder. In memory are those that a device has open; of all
 * others only where they stand is known.
 */
export class ShopDocuments {
	readonly #folder: string;
	readonly #standings: Map<string, ShopStanding>;
	readonly #open = new Map<string, Promise<Open>>();
	/** Files being closed: nobody opens one before that is over. */
	readonly #closing = new Map<string, Promise<void>>();

	private constructor(folder: string, standings: Map<string, ShopStanding>) {
		this.#folder = folder;
		this.#standings = standings;
	}

	/** Reads where each document stands; rejects when the folder cannot be read. */
	static async in(folder: string): Promise<ShopDocuments> {
		const standings = new Map<string, ShopStanding>();
		for (const file of await readdir(folder)) {
			const doc = docOf(file);
			if (doc === null) continue;
			const last = (await readLog(join(folder, file))).entries.at(-1);
			if (last) standings.set(doc, { mark: last.mark, at: last.at });
		}
		return new ShopDocuments(folder, standings);
	}

	list(): [doc: string, mark: string, at: number][] {
		return [...this.#standings].map(([doc, { mark, at }]) => [doc, mark, at]);
	}

	standing(doc: string): ShopStanding {
		return this.#standings.get(doc) ?? { mark: NO_MARK, at: 0 };
	}

	/** Those of which something is kept, and those begun of which nothing is yet. */
	get #count(): number {
		const begun = [...this.#open.keys()].filter((name) => !this.#standings.has(name));
		return this.#standings.size + begun.length;
	}

	/** ShopDocuments in memory. */
	get inMemory(): number {
		return this.#open.size;
	}

	/** Takes a document into use; null for one more than a shop may have. */
	async use(name: string): Promise<SharedDocument | null> {
		const isNew = !this.#standings.has(name) && !this.#open.has(name);
		if (isNew && this.#count >= LIMITS.documents) return null;
		const opening = this.#open.get(name) ?? this.#load(name);
		this.#open.set(name, opening);
		opening.catch(() => this.#open.delete(name));
		const open = await opening;
		open.users++;
		return open.doc;
	}

	async leave(name: string): Promise<void> {
		const open = await this.#open.get(name);
		if (!open || --open.users > 0) return;
		await this.#compact(name, open);
		if (open.users > 0) return;
		this.#open.delete(name);
		open.doc.close();
		const closing = open.log.close().finally(() => this.#closing.delete(name));
		this.#closing.set(name, closing);
		await closing;
	}

	/** Keeps an update to a document in use. On the disk first, then in the document. */
	async add(name: string, update: Uint8Array): Promise<Added> {
		const open = await this.#open.get(name);
		if (!open) return { kept: false, why: 'too many' };
		try {
			if (open.doc.holds(update)) return { kept: true, isNew: false, ...this.standing(name) };
		} catch {
			return { kept: false, why: 'unreadable' };
		}
		if (open.log.size + update.length > LIMITS.document) return { kept: false, why: 'too large' };
		try {
			const { mark, at } = await open.log.append(update, Date.now());
			return { kept: true, isNew: true, mark, at };
		} catch (fault) {
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
		const { log, contents } = await UpdateLog.open(join(this.#folder, fileOf(name)));
		const doc = new SharedDocument();
		const open: Open = { doc, log, users: 0, entries: contents.entries.length, torn: false };
		const take = (bytes: Uint8Array): void => {
			try {
				doc.take(bytes);
			} catch {
				open.torn = true; // whatever else holds of the document is told all the same
			}
		};
		for (const { bytes } of contents.entries) take(bytes);
		log.onKept = ({ mark, at, bytes }) => {
			open.entries++;
			take(bytes);
			this.#standings.set(name, { mark, at });
		};
		return open;
	}

	/** Without room for it the file stays as it is. */
	async #compact(name: string, open: Open): Promise<void> {
		if (open.entries < MANY || open.torn) return;
		try {
			await open.log.compact(() => open.doc.whole(), this.standing(name).at);
			open.entries = 1;
		} catch {
			// It only takes more room until the next time.
		}
	}
}

const fileOf = (doc: string): string => `${doc.replace(' ', '_')}${ENDING}`;

/** Null for a file that is none of ours. */
function docOf(file: string): string | null {
	if (!file.endsWith(ENDING)) return null;
	const doc = file.slice(0, -ENDING.length).replace('_', ' ');
	return isDocName(doc) ? doc : null;
}
