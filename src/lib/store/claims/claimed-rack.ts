import type { RegisterEdit, SharedDocument } from '../document';
import { type Claim, claimsIn, keptIn, putClaim, putKept } from './claim';
import { grossRack } from './gross-rack';
import { netRack, type NetRack } from './net-rack';

/** The rack that lies in a document with the claims on it. */
export class ClaimedRack {
	readonly #doc: SharedDocument;
	#claims: readonly Claim[] = [];
	#kept: ReadonlyMap<string, number> = new Map();
	#net: NetRack | null = null;

	constructor(doc: SharedDocument) {
		this.#doc = doc;
		this.refresh();
	}

	get isClaimed(): boolean {
		return this.#claims.length > 0;
	}

	/** The document may hold other claims than before. */
	refresh(): void {
		this.#claims = claimsIn(this.#doc);
		this.#kept = keptIn(this.#doc);
		this.#net = null;
	}

	/** @param gross the stock as it lies in the document */
	net(gross: unknown): NetRack {
		if (this.#net?.gross !== gross) this.#net = null;
		return (this.#net ??= netRack(gross, this.#claims, this.#kept));
	}

	/**
	 * The stock to be kept where the person made `after` of the stock as it was shown; what more is
	 * to be remembered of the claims is written.
	 */
	gross(gross: unknown, shown: unknown, after: unknown): { stock: unknown; edits: RegisterEdit[] } {
		if (!this.isClaimed) return { stock: after, edits: [] };
		const { stock, kept } = grossRack(this.net(gross), shown, after);
		const edits = putKept(this.#doc, kept);
		if (edits.length > 0) this.refresh();
		return { stock, edits };
	}

	put(claim: Claim): RegisterEdit[] {
		const edits = putClaim(this.#doc, claim);
		this.refresh();
		return edits;
	}
}

/** The stock of a job, or of the shop, as it lies in a document. */
export function stockHeld(file: unknown): unknown {
	return typeof file === 'object' && file !== null && 'stock' in file ? file.stock : undefined;
}

/** The stock as it is on the rack, of the stock that lies in a document. */
export function stockOnRack(doc: SharedDocument, gross: unknown): unknown {
	return new ClaimedRack(doc).net(gross).stock;
}
