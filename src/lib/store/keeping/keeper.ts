import { SharedDocument, updatesAsOne } from '../document';
import type { Beside, Store, StoredStep, StoredUpdate } from '../database';
import { Pause, USUAL_WAITS, waitAfter, type Waits, within } from './waiting';

/** `failed`: what was typed is in memory only, and is tried again. */
export type SaveState = 'saved' | 'saving' | 'failed';

/** Updates of one document in the store before they are made into one. */
const MANY = 200;

/** What a keeper is told besides its document. */
export interface Keeping {
	/** The plain data that goes beside the document, without its steps. */
	beside: () => Beside;
	/** Told each change of how things stand. */
	tell: (saving: SaveState) => void;
	/**
	 * Told what this window wrote, and whether the store has it: other windows are told in turn.
	 */
	wrote: (update: Uint8Array, kept: boolean) => void;
	/** Told once the document itself is here. */
	came: () => void;
	readonly waits: Waits;
}

/**
 * Keeps one document in the store: writes what the store has not got, in one go for all that was
 * typed while the last go was under way, and tries again, ever more slowly, until it is written.
 * Trying again can do no harm: an update that comes twice has come once.
 */
export class Keeper {
	readonly doc = new SharedDocument();
	readonly keeping: Keeping = {
		beside: () => ({}),
		tell: () => undefined,
		wrote: () => undefined,
		came: () => undefined,
		waits: USUAL_WAITS,
	};
	saving: SaveState = 'saved';
	/** Why the last go failed. */
	fault: unknown = null;
	readonly name: string;
	readonly #store: Store;
	readonly #pause = new Pause();
	#seen = 0;
	#loaded = false;
	#unkept: Uint8Array[] = [];
	#steps = new Map<number, StoredStep | null>();
	#owner = '';
	#changed = false;
	#inStore = 0;
	/** Something in the store cannot be read: it is left there as it is. */
	#torn = false;
	#failures = 0;
	#held = false;
	#running: Promise<void> | null = null;
	isClosed = false;
	#settling: (() => void)[] = [];

	constructor(store: Store, name: string, keeping: Partial<Keeping> = {}) {
		this.name = name;
		this.#store = store;
		Object.assign(this.keeping, keeping);
		this.doc.onUpdate((update, by) => {
			if (by === 'here') this.#keep([update]);
		});
	}

	/** Is the document itself here, or only what was typed since? */
	get loaded(): boolean {
		return this.#loaded;
	}

