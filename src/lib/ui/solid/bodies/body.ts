import { add3, type Point3, scale3 } from '../../../design';
import {
	flatten,
	linesInside,
	linesOutside,
	type Outline,
	type Point,
	without,
} from '../../../geometry';
import { around, mm, nth, TICKS_PER_MM } from '../../../measure';

/** What a facet is of, for its colour. */
export type Tone = 'face' | 'edge' | 'metal' | 'cloth';

/**
 * A flat piece of surface, millimetres: a ring, counter-clockwise as seen from outside the body,
 * and the holes in it.
 */
export interface Facet {
	readonly ring: readonly Point3[];
	readonly holes: readonly (readonly Point3[])[];
	readonly tone: Tone;
}

/** Anything solid in the view, millimetres: x to the right, y away from the viewer, z up. */
export interface Body {
	readonly key: string;
	/** The mark of its part; null for what is bought and not cut. */
	readonly mark: string | null;
	readonly name: string;
	readonly facets: readonly Facet[];
	/** Edges drawn in ink. */
	readonly lines: readonly (readonly Point3[])[];
	/** Where it goes when all is drawn apart. */
	readonly away: Point3;
}

/** A plane of drawing in the room: `at(p, h)` is the place of p, h ticks over the plane, in mm. */
export type Raise = (p: Point, height: number) => Point3;

/** Chords of an arc leave it by no more than this, ticks. */
const FLAT = mm(0.25);

/** The outline with chords for arcs, as the view draws it. */
export const chorded = (outline: Outline): Outline => flatten(outline, FLAT);

/** A board or anything else of one thickness: outline, holes right through, and two heights. */
export interface Prism {
	readonly outline: Outline;
	readonly holes: readonly Outline[];
	readonly low: number;
	readonly high: number;
	/** Of its upper face; the lower one is always bare. */
	readonly tone?: Tone;
	/** Of its sides. */
	readonly side?: Tone;
}

/** The surface of a prism, and its edges. */
export function prism(p: Prism, plane: Raise): Pick<Body, 'facets' | 'lines'> {
	const { low, high } = p;
	const [tone, side] = [p.tone ?? 'face', p.side ?? 'edge'];
	const regions = without([p.outline], p.holes, FLAT);
	const rings = regions.flatMap((r) => [r.outline, ...r.holes.map((h) => [...h].reverse())]);
	return {
		facets: [
			...regions.map((r) => facet(r.outline, r.holes, (q) => plane(q, high), tone)),
			...regions.map((r) =>
				turnedOver(facet(r.outline, r.holes, (q) => plane(q, low), p.side ? side : 'face')),
			),
			...rings.flatMap((ring) => walls(closed(ring), plane, low, high, side)),
		],
		lines: rings.flatMap((ring) => [
			closed(ring).map((q) => plane(q, high)),
			closed(ring).map((q) => plane(q, low)),
			...sharpCorners(ring).map((q) => [plane(q, low), plane(q, high)]),
		]),
	};
}

/** A flat region with its holes, as the plane places it. */
export function facet(
	ring: readonly Point[],
	holes: readonly (readonly Point[])[],
	place: (p: Point) => Point3,
	tone: Tone,
): Facet {
	return { ring: ring.map(place), holes: holes.map((h) => h.map(place)), tone };
}

/** The same surface seen from its other side. */
export function turnedOver(f: Facet): Facet {
	return { ...f, ring: [...f.ring].reverse(), holes: f.holes.map((h) => [...h].reverse()) };
}

/** Upright walls under a line of drawing; what they close in lies to the left of the line. */
export function walls(
	line: readonly Point[],
	plane: Raise,
	low: number,
	high: number,
	tone: Tone,
): Facet[] {
	return line.slice(1).map((b, i) => {
		const a = nth(line, i);
		return {
			ring: [plane(a, low), plane(b, low), plane(b, high), plane(a, high)],
			holes: [],
			tone,
		};
	});
}

/** A ring as a line that ends where it began. */
export const closed = (ring: readonly Point[]): Point[] => [...ring, ...ring.slice(0, 1)];

/** Parts of a ring that run through what the outlines cover. */
export const ringInside = (ring: Outline, of: readonly Outline[]): Point[][] =>
	linesInside([closed(chorded(ring))], of);

/** Parts of a line that run outside of all the outlines. */
export const lineOutside = (line: readonly Point[], of: readonly Outline[]): Point[][] =>
	of.length === 0 ? [[...line]] : linesOutside([line], of);

/** Where a ring turns sharply: an edge shows there, along an arc none does. */
export function sharpCorners(ring: readonly Point[]): Point[] {
	return ring.filter((p, i) => {
		const [a, b] = [around(ring, i - 1), around(ring, i + 1)];
		const into = Math.atan2(p.y - a.y, p.x - a.x);
		const out = Math.atan2(b.y - p.y, b.x - p.x);
		const turn = Math.abs(((out - into + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
		return turn > SHARP;
	});
}

/** Radians; chords of the roundest arc drawn turn by less. */
const SHARP = 0.35;

/** Ticks to the millimetres of the view. */
export const inMm = (p: Point3): Point3 => scale3(p, 1 / TICKS_PER_MM);

export const NOWHERE: Point3 = { x: 0, y: 0, z: 0 };

/** A plane of a panel: it stands upright, its front towards the viewer. */
export const UPRIGHT: Raise = (p, height) => inMm({ x: p.x, y: -height, z: p.y });

/** A plane through `at` along `u` and `v`, heights along `n`; ticks. */
export function planeAlong(at: Point3, u: Point3, v: Point3, n: Point3): Raise {
	return (p, h) => inMm(add3(at, add3(scale3(u, p.x), add3(scale3(v, p.y), scale3(n, h)))));
}
