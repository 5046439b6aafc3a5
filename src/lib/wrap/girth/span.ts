import { nth } from '../../measure';
import {
	type Arc,
	sweepForRise,
	alongEdge,
	arcOfEdge,
	edgeLength,
	edgesOf,
	headingAt,
	type Edge,
	type Outline,
	type Point,
	reversed,
	cross,
	dot,
} from '../../geometry';
import type { ClothEdge, Covering, Window } from '../../design';

/**
 * One edge of an outline, walked with the board on the left and the cloth to be turned under on the
 * right.
 */
export interface Span extends Edge {
	readonly cloth: ClothEdge;
	readonly length: number;
	/** Direction of travel where it starts and where it ends. */
	readonly leaves: Point;
	readonly arrives: Point;
	readonly arc: Arc | null;
}

/** The spans round the board itself. */
export function boardSpans(covering: Pick<Covering, 'outline' | 'edges'>): Span[] {
	return spans(covering.outline, (i) => covering.edges[i]);
}

/** The spans round a window, walked clockwise so that the board lies on the left here too. */
export function windowSpans(window: Window): Span[] {
	return spans(reversed(window.outline), () => window.edge);
}

function spans(outline: Outline, clothOf: (edge: number) => ClothEdge | undefined): Span[] {
	return edgesOf(outline).map((edge, i) => {
		const cloth = clothOf(i);
		if (cloth === undefined)
			throw new Error(`bug: edge ${i} of an outline says nothing of its cloth`);
		return {
			from: edge.from,
			to: edge.to,
			bulge: edge.bulge,
			cloth,
			length: edgeLength(edge),
			leaves: headingAt(edge, 0),
			arrives: headingAt(edge, 1),
			arc: arcOfEdge(edge),
		};
	});
}

/** Away from the board, for a direction of travel. */
export const outOf = (heading: Point): Point => ({ x: heading.y, y: -heading.x });

/**
 * The turn from one direction to another, radians, left positive, at most half a circle either way.
 */
export const turnTo = (from: Point, to: Point): number =>
	Math.atan2(cross(from, to), dot(from, to));

/**
 * Furthest a curve drawn as chords may run from the curve itself, in ticks: a tenth of a
 * millimetre.
 */
export const CHORD_ERROR = 160;
const QUARTER = Math.PI / 2;

/**
 * Fractions at which a span is broken into chords: its ends, even steps, and where it runs along an
 * axis (there the steps of the panel shift the cloth another way).
 */
export function breaks(s: Span): number[] {
	if (!s.arc) return [0, 1];
	const sweep = s.arc.sweep;
	const widest = Math.min(sweepForRise(s.arc.radius, CHORD_ERROR), QUARTER);
	const n = Math.max(2, Math.ceil(Math.abs(sweep) / widest));
	const parts = Array.from({ length: n + 1 }, (_, i) => i / n);
	const low = Math.min(s.arc.start, s.arc.start + sweep);
	for (let q = Math.ceil(low / QUARTER); q * QUARTER < low + Math.abs(sweep); q++)
		parts.push((q * QUARTER - s.arc.start) / sweep);
	return parts.sort((a, b) => a - b).filter((p, i) => i === 0 || p - nth(parts, i - 1) > 1e-6);
}

/** A span as the points of its chords, both ends included. */
export function chordPoints(s: Span): Point[] {
	return breaks(s).map((part) => alongEdge(s, part));
}
