import * as Y from 'yjs';

/** One register written: in which map, under which key, what it said and says (null: nothing). */
export type RegisterEdit = readonly [
	map: string,
	key: string,
	from: string | null,
	to: string | null,
];

/** Who wrote: this window, or whatever came in. */
export type Writer = 'here' | 'elsewhere';

/**
 * A document that merges: registers of text in named maps. Of two that wrote the same register
 * without knowing of each other one wins, the same one on every device; everything else is kept.
 * The door through which the library of merging documents enters.
 */
export class SharedDocument {
	readonly #doc = new Y.Doc();

	/**
	 * @param writer a number no other writer of this document goes by; two that write the very same
	 *   under one number have written it once
	 */
	constructor(writer?: number) {
		if (writer !== undefined) this.#doc.clientID = writer;
	}

	get isEmpty(): boolean {
		return this.#doc.store.clients.size === 0;
	}

	/** Something written here hangs on what never came: it is held, and seen when that comes. */
	get hasGap(): boolean {
		const { pendingStructs, pendingDs } = this.#doc.store;
		return pendingStructs !== null || pendingDs !== null;
	}

	/** Null for none, and for what no register holds. */
	register(map: string, key: string): string | null {
		const held = this.#doc.getMap(map).get(key);
		return typeof held === 'string' ? held : null;
	}

	/** Names of the maps that anything was ever written in. */
	maps(): string[] {
		return [...this.#doc.share.keys()];
	}

	keys(map: string): string[] {
		return [...this.#doc.getMap(map).keys()];
	}

	/**
	 * Writes a register; null takes it out. Says what was written, or null when it said so already.
	 * An update of its own, from here, where nothing holds several together.
	 */
	put(map: string, key: string, to: string | null): RegisterEdit | null {
		const from = this.register(map, key);
		if (from === to) return null;
		this.together(() => {
			if (to === null) this.#doc.getMap(map).delete(key);
			else this.#doc.getMap(map).set(key, to);
		});
		return [map, key, from, to];
	}

	/** Everything written within is one update. */
	together<T>(work: () => T): T {
		return this.#doc.transact(work, 'here' satisfies Writer);
	}

	/** Takes in an update. Throws on bytes that are none, and has then taken in nothing. */
	take(update: Uint8Array): void {
		if (!isWellFormed(update)) throw new Error('bytes that no writer of documents wrote');
		Y.applyUpdate(this.#doc, update, 'elsewhere' satisfies Writer);
	}

	/** How far this copy has come, for another copy to compare itself with. */
	standing(): Uint8Array {
		return Y.encodeSnapshot(Y.snapshot(this.#doc));
	}

	/**
	 * What a copy that stands so has not got, as one update; null for nothing. Throws on bytes that
	 * are no standing.
	 */
	lacking(standing: Uint8Array): Uint8Array | null {
		const theirs = Y.decodeSnapshot(standing);
		const update = Y.encodeStateAsUpdate(this.#doc, Y.encodeStateVector(theirs.sv));
		return Y.snapshotContainsUpdate(theirs, update) ? null : update;
	}

	/** Is all of this update here already? Throws on bytes that are none. */
	holds(update: Uint8Array): boolean {
		const { to } = Y.parseUpdateMeta(update);
		for (const [writer, n] of to) if (Y.getState(this.#doc.store, writer) < n) return false;
		return Y.snapshotContainsUpdate(Y.snapshot(this.#doc), update);
	}

	/** The whole document as one update. */
	whole(): Uint8Array {
		return Y.encodeStateAsUpdate(this.#doc);
	}

	/**
	 * Told each update that changes the document, and who wrote it.
	 *
	 * @returns ends the telling
	 */
	onUpdate(tell: (update: Uint8Array, by: Writer) => void): () => void {
		const told = (update: Uint8Array, origin: unknown): void =>
			tell(update, origin === 'here' ? 'here' : 'elsewhere');
		this.#doc.on('update', told);
		return () => this.#doc.off('update', told);
	}

	close(): void {
		this.#doc.destroy();
	}
}

/**
 * Every writer of updates tells what it took out from first to last, each once, and nothing in it
 * is of no length. The library takes in other orders as well, and then copies that had less of the
 * document end up holding something else; of no length it breaks off when half is taken in. Throws
 * on bytes that are no update.
 */
function isWellFormed(update: Uint8Array): boolean {
	const { structs, ds } = Y.decodeUpdate(update);
	if (structs.some(({ length }) => length < 1)) return false;
	return [...ds.clients.values()].every((ranges) =>
		ranges.every(({ clock, len }, i) => {
			const before = ranges[i - 1];
			return len > 0 && (before === undefined || before.clock + before.len <= clock);
		}),
	);
}

/** Several updates as one. */
export function updatesAsOne(updates: readonly Uint8Array[]): Uint8Array {
	return Y.mergeUpdates([...updates]);
}
