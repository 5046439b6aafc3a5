import type { TakenStock, Yielded } from '../../layout';
import type { RegisterEdit, SharedDocument } from '../document';

/**
 * A booking as it stands beside the rack: one claim on one sheet or offcut. The rack itself is not
 * counted down; what is on it is worked out from the claims, so that two that book the same sheet
 * without knowing of each other are both seen.
 */
export interface Claim {
	readonly id: string;
	/** Mark of the job that claims, and its name in words. */
	readonly job: string;
	readonly by: string;
	/** Milliseconds since 1970, by the clock of whoever booked. */
	readonly at: number;
	/** Cut, or only meant to be. */
	readonly cut: boolean;
	readonly takes: TakenStock;
	readonly yields: readonly Yielded[];
}

/** The map of the claims in a document, and that of what was booked of lines that have left it. */
const CLAIMS = 'claims';
const KEPT = 'kept';

/** All claims on one unit contend for it. */
export const unitOf = ({ kind, id }: Pick<TakenStock, 'kind' | 'id'>): string => `${kind}/${id}`;

/** A claim stands whole in a register of its own: the claims of two devices never touch. */
export function putClaim(doc: SharedDocument, claim: Claim): RegisterEdit[] {
	const edit = doc.put(CLAIMS, keyOf(claim), JSON.stringify(claim));
	return edit ? [edit] : [];
}

const keyOf = ({ takes, id }: Claim): string => `${unitOf(takes)}|${id}`;

/** The claims of a document in the order of their ids; what is none is passed over. */
export function claimsIn(doc: SharedDocument): Claim[] {
	const claims = doc.keys(CLAIMS).flatMap((key) => {
		const claim = read(doc.register(CLAIMS, key));
		return claim && keyOf(claim) === key ? [claim] : [];
	});
	return claims.sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** How many of a unit were booked when their line left the rack, or lost its count. */
export function keptIn(doc: SharedDocument): Map<string, number> {
	const counts = doc.keys(KEPT).map((unit) => [unit, Number(doc.register(KEPT, unit))] as const);
	return new Map(counts.filter(([, count]) => Number.isSafeInteger(count) && count > 0));
}

export function putKept(doc: SharedDocument, kept: ReadonlyMap<string, number>): RegisterEdit[] {
	return [...kept].flatMap(([unit, count]) => {
		const edit = doc.put(KEPT, unit, String(count));
		return edit ? [edit] : [];
	});
}

function read(text: string | null): Claim | null {
	try {
		const claim = JSON.parse(text ?? '') as Claim;
		return isClaim(claim) ? claim : null;
	} catch {
		return null;
	}
}

const KINDS: ReadonlySet<string> = new Set<TakenStock['kind']>(['owned', 'offcut', 'buy', 'own']);

/** What comes in from elsewhere may hold anything. */
function isClaim(claim: Claim): boolean {
	return (
		[claim.id, claim.job, claim.by].every((text) => typeof text === 'string') &&
		Number.isFinite(claim.at) &&
		typeof claim.cut === 'boolean' &&
		KINDS.has(claim.takes.kind) &&
		isPiece(claim.takes) &&
		Array.isArray(claim.yields) &&
		claim.yields.every(isPiece)
	);
}

function isPiece({ id, material, length, width }: Yielded): boolean {
	return (
		typeof id === 'string' &&
		typeof material === 'string' &&
		Number.isFinite(length) &&
		Number.isFinite(width)
	);
}
