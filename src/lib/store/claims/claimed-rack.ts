import type { RegisterEdit, SharedDocument } from '../document';
import { type Claim, claimsIn, keptIn, putClaim, putKept, takeOutClaim } from './claim';
import { grossRack } from './gross-rack';
import { type ClaimMarks, netRack, type NetRack } from './net-rack';
import { foldClaims, settledIn, totals } from './settled';

/** The rack that lies in a document with the claims on it, as one job sees it. */
export class ClaimedRack {
	readonly #doc: SharedDocument;
	readonly #job: string | null;
	#claims: readonly Claim[] = [];
	#marks: ClaimMarks = { job: null, kept: new Map(), settled: new Map() };
	#net: NetRack | null = null;

	/** @param job whose the rack is looked at for; null for nobody's */
	constructor(doc: SharedDocument, job: string | null) {
		this.#doc = doc;
		this.#job = job;
		this.refresh();
	}

	get isClaimed(): boolean {
		return this.#claims.length > 0 || this.#marks.settled.size > 0;
	}

	/** In the order of their ids. */
	get claims(): readonly Claim[] {
		return this.#claims;
	}

	/** The document may hold other claims than before. */
	refresh(): void {
		this.#claims = claimsIn(this.#doc);
		const settled = totals(settledIn(this.#doc, this.#claims));
		this.#marks = { job: this.#job, kept: keptIn(this.#doc), settled };
		this.#net = null;
	}

	/** @param gross the stock as it lies in the document */
	net(gross: unknown): NetRack {
		if (this.#net?.gross !== gross) this.#net = null;
		return (this.#net ??= netRack(gross, this.#claims, this.#marks));
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

	put(claims: readonly Claim[]): RegisterEdit[] {
		const edits = claims.flatMap((claim) => putClaim(this.#doc, claim));
		this.refresh();
		return edits;
	}

	takeOut(claims: readonly Claim[]): RegisterEdit[] {
		const edits = claims.flatMap((claim) => takeOutClaim(this.#doc, claim));
		this.refresh();
		return edits;
	}

	/**
	 * Folds the claims of long ago that nobody contends any more.
	 *
	 * @returns lines of the stock that are of no use any more
	 */
	settle(gross: unknown, before: number): readonly unknown[] {
		const gone = foldClaims(this.#doc, this.net(gross), before);
		this.refresh();
		return gone;
	}
}

/** The stock of a job, or of the shop, as it lies in a document. */
export function stockHeld(file: unknown): unknown {
	return typeof file === 'object' && file !== null && 'stock' in file ? file.stock : undefined;
}

/** The stock as it is on the rack for a job, of the stock that lies in a document. */
export function stockOnRack(doc: SharedDocument, gross: unknown, job: string | null): unknown {
	return new ClaimedRack(doc, job).net(gross).stock;
}
