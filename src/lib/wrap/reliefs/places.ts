import { lastOf, nth, around } from '../../measure';
import { sweepForRise, alongEdge, headingAt, type Point, plus } from '../../geometry';
import type { CutPlace } from './cuts';
import { foldCorner, type Flap, smoothShift, type Climb, outOf, turnTo } from '../girth';

/*
 * Where a turned-under edge must be relieved. Sharp corners one by one; along a curve flat flaps
 * side by side, each so narrow that its chord stands off the curve by no more than the cloth allows
 * (the sagitta rule). A curve may be an arc or a run of short straight edges, as outlines that come
 * from a drawing often have.
 */

/** A place of a cut, and what the curve it lies on asks of the cloth. */
export interface ReliefPlace extends CutPlace {
	readonly sharp: boolean;
	/** Of the curve it lies on; 0 at a sharp corner. */
	readonly radius: number;
	/** Of the edge the cloth is turned down over. */
	readonly height: number;
	/** How far along the fold it lies, for the width of the flaps beside it. */
	readonly way: number;
}

/** From this angle on a corner is a corner; below it belongs to a curve. */
const SHARP = (20 * Math.PI) / 180;
/** A bend this slight asks for nothing. */
const STRAIGHT = (2 * Math.PI) / 180;

/** Something along the fold that turns: a corner between two spans, or an arc. */
interface Bend {
	readonly turn: number;
	/** How many flaps wide it is under the sagitta rule. */
	readonly flaps: number;
	/** Widest flap here. */
	readonly width: number;
	readonly radius: number; // 0 when sharp
	readonly from: number; // way along the fold
	readonly to: number;
	place(part: number): { at: Point; heading: Point; flaps: readonly [Flap, Flap] };
}

export function reliefPlaces(flaps: readonly Flap[], climb: Climb, rise: number): ReliefPlace[] {
	const places = curvesOf(flaps, climb, rise).flatMap(placesOf);
	return places.filter((p) => p.flaps.every((f) => f.folds)).sort((a, b) => a.way - b.way);
}

function curvesOf(flaps: readonly Flap[], climb: Climb, rise: number): Bend[][] {
	const round = flaps.reduce((sum, f) => sum + f.span.length, 0);
	return runsOf(bendsOf(flaps, climb, rise), round);
}

/** An inside corner of an edge that is turned under: the tightest bend of it, and its middle. */
export interface InsideCorner {
	readonly radius: number; // 0 when sharp
	/** Radians from the heading before it to the one after it, positive. */
	readonly turn: number;
	/** Along the fold, from where it begins to bend to where it is straight again. */
	readonly length: number;
	/** Height of the edge the cloth is turned down over. */
	readonly height: number;
	readonly at: Point;
	/** Into the void, halfway between the edges that meet. */
	readonly out: Point;
	readonly flaps: readonly [Flap, Flap];
}

/** Corners and hollow curves of an outline, each as one, with cloth turned down on both sides. */
export function insideCorners(flaps: readonly Flap[], climb: Climb, rise: number): InsideCorner[] {
	const round = flaps.reduce((sum, f) => sum + f.span.length, 0);
	return curvesOf(flaps, climb, rise).flatMap((run) => insideCorner(run, round) ?? []);
}

function insideCorner(run: readonly Bend[], round: number): InsideCorner | null {
	const turn = -run.reduce((sum, b) => sum + b.turn, 0);
	if (turn < STRAIGHT) return null;
	const ends = [nth(run, 0).place(0), lastOf(run).place(1)] as const;
	const flaps = [ends[0].flaps[0], ends[1].flaps[1]] as const;
	if (!flaps.every((f) => f.folds)) return null;
	const wide = run.reduce((sum, b) => sum + b.flaps, 0);
	const { bend, part } = find(run, wide / 2);
	const { at, heading } = bend.place(part);
	return {
		radius: Math.min(...run.map((b) => b.radius)),
		turn,
		length: (lastOf(run).to - nth(run, 0).from + round) % round,
		height: heightOf(flaps),
		at,
		out: outOf(heading),
		flaps,
	};
}

function bendsOf(flaps: readonly Flap[], climb: Climb, rise: number): Bend[] {
	const bends: Bend[] = [];
	let way = 0;
	flaps.forEach((flap, i) => {
		const before = around(flaps, i + flaps.length - 1);
		const corner = cornerBend(before, flap, climb, rise, way);
		if (corner) bends.push(corner);
		const arc = arcBend(flap, climb, rise, way);
		if (arc) bends.push(arc);
		way += flap.span.length;
	});
	return bends;
}

