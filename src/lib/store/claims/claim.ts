import type { Taking, Yielded } from '../../layout';
import type { RegisterEdit, SharedDocument } from '../document';
import { LISTS } from './lists';

/**
 * A booking as it stands beside the rack: one claim on one sheet or offcut, on a length of a roll
 * or on so much of a sundry. The rack itself is not counted down; what is on it is worked out from
 * the claims, so that two that book the same sheet without knowing of each other are both seen.
 */
export interface Claim extends Taking {
	readonly id: string;
	/** Mark of the job that claims, and its name in words. */
	readonly job: string;
	readonly by: string;
	/** Milliseconds since 1970, by the clock of whoever booked. */
	readonly at: number;
	/** Cut, or only held for what is printed: the job itself goes on counting on it. */
	readonly cut: boolean;
}

/** The map of the claims in a document, and that of what was booked of lines that have left it. */
const CLAIMS = 'claims';
const KEPT = 'kept';

/** All claims on one unit contend for it. */
export const unitOf = ({ kind, id }: Pick<Claim['takes'], 'kind' | 'id'>): string =>
	`${kind}/${id}`;

/** Is less than one of it claimed: a length, a share of a pack? */
export const isDivided = (unit: string): boolean => /^(roll|sundry)\//.test(unit);

/** How much of its unit a claim takes, in the grains of its list. */
export function grainsOf({ takes }: Pick<Claim, 'takes'>): number {
	switch (takes.kind) {
		case 'roll':
			return Math.round(takes.amount * LISTS.rolls.grains);
		case 'sundry':
			return Math.round(takes.amount * LISTS.sundries.grains);
		default:
			return 1;
	}
}

/** A claim stands whole in a register of its own: the claims of two devices never touch. */
export function putClaim(doc: SharedDocument, claim: Claim): RegisterEdit[] {
	const edit = doc.put(CLAIMS, keyOf(claim), JSON.stringify(claim));
	return edit ? [edit] : [];
}

export function takeOutClaim(doc: SharedDocument, claim: Claim): RegisterEdit[] {
	const edit = doc.put(CLAIMS, keyOf(claim), null);
	return edit ? [edit] : [];
}

/** The claim that was put by this edit; null for an edit of something else. */
export function putBy([map, key, , to]: RegisterEdit): Claim | null {
	const claim = map === CLAIMS ? read(to) : null;
	return claim && keyOf(claim) === key ? claim : null;
}

export const isThere = (doc: SharedDocument, claim: Claim): boolean =>
	doc.register(CLAIMS, keyOf(claim)) !== null;

const keyOf = ({ takes, id }: Claim): string => `${unitOf(takes)}|${id}`;

/** The claims of a document in the order of their ids; what is none is passed over. */
export function claimsIn(doc: SharedDocument): Claim[] {
	const claims = doc.keys(CLAIMS).flatMap((key) => {
		const claim = read(doc.register(CLAIMS, key));
		return claim && keyOf(claim) === key ? [claim] : [];
	});
	return claims.sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** How much of a unit was booked when its line left the rack, or lost its count, in grains. */
export function keptIn(doc: SharedDocument): Map<string, number> {
	const counts = doc.keys(KEPT).map((unit) => [unit, Number(doc.register(KEPT, unit))] as const);
	return new Map(counts.filter(([, count]) => Number.isSafeInteger(count) && count !== 0));
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

const KINDS: ReadonlySet<string> = new Set<Claim['takes']['kind']>([
	...(['owned', 'offcut', 'buy', 'own'] as const),
	...(['roll', 'sundry'] as const),
]);
/** Far more of anything than a shop sees; sums of grains stay exact. */
const MOST = 1e7;

/** What comes in from elsewhere may hold anything. */
function isClaim(claim: Claim): boolean {
	return (
		[claim.id, claim.job, claim.by].every((text) => typeof text === 'string') &&
		Number.isFinite(claim.at) &&
		typeof claim.cut === 'boolean' &&
		KINDS.has(claim.takes.kind) &&
		isTaken(claim.takes) &&
		Array.isArray(claim.yields) &&
		claim.yields.every(isPiece)
	);
}

function isTaken(takes: Claim['takes']): boolean {
	const isMeasured = isDivided(unitOf(takes));
	if (!('amount' in takes)) return !isMeasured && isPiece(takes);
	return isMeasured && typeof takes.id === 'string' && Math.abs(takes.amount) < MOST;
}

function isPiece({ id, material, length, width }: Yielded): boolean {
	return (
		typeof id === 'string' &&
		typeof material === 'string' &&
		Number.isFinite(length) &&
		Number.isFinite(width)
	);
}