	/** Closing loses nothing: all is kept, or it was never had and never written to. */
	get isKept(): boolean {
		return this.saving === 'saved' || (!this.#running && !this.#waiting);
	}

	/** Number of the last update of the store that is in the document. */
	get seen(): number {
		return this.#seen;
	}

	/** Fetches the document. Rejects when the store does not answer; what is here stays. */
	async load(): Promise<void> {
		try {
			await this.catchUp();
			this.#came();
			if (!this.#running) this.#tell('saved');
		} catch (fault) {
			// What was written meanwhile has brought the document along: all is well.
			if (this.loaded) return;
			this.fault = fault;
			this.#tell('failed');
			throw fault;
		}
	}

	/** Takes in what other windows have written. True when there was anything. */
	async catchUp(): Promise<boolean> {
		const asked = this.#store.updatesAfter(this.name, this.#seen);
		const updates = await within(this.keeping.waits.answer, asked);
		if (!this.isClosed) this.#take(updates);
		return updates.length > 0;
	}

	/** Takes in what another window told of; what that one could not keep is kept from here. */
	hear(update: Uint8Array, kept: boolean): void {
		this.doc.take(update);
		if (!kept) this.#keep([update]);
	}

	/** Takes in an update that the store may not have, and keeps it. */
	takeIn(update: Uint8Array): void {
		this.doc.take(update);
		this.#keep([update]);
	}

	/** Writes these steps with the next go; null takes one out. */
	keepSteps(owner: string, steps: ReadonlyMap<number, StoredStep | null>): void {
		this.#owner = owner;
		for (const [n, step] of steps) this.#steps.set(n, step);
		this.touch();
	}

	/** The plain data beside the document has changed, or the store may have lost it. */
	touch(): void {
		this.#changed = true;
		this.#keep([]);
	}

	/** What is in memory only, as one update; null for nothing. */
	unkept(): Uint8Array | null {
		return this.#unkept.length === 0 ? null : updatesAsOne(this.#unkept);
	}

	/** Writes nothing yet: a document and the plain record of it go into the store together. */
	hold(): void {
		this.#held = true;
	}

	release(): void {
		this.#held = false;
		this.#keep([]);
	}

	/** Tries again now, if anything is waiting. */
	hurry(): void {
		this.#pause.end();
	}

	/** Resolves when all is written, or when a go has failed. */
	settled(): Promise<void> {
		if (!this.#running || this.saving === 'failed') return Promise.resolve();
		return new Promise((resolve) => this.#settling.push(resolve));
	}

	/** Only of a document that is kept: what is not written yet is let go. */
	close(): void {
		this.isClosed = true;
		this.#pause.end();
		this.doc.close();
	}

	#keep(updates: readonly Uint8Array[]): void {
		this.#unkept.push(...updates);
		if (this.saving === 'failed') this.hurry();
		if (!this.#held && this.#waiting) this.#running ??= this.#run();
	}

	get #waiting(): boolean {
		return !this.isClosed && (this.#changed || this.#unkept.length > 0 || this.#steps.size > 0);
	}

	async #run(): Promise<void> {
		if (this.saving === 'saved') this.#tell('saving');
		while (this.#waiting) {
			try {
				await this.#write();
				this.#failures = 0;
				if (this.#waiting) this.#tell('saving');
			} catch (fault) {
				this.fault = fault;
				this.#failures++;
				this.#tell('failed');
				const bytes = this.#failures === 1 ? this.unkept() : null;
				if (bytes) this.keeping.wrote(bytes, false);
				await this.#pause.wait(waitAfter(this.keeping.waits, this.#failures));
			}
		}
		this.#running = null;
		this.fault = null;
		this.#tell('saved');
		await this.#compact();
	}

	/** One go. What it took along is taken off the list only when the store has said so. */
	async #write(): Promise<void> {
		const steps = new Map(this.#steps);
		let taken = 0;
		let bytes: Uint8Array | null = null;
		this.#changed = false;
		const addition = {
			doc: this.name,
			seen: this.#seen,
			take: (updates: readonly StoredUpdate[]) => this.#take(updates),
			unkept: (lost: boolean) => {
				taken = this.#unkept.length;
				bytes = lost ? this.doc.whole() : this.unkept();
				return bytes;
			},
			beside: () => ({
				...this.keeping.beside(),
				...(steps.size > 0 ? { steps: { owner: this.#owner, by: steps } } : {}),
			}),
		};
		try {
			const last = await within(this.keeping.waits.answer, this.#store.append(addition));
			this.#seen = last;
			this.#came();
		} catch (fault) {
			this.#changed = true;
			throw fault;
		}
		this.#unkept.splice(0, taken);
		for (const [n, step] of steps) if (this.#steps.get(n) === step) this.#steps.delete(n);
		this.#inStore++;
		if (bytes) this.keeping.wrote(bytes, true);
	}

	#came(): void {
		if (this.#loaded) return;
		this.#loaded = true;
		this.keeping.came();
	}

	/** An update that cannot be read is left where it is; the rest is taken in. */
	#take(updates: readonly StoredUpdate[]): void {
		for (const { n, bytes } of updates) {
			this.#seen = Math.max(this.#seen, n);
			this.#inStore++;
			try {
				this.doc.take(bytes);
			} catch {
				this.#torn = true; // whatever else holds of the document is shown all the same
			}
		}
	}

	async #compact(): Promise<void> {
		if (this.#inStore < MANY || this.isClosed || this.#torn) return;
		this.#inStore = 0;
		try {
			const asked = this.#store.compact(this.name, this.#seen, this.doc.whole());
			this.#seen = await within(this.keeping.waits.answer, asked);
		} catch {
			// It only takes more room until the next time.
		}
	}

	#tell(saving: SaveState): void {
		if (saving !== 'saving') for (const settle of this.#settling.splice(0)) settle();
		if (saving === this.saving) return;
		this.saving = saving;
		this.keeping.tell(saving);
	}
}