function cornerBend(
	before: Flap,
	after: Flap,
	climb: Climb,
	rise: number,
	way: number,
): Bend | null {
	const turn = turnTo(before.span.arrives, after.span.leaves);
	if (Math.abs(turn) < 1e-3) return null;
	const sharp = Math.abs(turn) >= SHARP;
	const spans = [before.span, after.span];
	const straight = spans.filter((s) => !s.arc);
	// A run of short edges bends like an arc that turns as much over the length of one edge; where
	// two arcs meet in a slight corner, over the length of the shorter one.
	const over = Math.min(...(straight.length > 0 ? straight : spans).map((s) => s.length));
	const radius = over / Math.abs(turn);
	const own = sharp ? 1 : Math.abs(turn) / sweepForRise(radius, rise);
	return {
		turn,
		flaps: Math.min(1, own),
		width: sharp ? 0 : flapWidth(radius, rise),
		radius: sharp ? 0 : radius,
		from: way,
		to: way,
		place: () => ({
			at: foldCorner(before.span, after.span, climb),
			heading: halfway(before.span.arrives, turn),
			flaps: [before, after],
		}),
	};
}

function arcBend(flap: Flap, climb: Climb, rise: number, way: number): Bend | null {
	const { span } = flap;
	if (!span.arc) return null;
	return {
		turn: span.arc.sweep,
		flaps: Math.abs(span.arc.sweep) / sweepForRise(span.arc.radius, rise),
		width: flapWidth(span.arc.radius, rise),
		radius: span.arc.radius,
		from: way,
		to: way + span.length,
		place: (part) => {
			const heading = headingAt(span, part);
			const at = plus(alongEdge(span, part), smoothShift(climb, outOf(heading)));
			return { at, heading, flaps: [flap, flap] };
		},
	};
}

function flapWidth(radius: number, rise: number): number {
	return 2 * radius * Math.sin(Math.min(sweepForRise(radius, rise), Math.PI) / 2);
}

/**
 * Bends that make one curve: neighbours that turn the same way with no long straight between them.
 */
function runsOf(bends: readonly Bend[], round: number): Bend[][] {
	const n = bends.length;
	const joins = (i: number): boolean => follows(nth(bends, (i + n - 1) % n), nth(bends, i), round);
	// Begin where a curve begins, so that none is parted only because the outline happens to start
	// on it.
	const first = Math.max(
		0,
		bends.findIndex((_, i) => !joins(i)),
	);
	const runs: Bend[][] = [];
	for (let k = 0; k < n; k++) {
		const i = (first + k) % n;
		const last = runs.at(-1);
		if (last && joins(i)) last.push(nth(bends, i));
		else runs.push([nth(bends, i)]);
	}
	return runs;
}

const isSharp = (b: Bend): boolean => b.from === b.to && Math.abs(b.turn) >= SHARP;

function follows(before: Bend, bend: Bend, round: number): boolean {
	if (isSharp(before) || isSharp(bend)) return false;
	const gap = (bend.from - before.to + round) % round;
	return before.turn * bend.turn > 0 && gap <= 3 * Math.max(before.width, bend.width);
}

/** The reliefs of one curve, as many as it is flaps wide, each in the middle of its share. */
function placesOf(run: readonly Bend[]): ReliefPlace[] {
	const turn = run.reduce((sum, b) => sum + b.turn, 0);
	if (Math.abs(turn) < STRAIGHT) return [];
	const wide = run.reduce((sum, b) => sum + b.flaps, 0);
	const n = Math.max(1, Math.ceil(wide - 1e-9));
	const sharp = n === 1 && Math.abs(turn) >= SHARP;
	return Array.from({ length: n }, (_, k) => {
		const { bend, part } = find(run, ((k + 0.5) / n) * wide);
		const { at, heading, flaps } = bend.place(part);
		const share = turn / n;
		return {
			at,
			before: halfway(heading, -share),
			after: halfway(heading, share),
			turn: share,
			flaps,
			sharp,
			radius: bend.radius,
			height: heightOf(flaps),
			way: bend.from + (bend.to - bend.from) * part,
		};
	});
}

/** The edge is as high as the higher of two that meet. */
const heightOf = (flaps: readonly [Flap, Flap]): number =>
	Math.max(...flaps.map((f) => f.span.cloth.build));

function find(run: readonly Bend[], wide: number): { bend: Bend; part: number } {
	let passed = 0;
	for (const bend of run) {
		if (wide <= passed + bend.flaps) return { bend, part: (wide - passed) / bend.flaps };
		passed += bend.flaps;
	}
	return { bend: lastOf(run), part: 1 };
}

/** A heading turned by half of an angle. */
function halfway(heading: Point, turn: number): Point {
	const c = Math.cos(turn / 2);
	const s = Math.sin(turn / 2);
	return { x: heading.x * c - heading.y * s, y: heading.x * s + heading.y * c };
}
