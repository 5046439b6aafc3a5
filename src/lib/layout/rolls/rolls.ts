import {
	buyLength,
	isPatterned,
	napOnRoll,
	type Job,
	type Cloth,
	priceOfLength,
	type Roll,
	stepsFor,
} from '../../job';
import { area, type Outline, perimeter } from '../../geometry';
import { money, ticks, type Length } from '../../measure';
import {
	auditRoll,
	nestRoll,
	type Budget,
	type RollAnswer,
	type RollPiece,
	type RollProblem,
} from '../../nest';
import type { Blank } from '../../wrap';
import type { ClothLayouts, RollLayout } from '../layouts';
import { pursue, type Watch } from '../pace';
import { leadOf, patternCut, pullOf, roomOn } from './pattern-pull';

/*
 * Blanks of one cloth on its rolls. What is on the rack goes first; blanks of one lot stay together
 * on one roll, because two dye lots never match; the rest comes off the roll that makes the pull
 * cheapest.
 */

const TURNS: Readonly<Record<Cloth['nap'], RollPiece['turns']>> = {
	'one-way': [0],
	'two-way': [0, 180],
	none: [0, 90, 180, 270],
};
const ANY_WAY: RollPiece['turns'] = TURNS.none;

function turnsOn(blank: Blank, cloth: Cloth): RollPiece['turns'] {
	if (blank.anyWay) return ANY_WAY;
	// Parts of one cloth go on with each other's pattern only when they lie the same way.
	if (isPatterned(cloth) && blank.partAt) return TURNS['one-way'];
	return TURNS[napOnRoll(cloth)];
}

function piece(blank: Blank, cloth: Cloth): RollPiece {
	return {
		id: blank.id,
		length: blank.length,
		width: blank.width,
		count: blank.count,
		turns: turnsOn(blank, cloth),
		outline: blank.outline,
		...(blank.partAt ? { phase: { along: blank.partAt.x, across: blank.partAt.y } } : {}),
	};
}

function problemOf(
	roll: Roll,
	blanks: readonly Blank[],
	{ cloth, by }: Pick<RollDemand, 'cloth' | 'by'>,
): RollProblem {
	return {
		width: roll.usable,
		gap: ticks(0),
		pieces: blanks.map((b) => piece(b, cloth)),
		limit: roomOn(roll, cloth),
		repeat: cloth.repeat,
		...patternAcross(cloth),
		by,
	};
}

function patternAcross({ repeatAcross, halfDrop }: Cloth): Partial<RollProblem> {
	if (repeatAcross === 0) return {};
	return halfDrop ? { drop: { across: repeatAcross } } : { across: repeatAcross };
}

/** What one roll is asked to give, worked on until it is good enough. */
export interface RollDemand {
	readonly cloth: Cloth;
	readonly by: RollProblem['by'];
	readonly budget: Budget;
	readonly watch: Watch<RollAnswer>;
}

/** A roll with its blanks, before anybody asked what the nap costs. */
export type Pull = Omit<RollLayout, 'napless'>;

async function lay(roll: Roll, blanks: readonly Blank[], ask: RollDemand): Promise<Pull> {
	const problem = problemOf(roll, blanks, ask);
	const answer = await pursue(nestRoll(problem, ask.budget), ask.watch);
	const pattern = patternCut(roll, ask.cloth, answer.length);
	const lead = leadOf(roll, ask.cloth);
	return {
		roll: roll.id,
		problem,
		answer,
		pull: pullOf(roll, ask.cloth, answer.length),
		...(answer.length > 0 && lead > 0 ? { lead } : {}),
		...(pattern ? { pattern } : {}),
		...alongOf(problem, answer),
		owned: roll.left !== null,
		faults: auditRoll(problem, answer),
	};
}

/** What has to be cut along an outline: rectangles are cut straight. */
function alongOf({ by, pieces }: RollProblem, { placed }: RollAnswer): Pick<RollLayout, 'along'> {
	if (by !== 'outline') return {};
	const each = new Map(pieces.map((p) => [p.id, isShaped(p) ? perimeter(p.outline) : 0]));
	const along = placed.reduce((sum, p) => sum + (each.get(p.id) ?? 0), 0);
	return along > 0 ? { along: ticks(Math.round(along)) } : {};
}

/** Does a blank leave any of its rectangle free? */
export function isShaped<B extends Pick<RollPiece, 'length' | 'width' | 'outline'>>(
	blank: B,
): blank is B & { readonly outline: Outline } {
	return blank.outline !== undefined && Math.abs(area(blank.outline)) < blank.length * blank.width;
}

/** The length if every blank could be turned freely; what the nap costs is the difference. */
export async function withoutNap({ problem, answer }: Pull, ask: RollDemand): Promise<Length> {
	if (ask.cloth.nap === 'none') return answer.length;
	// The pattern stays: without a nap it could still not be turned a quarter.
	const turns = isPatterned(ask.cloth) ? TURNS['two-way'] : ANY_WAY;
	const free = { ...problem, pieces: problem.pieces.map((p) => ({ ...p, turns })) };
	const found = await pursue(nestRoll(free, ask.budget), ask.watch);
	// A layout that keeps the nap is also one that ignores it, so the free answer is never the
	// longer one.
	const missed = found.unplaced.length > answer.unplaced.length;
	return missed || found.length > answer.length ? answer.length : found.length;
}

