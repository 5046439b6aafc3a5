import { nth } from '../../../measure';
import type { Rect } from '../../../geometry';
import type { Cut, SheetLayout } from '../../../nest';

/**
 * Cuts that share one drawing and one list: those that part a sheet into its strips, or those of
 * one strip.
 */
export interface CutGroup {
	/** 'A', 'B'; of a strip within A 'Aa'. '' for the sheet itself. */
	readonly name: string;
	/** What lies on the saw when its first cut is made. */
	readonly region: Rect;
	/** In the order of the saw. */
	readonly cuts: readonly Cut[];
	/** What falls from these cuts and has a group of its own. */
	readonly strips: readonly CutGroup[];
}

/** More than these crowd the drawing of a strip, and a person's head. */
const MOST = 8;
/** The same for a whole sheet, whose strips are small on paper. */
const MOST_ON_SHEET = 4;
/** A strip with no more cuts than these stays in the drawing of what it falls from. */
const FEW = 2;

/** The groups of a sawn sheet, the sheet's own first; null where nothing is sawn. */
export function cutGroups(layout: SheetLayout): CutGroup | null {
	const byNumber = new Map(layout.cuts.map((cut) => [cut.n, cut]));
	const taken = new Set(layout.cuts.flatMap(following));
	const first = layout.cuts.find((cut) => !taken.has(cut.n));
	return first === undefined ? null : groupOf(first, '', byNumber);
}

/** Every group, each before the strips that fall from it. */
export function everyGroup(group: CutGroup): CutGroup[] {
	return [group, ...group.strips.flatMap(everyGroup)];
}

type Cuts = ReadonlyMap<number, Cut>;

function groupOf(first: Cut, name: string, all: Cuts): CutGroup {
	const { region } = first;
	const whole = under(first, all);
	const most = name === '' ? MOST_ON_SHEET : MOST;
	if (whole.filter((cut) => cut.kind !== 'trim').length <= most)
		return { name, region, cuts: inOrder(whole), strips: [] };
	const chain = new Set(chainFrom(first, all));
	const cuts = [...chain];
	const alone: Cut[] = [];
	for (const strip of [...chain].flatMap((cut) => next(cut, all))) {
		if (chain.has(strip)) continue;
		const inside = under(strip, all);
		if (inside.length <= FEW) cuts.push(...inside);
		else alone.push(strip);
	}
	const strips = alone.map((strip, i) => groupOf(strip, name + letters(i, name === ''), all));
	return { name, region, cuts: inOrder(cuts), strips };
}

/** The trims, and the cuts that go on parting one board the same way. */
function chainFrom(first: Cut, all: Cuts): Cut[] {
	const chain: Cut[] = [];
	for (let cut: Cut | undefined = first; cut !== undefined;) {
		const last: Cut = cut;
		chain.push(last);
		cut = next(last, all).find((on) => last.kind === 'trim' || sameWay(on, last));
	}
	return chain;
}

function sameWay(a: Cut, b: Cut): boolean {
	return a.runs === b.runs && a.kind === b.kind;
}

function following(cut: Cut): number[] {
	return cut.gives.flatMap((give) => (give.nextCut === undefined ? [] : [give.nextCut]));
}

function next(cut: Cut, all: Cuts): Cut[] {
	return following(cut).flatMap((n) => all.get(n) ?? []);
}

/** A cut and all that parts what falls from it; a board may be parted thousands of times. */
function under(cut: Cut, all: Cuts): Cut[] {
	const found = [cut];
	for (const one of found) found.push(...next(one, all));
	return found;
}

function inOrder(cuts: readonly Cut[]): Cut[] {
	return [...cuts].sort((a, b) => a.n - b.n);
}

/** A, B, … Z, AA; small for a strip within a strip. */
function letters(i: number, capital: boolean): string {
	const letter = String.fromCharCode((capital ? 65 : 97) + (i % 26));
	return i < 26 ? letter : letters(Math.floor(i / 26) - 1, capital) + letter;
}

/** The name of the strip that each cut begins, by the number of the cut. */
export function stripNames(group: CutGroup): ReadonlyMap<number, string> {
	const strips = everyGroup(group).filter((g) => g.name !== '');
	return new Map(strips.map((g) => [nth(g.cuts, 0).n, g.name]));
}
