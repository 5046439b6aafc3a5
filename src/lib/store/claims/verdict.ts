import { type Claim, grainsOf, unitOf } from './claim';
import { type Counted, sameAs } from './counted';
import type { ListName } from './lists';

/** Which claims stand, and which lines of the rack wait for a claim that does not. */
export interface RackVerdict {
	/** Claims that have what they claim. */
	readonly won: ReadonlySet<Claim>;
	/** In the order of their ids. */
	readonly lost: readonly Claim[];
	/** Lines of offcuts that fell off what their claim has not got. */
	readonly hidden: ReadonlySet<Counted>;
}

/** What is reckoned with of a rack; figures by unit are in grains. */
export interface Reckoning {
	/** In the order of their ids. */
	readonly claims: readonly Claim[];
	readonly lines: Readonly<Record<ListName, readonly Counted[]>>;
	/** How much was booked of lines that have left the rack since. */
	readonly kept: ReadonlyMap<string, number>;
	/** How much was booked by claims that were settled long ago: those come first. */
	readonly settled: ReadonlyMap<string, number>;
}

/**
 * Who has what. Of the claims on one unit those stand that what is there of it is enough for, one
 * after the other: those that are cut come first, then the earlier ones, then those of the lower
 * id. One that asks for more than is left does not stand; a later one that asks for less may. An
 * offcut that a claim put on the rack is there while that claim stands. A pure function of what it
 * is given, whatever the order it came in; claims that hang on each other in a ring do not stand.
 */
export function verdictOn({ claims, lines, kept, settled }: Reckoning): RackVerdict {
	const won = new Set(claims.filter(({ takes }) => isFree(takes.kind)));
	const contended = claims.filter((claim) => !won.has(claim));
	const rows = [...grouped(contended, ({ takes }) => unitOf(takes))].map(([unit, row]) => ({
		unit,
		row: row.toSorted(byRight),
	}));
	// Each round may bring offcuts whose own claims stand in the next one; claims never fall, for
	// only whole offcuts are brought, and a row of claims on whole ones grows from its beginning.
	for (;;) {
		const hidden = linesWithout(claims, won, lines.offcuts);
		const there = counts(Object.values(lines).flat(), hidden);
		const before = won.size;
		for (const { unit, row } of rows) {
			const room = (there.get(unit) ?? 0) + (kept.get(unit) ?? 0) - (settled.get(unit) ?? 0);
			for (const claim of standing(row, room)) won.add(claim);
		}
		if (won.size === before)
			return { won, lost: claims.filter((claim) => !won.has(claim)), hidden };
	}
}

/**
 * Of the claims on one unit in their order, those that stand where there is so much of it. A claim
 * that brings something stands always, and what it brings is there for all.
 */
export function standing(row: readonly Claim[], room: number): Claim[] {
	let left = row.reduce((sum, claim) => sum + Math.max(0, -grainsOf(claim)), room);
	return row.filter((claim) => {
		const grains = Math.max(0, grainsOf(claim));
		if (grains > left && grainsOf(claim) > 0) return false;
		left -= grains;
		return true;
	});
}

/** What never stood on the rack is nobody else's to claim. */
const isFree = (kind: Claim['takes']['kind']): boolean => kind === 'buy' || kind === 'own';

export function byRight(a: Claim, b: Claim): number {
	if (a.cut !== b.cut) return a.cut ? -1 : 1;
	return a.at - b.at || (a.id < b.id ? -1 : 1);
}

/**
 * The lines that came with claims that do not stand, one for each offcut they yielded. A line that
 * somebody has changed since is somebody's own.
 */
function linesWithout(
	claims: readonly Claim[],
	won: ReadonlySet<Claim>,
	offcuts: readonly Counted[],
): Set<Counted> {
	const free = grouped(offcuts, sameAs);
	const yields = claims.filter((claim) => !won.has(claim)).flatMap((claim) => claim.yields);
	return new Set(yields.flatMap((offcut) => free.get(sameAs(offcut))?.pop() ?? []));
}

/** How much there is of each unit, of those whose lines say a number, in grains. */
export function counts(
	lines: readonly Counted[],
	hidden: ReadonlySet<Counted> = new Set(),
): Map<string, number> {
	const sums = new Map<string, number>();
	for (const line of lines) {
		const there = hidden.has(line) ? 0 : line.count;
		if (there !== null) sums.set(line.unit, (sums.get(line.unit) ?? 0) + there);
	}
	return sums;
}

export function grouped<T>(things: readonly T[], by: (thing: T) => string): Map<string, T[]> {
	const groups = new Map<string, T[]>();
	for (const thing of things) {
		const group = groups.get(by(thing));
		if (group) group.push(thing);
		else groups.set(by(thing), [thing]);
	}
	return groups;
}
