import type { ShopStanding } from '../lib/store';

/*
 * Where a shop is kept, as far as whoever answers its devices knows: a folder of this machine, or
 * a store that several servers share. All that is said to be kept is kept there first.
 */

/** The mark of a document nothing has gone into. */
export const NO_MARK = '0'.repeat(16);

/** An update as it is kept. */
export interface LogEntry extends ShopStanding {
	readonly bytes: Uint8Array;
}

/** The updates of one document, one after the other, open for adding to them. */
export interface DocumentLog {
	/** Bytes. */
	readonly size: number;
	/** Is it worth making one of its entries? */
	readonly isLong: boolean;
	/** Told of each entry as soon as it is kept, before whoever brought it. */
	onKept: (entry: LogEntry, by: 'here' | 'another server') => void;
	/** Resolves when it is kept; rejects when it is not, and then nothing of it stays. */
	append(bytes: Uint8Array): Promise<LogEntry>;
	/**
	 * One entry in the place of all, which tells the same; whole or not at all.
	 *
	 * @param whole asked when nothing is under way: all that was told so far
	 */
	compact(whole: () => Uint8Array): Promise<void>;
	close(): Promise<void>;
}

/** The logs of all documents of a shop. */
export interface DocumentLogs {
	standings(): Promise<ReadonlyMap<string, ShopStanding>>;
	/** Opens a log, or makes it. */
	open(doc: string): Promise<{ readonly log: DocumentLog; readonly entries: readonly LogEntry[] }>;
	/** Told of a document another server has changed, whether it is open here or not. */
	onMoved: (doc: string, standing: ShopStanding) => void;
}

/** A value kept whole: the list of links. */
export interface KeptValue {
	/** Undefined for none. */
	read(): Promise<unknown>;
	/** False when another server has written it since it was read: read it, and try again. */
	write(value: unknown): Promise<boolean>;
	/** Told when another server has written it. */
	onChanged: () => void;
}

/** What is kept cannot be reached: whether it holds an update, or who may come in, is not known. */
export class StoreAway extends Error {
	override readonly name = 'StoreAway';
}

/** The place cannot be worked with: said in words, with what would be right. */
export class PlaceRefused extends Error {
	override readonly name = 'PlaceRefused';
}
