import { type Claim, unitOf } from './claim';
import { type Counted, countedLines, LISTS, type ListName, sameAs, withMore } from './counted';
import { grouped, type RackVerdict, verdictOn } from './verdict';

/** A line of the stock as it is kept, and as it is on the rack. */
export interface NetLine {
	readonly kept: Counted;
	/** How many of it are booked. */
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
	/** How many were booked of lines that have left the rack since, by unit. */
	readonly kept: ReadonlyMap<string, number>;
}

/** What is on the rack: what is owned less the claims that stand, and the offcuts those yielded. */
export function netRack(
	gross: unknown,
	claims: readonly Claim[],
	kept: ReadonlyMap<string, number>,
): NetRack {
	const counted = {
		sheets: countedLines(gross, 'sheets'),
		offcuts: countedLines(gross, 'offcuts'),
	};
	const verdict = verdictOn(claims, counted, kept);
	const onUnit = grouped(claims, ({ takes }) => unitOf(takes));
	const standing = grouped([...verdict.won], ({ takes }) => unitOf(takes));
	const taking = new Map(
		[...standing].map(([unit, row]) => [unit, row.slice(kept.get(unit) ?? 0)] as const),
	);
	const net = (name: ListName): NetLine[] => {
		const taken = takenFrom(counted[name], verdict.hidden, taking);
		return counted[name].map((line) => netLine(line, name, taken.get(line) ?? 0, verdict));
	};
	const lines = { sheets: net('sheets'), offcuts: net('offcuts') };
	return { stock: netStock(gross, lines), gross, lines, verdict, onUnit, kept };
}

/** How many are taken from each line: from one of the size that was cut, where there is one. */
function takenFrom(
	lines: readonly Counted[],
	hidden: ReadonlySet<Counted>,
	taking: ReadonlyMap<string, readonly Claim[]>,
): Map<Counted, number> {
	const taken = new Map<Counted, number>();
	const open = grouped(
		lines.filter((line) => line.count !== null && !hidden.has(line)),
		({ unit }) => unit,
	);
	for (const [unit, row] of open)
		for (const { takes } of taking.get(unit) ?? []) {
			const left = row.filter((line) => (taken.get(line) ?? 0) < (line.count ?? 0));
			const from = left.find((line) => sameAs(line) === sameAs(takes)) ?? left[0];
			if (from) taken.set(from, (taken.get(from) ?? 0) + 1);
		}
	return taken;
}

function netLine(kept: Counted, name: ListName, taken: number, { hidden }: RackVerdict): NetLine {
	// A kind of sheet stays in the list with none of it: it can be bought. An offcut is gone.
	const isUsedUp = name === 'offcuts' && taken > 0 && taken === kept.count;
	const isThere = !hidden.has(kept) && !isUsedUp;
	return { kept, taken, net: isThere ? withMore(kept.line, name, -taken) : null };
}

/** The very same object where no claim changes anything. */
function netStock(gross: unknown, lines: NetRack['lines']): unknown {
	const changed = (Object.keys(LISTS) as ListName[]).filter((name) =>
		lines[name].some(({ kept, net }) => net !== kept.line),
	);
	if (changed.length === 0) return gross;
	const lists = changed.map((name) => [name, lines[name].filter(isOnRack).map(({ net }) => net)]);
	return { ...(gross as object), ...Object.fromEntries(lists) };
}

/** Lines of a torn list may be null themselves: those are shown. */
export const isOnRack = ({ kept, net }: NetLine): boolean => net !== null || kept.line === null;