/** Blanks that must come off one roll: one group a lot, and each blank without a lot by itself. */
function groups(blanks: readonly Blank[]): Blank[][] {
	const lots = new Map<string, Blank[]>();
	for (const blank of blanks) {
		const key = blank.lot === '' ? `alone ${blank.id}` : `lot ${blank.lot}`;
		lots.set(key, [...(lots.get(key) ?? []), blank]);
	}
	return [...lots.values()].sort((a, b) => boxArea(b) - boxArea(a));
}

const boxArea = (group: readonly Blank[]): number =>
	group.reduce((sum, b) => sum + b.length * b.width * b.count, 0);

/** A hair less, since arcs make it a computed figure. */
const trueArea = (group: readonly Blank[]): number =>
	group.reduce((sum, b) => sum + Math.abs(area(b.outline)) * b.count, 0) * (1 - 1e-12);

/**
 * Fills one owned roll with whole groups, largest first; returns what it took and what is left
 * over.
 */
async function fillOwned(
	roll: Roll,
	waiting: readonly Blank[][],
	ask: RollDemand,
): Promise<{ taken: Blank[][]; left: Blank[][] }> {
	const quick = { ...ask, budget: { ...ask.budget, effort: Math.min(300, ask.budget.effort) } };
	const taken: Blank[][] = [];
	const left: Blank[][] = [];
	let free = (roll.left ?? 0) * roll.usable;
	for (const group of waiting) {
		const needs = ask.by === 'outline' ? trueArea(group) : boxArea(group);
		const fits = needs <= free && (await takes(roll, [...taken.flat(), ...group], quick));
		(fits ? taken : left).push(group);
		if (fits) free -= needs;
	}
	return { taken, left };
}

async function takes(roll: Roll, blanks: readonly Blank[], ask: RollDemand): Promise<boolean> {
	const problem = problemOf(roll, blanks, ask);
	const answer = await pursue(nestRoll(problem, ask.budget), ask.watch);
	return answer.unplaced.length === 0;
}

/**
 * Lays all blanks of one cloth: remnants and owned rolls first, then the cheapest roll sold by the
 * length. What the nap costs is not asked: enough to compare two ways of covering or cutting.
 */
export async function pullCloth(
	job: Job,
	blanks: readonly Blank[],
	ask: RollDemand,
): Promise<{ readonly rolls: readonly Pull[]; readonly unplaced: ClothLayouts['unplaced'] }> {
	const { cloth } = ask;
	const mine = job.stock.rolls.filter((r) => r.cloth === cloth.id);
	const owned = mine
		.filter((r) => r.left !== null)
		.sort((a, b) => (a.left ?? 0) * a.usable - (b.left ?? 0) * b.usable || (a.id < b.id ? -1 : 1));
	const rolls: Pull[] = [];
	let waiting = groups(blanks);
	for (const roll of owned) {
		if (waiting.length === 0) break;
		const { taken, left } = await fillOwned(roll, waiting, ask);
		if (taken.length > 0) rolls.push(await lay(roll, taken.flat(), ask));
		waiting = left;
	}
	if (waiting.length === 0) return { rolls, unplaced: [] };
	const bought = await cheapest(
		mine.filter((r) => r.left === null),
		waiting.flat(),
		ask,
		job.shop.ruler,
	);
	if (!bought) return { rolls, unplaced: noRoll(waiting.flat(), cloth, owned.length) };
	return { rolls: [...rolls, bought], unplaced: bought.answer.unplaced };
}

async function cheapest(
	rolls: readonly Roll[],
	blanks: readonly Blank[],
	ask: RollDemand,
	ruler: Job['shop']['ruler'],
): Promise<Pull | null> {
	const tried: { layout: Pull; price: number }[] = [];
	for (const roll of rolls) {
		const layout = await lay(roll, blanks, ask);
		// Of rolls without a price the shortest pull is the cheapest.
		const price =
			roll.price > 0
				? buyLength(roll, layout.pull, ruler).total
				: priceOfLength(
						{ ...roll, price: money(1) },
						stepsFor(roll, layout.pull) * roll.step,
						ruler,
					);
		tried.push({ layout, price });
	}
	const missing = (l: Pull) => l.answer.unplaced.reduce((sum, u) => sum + u.count, 0);
	tried.sort((a, b) => missing(a.layout) - missing(b.layout) || a.price - b.price);
	return tried[0]?.layout ?? null;
}

function noRoll(blanks: readonly Blank[], cloth: Cloth, owned: number): ClothLayouts['unplaced'] {
	const why =
		owned > 0
			? `The rolls of ${cloth.name} on the rack are too short, and none is listed to be bought.`
			: `The stock lists no roll of ${cloth.name}.`;
	return blanks.map((b) => ({ id: b.id, count: b.count, why }));
}
