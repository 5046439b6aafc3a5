import type { Yielded } from '../../layout';
import type { RegisterEdit, SharedDocument } from '../document';
import { type Claim, grainsOf, isDivided, isThere, putBy, takeOutClaim, unitOf } from './claim';
import type { NetLine, NetRack } from './net-rack';
import { byRight } from './verdict';

/*
 * Claims of long ago are folded, so that their list does not grow for ever: what is left of one is
 * its id and what it took, in a tally of its unit. Two devices that fold at the same time, each
 * knowing other claims, write two tallies under two marks; what was taken is what the ids of all of
 * them together took, so that none is counted twice and none is lost.
 */

/** Tallies, and what of them was taken back since. */
const SETTLED = 'settled claims';
const BACK = 'settled claims taken back';

/** Of each unit, how much each claim took that is settled, in grains. */
export type Tallies = ReadonlyMap<string, ReadonlyMap<string, number>>;

/** Those claims that are there themselves are counted there. */
export function settledIn(doc: SharedDocument, claims: readonly Claim[]): Tallies {
	const there = new Set(claims.map((claim) => nameOf(unitOf(claim.takes), claim.id)));
	const tallies = new Map<string, Map<string, number>>();
	for (const key of doc.keys(SETTLED)) {
		const unit = unitIn(key);
		for (const [id, grains] of tallyOf(doc.register(SETTLED, key))) {
			const name = nameOf(unit, id);
			if (there.has(name) || doc.register(BACK, name) !== null) continue;
			tallies.set(unit, (tallies.get(unit) ?? new Map<string, number>()).set(id, grains));
		}
	}
	return tallies;
}

export function totals(tallies: Tallies): Map<string, number> {
	const sum = (tally: ReadonlyMap<string, number>): number =>
		[...tally.values()].reduce((all, grains) => all + grains, 0);
	return new Map([...tallies].map(([unit, tally]) => [unit, sum(tally)]));
}

/**
 * Folds the claims made before this moment that stand, that nothing comes before and that no line
 * hangs on. Who has what, and what is on the rack, is as before.
 *
 * @param before milliseconds since 1970
 * @returns the lines of offcuts that are used up, for nobody any more
 */
export function foldClaims(doc: SharedDocument, rack: NetRack, before: number): unknown[] {
	const claims = [...rack.onUnit.values()].flat();
	const brought = new Set(claims.flatMap(({ yields }) => yields.map(({ id }) => id)));
	const tallies = settledIn(doc, claims);
	return doc.together(() =>
		[...rack.onUnit].flatMap(([unit, row]) => {
			const old = firstOf(rack, row, before);
			if (old.length === 0) return [];
			const [line, another] = linesOf(rack, unit);
			if (unit.startsWith('offcut/')) {
				const isUsedUp = line?.kept.count === 1 && line.taken === 1 && row.length === 1;
				if (!isUsedUp || another || brought.has(line.kept.id as string)) return [];
				takeOut(doc, old);
				return [line.kept.line];
			}
			if (unit.startsWith('owned/') || isDivided(unit)) {
				if (another) return [];
				putTally(doc, unit, tallies.get(unit), old);
			}
			takeOut(doc, old);
			return [];
		}),
	);
}

function takeOut(doc: SharedDocument, claims: readonly Claim[]): void {
	for (const claim of claims) takeOutClaim(doc, claim);
}

function linesOf({ lines }: NetRack, unit: string): NetLine[] {
	return Object.values(lines)
		.flat()
		.filter(({ kept }) => kept.unit === unit);
}

/** In the order in which they stand, up to the first that is not old, not cut or has nothing. */
function firstOf({ verdict }: NetRack, row: readonly Claim[], before: number): Claim[] {
	const inOrder = row.toSorted(byRight);
	const end = inOrder.findIndex((c) => !c.cut || c.at >= before || !verdict.won.has(c));
	return end < 0 ? inOrder : inOrder.slice(0, end);
}

/** One tally in place of those there are; under a mark of what it says. */
function putTally(
	doc: SharedDocument,
	unit: string,
	tally: ReadonlyMap<string, number> = new Map(),
	claims: readonly Claim[],
): void {
	const all = [...tally, ...claims.map((claim) => [claim.id, grainsOf(claim)] as const)];
	const text = JSON.stringify(all.sort(([a], [b]) => (a < b ? -1 : 1)));
	for (const key of doc.keys(SETTLED)) if (unitIn(key) === unit) doc.put(SETTLED, key, null);
	doc.put(SETTLED, `${unit}|${markOf(text)}`, text);
	for (const { id } of claims) doc.put(BACK, nameOf(unit, id), null);
}

/**
 * A booking that was settled is taken back all the same: what it took is there again. One that is
 * old may have been settled on another device that nobody has heard of yet, and is marked too.
 *
 * @param edits those of the step that is taken back, before they are
 * @param old what was made before this moment, milliseconds since 1970
 * @returns what was written, and the offcuts that have to be put on the rack again
 */
export function unsettle(
	doc: SharedDocument,
	edits: readonly RegisterEdit[],
	old: number,
): { readonly edits: RegisterEdit[]; readonly offcuts: Yielded[] } {
	const taken = edits
		.flatMap((edit) => putBy(edit) ?? [])
		.filter((claim) => claim.cut && (claim.at < old || !isThere(doc, claim)));
	const offcuts = taken.flatMap((claim): Yielded[] => {
		if (claim.takes.kind !== 'offcut' || isThere(doc, claim)) return [];
		const { id, material, length, width } = claim.takes;
		return [{ id, material, length, width }];
	});
	const made = taken
		.filter(({ takes }) => takes.kind === 'owned' || 'amount' in takes)
		.flatMap(({ id, takes }): RegisterEdit[] => {
			const edit = doc.put(BACK, nameOf(unitOf(takes), id), 'true');
			return edit ? [edit] : [];
		});
	return { edits: made, offcuts };
}

/** Units hold no such sign: they are marks of the rack. */
const unitIn = (key: string): string => key.slice(0, key.lastIndexOf('|'));
const nameOf = (unit: string, id: string): string => `${unit}|${id}`;

/** What comes in from elsewhere may hold anything. */
function tallyOf(text: string | null): Map<string, number> {
	try {
		const rows = JSON.parse(text ?? '[]') as unknown;
		if (!Array.isArray(rows)) return new Map();
		return new Map(
			rows.filter(
				(row): row is [string, number] =>
					Array.isArray(row) && typeof row[0] === 'string' && Number.isSafeInteger(row[1]),
			),
		);
	} catch {
		return new Map();
	}
}

/** Two numbers of 32 bits from all letters: no two tallies of one unit are alike by chance. */
function markOf(text: string): string {
	let [a, b] = [0x811c9dc5, 0x9e3779b9];
	for (let i = 0; i < text.length; i++) {
		a = Math.imul(a ^ text.charCodeAt(i), 0x01000193);
		b = Math.imul(b ^ text.charCodeAt(i), 0x85ebca6b) + (b >>> 13);
	}
	return `${(a >>> 0).toString(36)}-${(b >>> 0).toString(36)}-${text.length.toString(36)}`;
}
