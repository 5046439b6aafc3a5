import { type Claim, grainsOf, isDivided, unitOf } from './claim';
import { type Counted, countedLines, sameAs, withMore } from './counted';
import { LIST_NAMES, type ListName } from './lists';
import { grouped, type RackVerdict, verdictOn } from './verdict';

/** A line of the stock as it is kept, and as it is on the rack. */
export interface NetLine {
	readonly kept: Counted;
	/** How much of it is booked, in grains; less than nothing where bookings brought more. */
	readonly taken: number;
	/** Null for what is not on the rack now. */
	readonly net: unknown;
}

/** The rack as it is kept, the claims on it, and what that leaves on it. */
export interface NetRack {
	/** The stock as the person sees it and as plans draw on it. */
	readonly stock: unknown;
	/** The stock as it is kept: owned before any claim. */
	readonly gross: unknown;
	readonly lines: Readonly<Record<ListName, readonly NetLine[]>>;
	readonly verdict: RackVerdict;
	/** All claims on a unit, standing or not. */
	readonly onUnit: ReadonlyMap<string, readonly Claim[]>;
	readonly marks: ClaimMarks;
}

/** What is known of a rack beside its lines and the claims on them; figures are in grains. */
export interface ClaimMarks {
	/** The job that looks at the rack: what is held for it is there for it. Null for nobody's. */
	readonly job: string | null;
	/** How much was booked of lines that have left the rack since, by unit. */
	readonly kept: ReadonlyMap<string, number>;
	/** How much was booked by claims settled long ago, by unit. */
	readonly settled: ReadonlyMap<string, number>;
}

/** Held for the job that looks at the rack, and not cut: it goes on counting on it. */
export const isOwn = (claim: Claim, { job }: Pick<ClaimMarks, 'job'>): boolean =>
	!claim.cut && claim.job === job;

/** What is on the rack: what is owned less the claims that stand, and the offcuts those yielded. */
export function netRack(gross: unknown, claims: readonly Claim[], marks: ClaimMarks): NetRack {
	const counted = byList((name) => countedLines(gross, name));
	const verdict = verdictOn({ claims, lines: counted, ...marks });
	const onUnit = grouped(claims, ({ takes }) => unitOf(takes));
	const others = [...verdict.won].filter((claim) => !isOwn(claim, marks));
	const taking = grouped(others, ({ takes }) => unitOf(takes));
	const lines = byList((name) => {
		const open = counted[name].filter((line) => line.count !== null && !verdict.hidden.has(line));
		const taken = takenFrom(open, taking, marks);
		return counted[name].map((line) => netLine(line, name, taken.get(line) ?? 0, verdict));
	});
	return { stock: netStock(gross, lines), gross, lines, verdict, onUnit, marks };
}

function byList<T>(of: (name: ListName) => T): Readonly<Record<ListName, T>> {
	return Object.fromEntries(LIST_NAMES.map((name) => [name, of(name)])) as Record<ListName, T>;
}

/** How much is taken from each line, unit by unit. */
function takenFrom(
	lines: readonly Counted[],
	taking: ReadonlyMap<string, readonly Claim[]>,
	{ kept, settled }: ClaimMarks,
): Map<Counted, number> {
	const taken = new Map<Counted, number>();
	for (const [unit, row] of grouped(lines, (line) => line.unit)) {
		const claims = taking.get(unit) ?? [];
		const before = (settled.get(unit) ?? 0) - (kept.get(unit) ?? 0);
		if (isDivided(unit)) {
			takeAmount(
				taken,
				row,
				claims.reduce((sum, claim) => sum + grainsOf(claim), before),
			);
			continue;
		}
		takeAmount(taken, row, Math.max(0, before));
		for (const claim of claims.slice(Math.max(0, -before))) takeWhole(taken, row, claim);
	}
	return taken;
}

/** From one line after the other; what was brought comes to the first. */
function takeAmount(taken: Map<Counted, number>, row: readonly Counted[], grains: number): void {
	let open = grains;
	for (const line of row) {
		const there = taken.get(line) ?? 0;
		const share = open < 0 ? open : Math.min(open, Math.max(0, (line.count ?? 0) - there));
		if (share !== 0) taken.set(line, there + share);
		open -= share;
	}
}

/** From a line of the size that was cut, where there is one. */
function takeWhole(
	taken: Map<Counted, number>,
	row: readonly Counted[],
	{ takes }: Pick<Claim, 'takes'>,
): void {
	const left = row.filter((line) => (taken.get(line) ?? 0) < (line.count ?? 0));
	const isLike = (line: Counted): boolean => 'length' in takes && sameAs(line) === sameAs(takes);
	const from = left.find(isLike) ?? left[0];
	if (from) taken.set(from, (taken.get(from) ?? 0) + 1);
}

/** A kind of sheet or sundry stays in the list with none of it: it can be bought. */
const LEAVES: ReadonlySet<ListName> = new Set(['offcuts', 'rolls']);

function netLine(kept: Counted, name: ListName, taken: number, { hidden }: RackVerdict): NetLine {
	const isUsedUp = LEAVES.has(name) && taken > 0 && taken === kept.count;
	const isThere = !hidden.has(kept) && !isUsedUp;
	return { kept, taken, net: isThere ? withMore(kept.line, name, -taken) : null };
}

/** The very same object where no claim changes anything. */
function netStock(gross: unknown, lines: NetRack['lines']): unknown {
	const changed = LIST_NAMES.filter((name) =>
		lines[name].some(({ kept, net }) => net !== kept.line),
	);
	if (changed.length === 0) return gross;
	const lists = changed.map((name) => [name, lines[name].filter(isOnRack).map(({ net }) => net)]);
	return { ...(gross as object), ...Object.fromEntries(lists) };
}

/** Lines of a torn list may be null themselves: those are shown. */
export const isOnRack = ({ kept, net }: NetLine): boolean => net !== null || kept.line === null;
