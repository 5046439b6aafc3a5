import type { Store } from '../database';
import { Keeper, type SaveState } from './keeper';
import { faultWords } from './fault-words';
import { USUAL_WAITS, type Waits } from './waiting';
import { Windows, type WindowWord } from './windows';

/** Somebody who is told of the documents that come into use, and go out of it. */
export interface Watcher {
	/** The document itself is here. */
	came(keeper: Keeper): void;
	left(doc: string): void;
}

/** The documents in use, each with its keeper, and the other windows that use them too. */
export class Shelf {
	readonly store: Store;
	/** Marks what this window does as its own. */
	readonly writer: string;
	/** Told when something about what is kept has changed. */
	onSaving: () => void = () => undefined;
	/** Told when another window has put other things in place of all. */
	onReplaced: () => void = () => undefined;
	readonly #waits: Waits;
	readonly #keepers = new Map<string, Keeper>();
	/** What a job in hand needs; others are borrowed for a while. */
	readonly #wanted = new Set<string>();
	readonly #borrowed = new Map<string, number>();
	readonly #windows: Windows;
	#watcher: Watcher | null = null;
	#closed = false;

	constructor(
		store: Store,
		{ writer, waits = USUAL_WAITS, channel }: { writer: string; waits?: Waits; channel?: string },
	) {
		this.store = store;
		this.writer = writer;
		this.#waits = waits;
		this.#windows = new Windows((word) => this.#hear(word), channel);
		store.onClosed(() => this.#closedUnderUs());
	}

	get waits(): Waits {
		return this.#waits;
	}

	/** The keeper of a document, the same each time as long as it is in use or not yet kept. */
	keeper(doc: string): Keeper {
		this.#wanted.add(doc);
		return this.#keeperOf(doc);
	}

	/** Is the document in use already? */
	has(doc: string): boolean {
		return this.#keepers.has(doc);
	}

	/** The keeper of a document for a while, whatever job is in hand. */
	borrow(doc: string): Keeper {
		this.#borrowed.set(doc, (this.#borrowed.get(doc) ?? 0) + 1);
		return this.#keeperOf(doc);
	}

	giveBack(doc: string): void {
		const left = (this.#borrowed.get(doc) ?? 1) - 1;
		if (left > 0) this.#borrowed.set(doc, left);
		else this.#borrowed.delete(doc);
		this.#letGo(doc);
	}

	#keeperOf(doc: string): Keeper {
		const known = this.#keepers.get(doc);
		if (known) return known;
		const keeper: Keeper = new Keeper(this.store, doc, {
			waits: this.#waits,
			tell: () => this.onSaving(),
			wrote: (update, kept) => this.#windows.tell({ kind: 'wrote', doc, update, kept }),
			came: () => this.#watcher?.came(keeper),
		});
		this.#keepers.set(doc, keeper);
		return keeper;
	}

	/** One who is told of the documents in use, those that are so already among them. */
	watch(watcher: Watcher): void {
		this.#watcher = watcher;
		for (const keeper of this.#keepers.values()) if (keeper.loaded) watcher.came(keeper);
	}

	/** Lets go of all documents but these; what is not kept yet stays, and is tried on. */
	keepOnly(docs: ReadonlySet<string>): void {
		for (const doc of this.#wanted) if (!docs.has(doc)) this.#wanted.delete(doc);
		for (const doc of this.#keepers.keys()) this.#letGo(doc);
	}

	#letGo(doc: string): void {
		const keeper = this.#keepers.get(doc);
		if (this.#wanted.has(doc) || this.#borrowed.has(doc) || !keeper?.isKept) return;
		this.#close(keeper);
		this.#keepers.delete(doc);
	}

	#close(keeper: Keeper): void {
		keeper.close();
		this.#watcher?.left(keeper.name);
	}

	saving(doc: string): SaveState {
		return this.#keepers.get(doc)?.saving ?? 'saved';
	}

	/** What of a document is in memory only, as one update; null for nothing. */
	unkept(doc: string): Uint8Array | null {
		return this.#keepers.get(doc)?.unkept() ?? null;
	}

	/** The documents that the store has not got as they are. */
	unsaved(): string[] {
		return [...this.#keepers].filter(([, { saving }]) => saving !== 'saved').map(([doc]) => doc);
	}

	/** In words, why the last go failed; null when none did. */
	fault(): string | null {
		const failed = [...this.#keepers.values()].find(({ saving }) => saving === 'failed');
		return failed ? faultWords(failed.fault) : null;
	}

	/** There may be room, or an answer, again: try now. */
	hurry(): void {
		for (const keeper of this.#keepers.values()) keeper.hurry();
	}

	/** Takes in what was written while this window was away. */
	async catchUp(): Promise<void> {
		await Promise.allSettled([...this.#keepers.values()].map((keeper) => keeper.catchUp()));
	}

	async settled(): Promise<void> {
		await Promise.all([...this.#keepers.values()].map((keeper) => keeper.settled()));
	}

	/** Other windows fetch everything anew. */
	tellReplaced(): void {
		this.#windows.tell({ kind: 'replaced' });
	}

	/** Forgets every document without writing it: the store holds others under their names now. */
	forget(): void {
		for (const keeper of this.#keepers.values()) this.#close(keeper);
		this.#keepers.clear();
		this.#wanted.clear();
	}

	close(): void {
		this.#closed = true;
		this.forget();
		this.#windows.close();
	}

	#hear(word: WindowWord): void {
		if (this.#closed) return;
		if (word.kind === 'replaced') {
			this.forget();
			this.onReplaced();
		}
		if (word.kind !== 'wrote') return;
		try {
			this.#keepers.get(word.doc)?.hear(word.update, word.kept);
		} catch {
			// From a window of another version: what it wrote is fetched from the store.
		}
	}

	/**
	 * The database was closed, perhaps deleted, under the page. A look at it once that is over puts
	 * back what is in memory: a document that the store has lost is written whole.
	 */
	#closedUnderUs(): void {
		setTimeout(() => {
			if (this.#closed) return;
			for (const keeper of this.#keepers.values()) keeper.touch();
		}, this.#waits.first);
	}
}
