import type { ShopDocuments } from './documents';
import type { Links } from './links';

/** A shop in use, wherever it is kept. */
export interface KeptShop {
	readonly id: string;
	readonly documents: ShopDocuments;
	readonly links: Links;
	/** What is kept cannot be reached for now: nobody can be let in. */
	readonly isAway: boolean;
	/** Told when that begins. */
	onAway: () => void;
	close(): Promise<void>;
}
