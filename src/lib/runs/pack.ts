import { nth } from '../measure';

/*
 * Lengths cut from lengths, whole numbers. No kerf: a cable is nipped, a hose is cut with a knife.
 */

/** One length to be cut from another, and what it is for. */
export interface LengthCut {
	readonly run: string;
	readonly length: number;
}

/** A length that is cut up; `source`: it lies on the rack, or is bought. */
export interface CutUp {
	readonly source: 'rack' | 'buy';
	readonly length: number;
	readonly cuts: readonly LengthCut[];
}

/** What there is to cut from: these on the rack, and as many of one length as are bought. */
interface Lengths {
	readonly rack: readonly number[];
	readonly bought: number;
}

interface Open {
	readonly source: 'rack' | 'buy';
	readonly length: number;
	readonly cuts: LengthCut[];
	left: number;
}

/** Past so many cuts no search for a length fewer: it would seldom end. */
const SEARCHED = 60;
const STEPS = 20_000;

/**
 * Every cut from one of the lengths, the fewest bought that were found: all cuts at once, or group
 * after group where that takes fewer, so that groups together never take more than one by one.
 * A length nothing is cut from is left out. No cut may be longer than the length that is bought.
 */
export function packLengths(groups: readonly (readonly LengthCut[])[], of: Lengths): CutUp[] {
	const all = longestFirst(groups.flat());
	const ways = [
		placed([all], of),
		...(groups.length > 1 ? [placed(groups.map(longestFirst), of)] : []),
	];
	const best = ways.reduce((a, b) => (boughtIn(b) < boughtIn(a) ? b : a));
	return fewer(all, of, best)
		.filter((open) => open.cuts.length > 0)
		.map(({ source, length, cuts }) => ({ source, length, cuts }));
}

const boughtIn = (opened: readonly Open[]): number =>
	opened.filter((open) => open.source === 'buy').length;

const longestFirst = (cuts: readonly LengthCut[]): LengthCut[] =>
	cuts.toSorted((a, b) => b.length - a.length);

const opened = (source: Open['source'], length: number): Open => ({
	...{ source, length, cuts: [], left: length },
});

/** Each where it leaves the least; a new length where it fits in none. */
function placed(groups: readonly (readonly LengthCut[])[], of: Lengths): Open[] {
	const lengths = of.rack.map((length) => opened('rack', length));
	for (const cut of groups.flat()) {
		let tightest: Open | null = null;
		for (const open of lengths)
			if (open.left >= cut.length && (!tightest || open.left < tightest.left)) tightest = open;
		if (!tightest) lengths.push((tightest = opened('buy', of.bought)));
		put(tightest, cut);
	}
	return lengths;
}

function put(open: Open, cut: LengthCut): void {
	open.cuts.push(cut);
	open.left -= cut.length;
}

/** The same with a length fewer, and another, as long as a search of bounded work finds it. */
function fewer(cuts: readonly LengthCut[], of: Lengths, known: Open[]): Open[] {
	const sum = cuts.reduce((all, cut) => all + cut.length, 0);
	const onRack = of.rack.reduce((all, length) => all + length, 0);
	const least = Math.max(0, Math.ceil((sum - onRack) / of.bought));
	const count = boughtIn(known) - 1;
	if (cuts.length > SEARCHED || count < least) return known;
	const lengths = [
		...of.rack.map((length) => opened('rack', length)),
		...Array.from({ length: count }, () => opened('buy', of.bought)),
	];
	const steps = { left: STEPS };
	return fits(cuts, 0, lengths, steps) ? fewer(cuts, of, lengths) : known;
}

/** Puts the cuts from place `at` on into the lengths; false, and none put, where nothing goes. */
function fits(
	cuts: readonly LengthCut[],
	at: number,
	lengths: readonly Open[],
	steps: { left: number },
): boolean {
	if (at === cuts.length) return true;
	const cut = nth(cuts, at);
	const tried = new Set<number>();
	for (const open of lengths) {
		if (open.left < cut.length || tried.has(open.left)) continue;
		if (--steps.left < 0) return false;
		tried.add(open.left);
		put(open, cut);
		if (fits(cuts, at + 1, lengths, steps)) return true;
		open.cuts.pop();
		open.left += cut.length;
	}
	return false;
}
