import { nth } from '../../measure';
import type { Point } from '../../geometry';
import type { BlankMark } from '../blank';
import type { Flap, Climb } from '../girth';
import { Folds } from './folds';
import { closing, type CutDepth, notch, shortenedCut, slit, type FlapReach } from './cuts';
import { reliefPlaces, type ReliefPlace } from './places';
import { followsBend, type Give } from './strain';

/** The relief cuts of a cloth, in the figures of the stock. */
export interface ReliefRule {
	/** How far a cut stays away from the fold, ticks. */
	readonly short: number;
	/** Widest a flat flap may stand off a curve, ticks. */
	readonly rise: number;
	/** What the cloth follows without a cut: there the edge that is seen stays whole. */
	readonly give: Give;
}

export interface Reliefs {
	readonly marks: readonly BlankMark[];
	readonly notches: number;
	readonly slits: number;
	/** Outside corners mitred. */
	readonly corners: number;
	/** Places where another fold left no room for a cut. */
	readonly blocked: readonly Point[];
}

/**
 * The relief cuts along one outline. `folds` are all fold lines of the blank: no cut comes to lie
 * across one. Only places that are `wanted` are cut.
 */
export function reliefsOf(
	flaps: readonly Flap[],
	climb: Climb,
	rule: ReliefRule,
	folds: readonly (readonly Point[])[],
	wanted: (at: Point) => boolean = () => true,
): Reliefs {
	const places = reliefPlaces(flaps, climb, rule.rise).filter((p) => wanted(p.at));
	const round = flaps.reduce((sum, f) => sum + f.span.length, 0);
	const shunned = new Folds(folds);
	const marks: BlankMark[] = [];
	const blocked: Point[] = [];
	const count = { notches: 0, slits: 0, corners: 0 };
	places.forEach((place, i) => {
		const outside = place.turn > 0;
		const depth = depthOf(place, rule);
		if (depth === null) return;
		const cut = outside ? notch(place, sidesOf(places, i, round), depth) : slit(place, depth.tip);
		const mark = cut && clearCut(place, cut, shunned);
		if (!mark) {
			blocked.push(place.at);
			return;
		}
		count[outside ? (place.sharp ? 'corners' : 'notches') : 'slits']++;
		marks.push(mark);
	});
	return { marks, ...count, blocked };
}

/**
 * A cut ends short of the fold; where the cloth follows the curve down the edge, it is only cut on
 * the back. Null where there is nothing on the back to cut.
 */
function depthOf(place: ReliefPlace, { short, give }: ReliefRule): CutDepth | null {
	const { turn, radius, height } = place;
	if (!followsBend(turn, radius, height, give)) return { tip: short, lap: short };
	const whole = place.flaps.every((f) => f.total <= height);
	return whole ? null : { tip: Math.max(short, height), lap: short };
}

/** Flaps of a run of reliefs share the fold between them half and half. */
function sidesOf(places: readonly ReliefPlace[], i: number, round: number): [FlapReach, FlapReach] {
	const place = nth(places, i);
	const n = places.length;
	const gap = (j: number, k: number): number => {
		const g = nth(places, k).way - nth(places, j).way;
		return g > 0 ? g : g + round;
	};
	return [
		{ flap: place.flaps[0], half: gap((i + n - 1) % n, i) / 2 },
		{ flap: place.flaps[1], half: gap(i, (i + 1) % n) / 2 },
	];
}

const SHORTER = [1, 0.7, 0.45, 0.25];

/**
 * A cut, drawn back towards its point until it lies across no fold; null when even a short one
 * would.
 */
function clearCut(place: ReliefPlace, cut: readonly Point[], folds: Folds): BlankMark | null {
	const outside = place.turn > 0;
	const tip = outside ? nth(cut, Math.floor(cut.length / 2)) : nth(cut, 0);
	for (const by of SHORTER) {
		const tried = by === 1 ? cut : shortenedCut(cut, tip, by);
		const line = outside && by === 1 ? [...tried, ...closing(place)] : tried;
		const all = outside ? [...line, nth(line, 0)] : line;
		if (folds.crossedBy(all)) continue;
		if (!outside) return { kind: 'slit', line, closed: false };
		return { kind: 'notch', line, closed: true, ...(place.sharp ? { corner: true } : {}) };
	}
	return null;
}
