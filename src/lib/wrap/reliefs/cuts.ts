import { lineLine, type Point, dot, minus, plus, times, unit } from '../../geometry';
import { type FlapWidth, outOf, turnTo } from '../girth';

/*
 * The cuts themselves. A mitre notch at an outside corner: it starts a little beyond the fold,
 * leaves each flap its part of the edge's height whole, and on the back cuts both flaps along the
 * line in which they meet, so that they close without a lump. A slit at an inside corner: it lets
 * the flap open. Both stop short of the fold, because a cut that reaches the front edge shows.
 */

/** A place on the fold where the flap is cut; its flaps lie along `before` and `after`. */
export interface CutPlace {
	readonly at: Point;
	readonly before: Point; // heading
	readonly after: Point;
	/** Radians, positive where the board bulges out. */
	readonly turn: number;
	readonly flaps: readonly [FlapWidth, FlapWidth];
}

/** How far one side of a place reaches: its flap and half the way to the next relief. */
export interface FlapReach {
	readonly flap: FlapWidth;
	readonly half: number;
}

/** Where a cut ends, in ticks away from the fold, and how far the flaps lap beside it. */
export interface CutDepth {
	readonly tip: number;
	readonly lap: number;
}

/**
 * A notch: from the cloth's edge in to its point and out again. Null when the cloth past the fold
 * is no wider than the point stays away from it.
 */
export function notch(
	place: CutPlace,
	sides: readonly [FlapReach, FlapReach],
	{ tip: short, lap }: CutDepth,
): Point[] | null {
	const [a, b] = sides;
	if (Math.min(a.flap.total, b.flap.total) <= short) return null;
	const tan = Math.tan(cutTurn(place) / 2);
	const out = [outOf(place.before), outOf(place.after)] as const;
	const point = (side: 0 | 1, along: number, beyond: number): Point =>
		plus(
			plus(place.at, times(side === 0 ? place.before : place.after, side === 0 ? along : -along)),
			times(out[side], beyond),
		);
	const first = mitre(a, { tip: short, lap }, tan).map(([along, beyond]) =>
		point(0, along, beyond),
	);
	const second = mitre(b, { tip: short, lap }, tan).map(([along, beyond]) =>
		point(1, along, beyond),
	);
	const tip = tipOf(place, short);
	return [...first, tip, ...second.reverse()];
}

/**
 * One side of a notch from the cloth's edge inwards: [along the fold past the corner, beyond the
 * fold].
 */
function mitre(side: FlapReach, depth: CutDepth, tan: number): [number, number][] {
	const { wall, total } = side.flap;
	// The flaps lap by this much round the upright edge, so that no board shows between them.
	const lap = Math.min(depth.lap * tan, side.half);
	const away = (beyond: number) => lap - (beyond - wall) * tan;
	const cuts: [number, number][] = [[Math.max(-side.half, away(total)), total]];
	// Past this height nothing is left of a narrow flap.
	const full = wall + (side.half + lap) / tan;
	if (full < total) cuts.push([-side.half, full]);
	if (wall > depth.tip && wall < total) cuts.push([lap, wall]);
	return cuts;
}

/**
 * A slit from its point near the fold out to the cloth's edge; null when there is no room for it.
 */
export function slit(place: CutPlace, short: number): Point[] | null {
	const [a, b] = place.flaps;
	if (Math.min(a.total, b.total) <= short) return null;
	const tip = tipOf(place, short);
	return [tip, edgePoint(place)];
}

/** Where the edges of the cloth on both sides of a place meet. */
function edgePoint(place: CutPlace): Point {
	const { end, start } = edgesAt(place);
	const meet = lineLine({ at: end, heading: place.before }, { at: start, heading: place.after });
	return meet ?? end;
}

/** The edge of the cloth between the two ends of a notch, against the sense of the cut. */
export function closing(place: CutPlace): Point[] {
	const { end, start } = edgesAt(place);
	const meet = lineLine({ at: end, heading: place.before }, { at: start, heading: place.after });
	if (!meet) return [];
	const beyond =
		dot(minus(meet, end), place.before) >= 0 && dot(minus(start, meet), place.after) >= 0;
	return beyond ? [meet] : [start, end];
}

function edgesAt(place: CutPlace): { end: Point; start: Point } {
	const [a, b] = place.flaps;
	return {
		end: plus(place.at, times(outOf(place.before), a.total)),
		start: plus(place.at, times(outOf(place.after), b.total)),
	};
}

/**
 * The point of a cut: `short` away from the folds on both sides. Where the fold runs straight on (a
 * band), just beside it.
 */
function tipOf(place: CutPlace, short: number): Point {
	const bend = Math.min(Math.abs(turnTo(place.before, place.after)), SHARPEST);
	return plus(place.at, times(bisector(place), short / Math.cos(bend / 2)));
}

/** The sharpest corner a notch follows; a needle of a corner is cut like one of 30 degrees. */
const SHARPEST = (150 * Math.PI) / 180;
const cutTurn = (place: CutPlace): number => Math.min(Math.abs(place.turn), SHARPEST);

function bisector(place: CutPlace): Point {
	return unit(outOf(plus(place.before, place.after)));
}

/** A cut drawn back towards its point, for where the whole of it has no room. */
export function shortenedCut(cut: readonly Point[], tip: Point, by: number): Point[] {
	return cut.map((p) => plus(tip, times(minus(p, tip), by)));
}
