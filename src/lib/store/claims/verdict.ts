import { type Claim, unitOf } from './claim';
import { type Counted, sameAs } from './counted';

/** Which claims stand, and which lines of the rack wait for a claim that does not. */
export interface RackVerdict {
	/** Claims that have what they claim. */
	readonly won: ReadonlySet<Claim>;
	/** In the order of their ids. */
	readonly lost: readonly Claim[];
	/** Lines of offcuts that fell off what their claim has not got. */
	readonly hidden: ReadonlySet<Counted>;
}

/**
 * Who has what. Of the claims on one unit the first so many stand as there are of it: those that
 * are cut come first, then the earlier ones, then those of the lower id. An offcut that a claim put
 * on the rack is there while that claim stands. A pure function of what it is given, whatever the
 * order it came in; claims that hang on each other in a ring do not stand.
 *
 * @param claims in the order of their ids
 * @param kept how many were booked of lines that have left the rack since, by unit
 */
export function verdictOn(
	claims: readonly Claim[],
	lines: { readonly sheets: readonly Counted[]; readonly offcuts: readonly Counted[] },
	kept: ReadonlyMap<string, number>,
): RackVerdict {
	const won = new Set(claims.filter(({ takes }) => isFree(takes.kind)));
	const contended = claims.filter((claim) => !won.has(claim));
	const rows = [...grouped(contended, ({ takes }) => unitOf(takes))].map(([unit, row]) => ({
		unit,
		row: row.toSorted(byRight),
	}));
	// Each round may bring offcuts whose own claims stand in the next one; claims never fall.
	for (;;) {
		const hidden = linesWithout(claims, won, lines.offcuts);
		const there = counts([...lines.sheets, ...lines.offcuts], hidden);
		const before = won.size;
		for (const { unit, row } of rows)
			for (const claim of row.slice(0, (there.get(unit) ?? 0) + (kept.get(unit) ?? 0)))
				won.add(claim);
		if (won.size === before)
			return { won, lost: claims.filter((claim) => !won.has(claim)), hidden };
	}
}

/** What never stood on the rack is nobody else's to claim. */
const isFree = (kind: Claim['takes']['kind']): boolean => kind === 'buy' || kind === 'own';

function byRight(a: Claim, b: Claim): number {
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

/** How many there are of each unit, of those whose lines say a number. */
function counts(lines: readonly Counted[], hidden: ReadonlySet<Counted>): Map<string, number> {
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
