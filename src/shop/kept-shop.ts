import type { ShopStanding } from '../lib/store';
import type { ShopDocuments } from './documents';
import type { Links } from './links';

/** A shop in use, wherever it is kept. */
export interface KeptShop {
	readonly id: string;
	/** Others after the shop was away: whoever began with these ends with these. */
	readonly documents: ShopDocuments;
	readonly links: Links;
	/** What is kept cannot be reached for now: nobody can be let in. */
	readonly isAway: boolean;
	/** Told when that begins. */
	onAway: () => void;
	/** Told what came by another server; no update for a document nobody here has open. */
	onElsewhere: (doc: string, standing: ShopStanding, update: Uint8Array | null) => void;
	/** Told when another server has made a link, or withdrawn one. */
	onLinks: () => void;
	/** Says something to the other servers of this shop that is kept nowhere: who is here. */
	sayToOthers(word: string): void;
	/** Told what another server, by its own mark, has said so. */
	onSaid: (server: string, word: string) => void;
	close(): Promise<void>;
}
