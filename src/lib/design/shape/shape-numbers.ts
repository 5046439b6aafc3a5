import { around, lastOf, nth, type Ruler } from '../../measure';
import {
	arcsAlong,
	ellipse,
	bulgeThrough,
	distance,
	cutCorner,
	takenBy,
	type CornerShape,
	corner,
	circle,
	rectangle,
	type Corner,
	type Outline,
	type Point,
} from '../../geometry';
import type { OutlineShape } from '../../job';
import { drawn, refused, upright, type Drawn, type Undrawn } from './drawn';
import { sayRough } from './words';

/* Outlines given by numbers. */

type Of<K extends OutlineShape['kind']> = Extract<OutlineShape, { kind: K }>;

/** Curves are followed to 0.02 mm: below what paper or router can show. */
const FINE = 32;

export function rectangleShape(s: Of<'rectangle'>, ruler: Ruler): Drawn | Undrawn {
	return cutCorners(
		rectangle(0, 0, s.length, s.width),
		[0, 1, 2, 3].map(() => s.corners),
		ruler,
	);
}

export function trapezoidShape(s: Of<'trapezoid'>, ruler: Ruler): Drawn | Undrawn {
	const points = [
		{ x: 0, y: 0 },
		{ x: s.bottom, y: 0 },
		{ x: s.shift + s.top, y: s.height },
		{ x: s.shift, y: s.height },
	];
	return cutCorners(
		points,
		points.map(() => s.corners),
		ruler,
	);
}

export function polylineShape(s: Of<'polyline'>, ruler: Ruler): Drawn | Undrawn {
	return cutCorners(
		s.points,
		s.points.map((p) => p.cut),
		ruler,
	);
}

export function circleShape(s: Of<'circle'>): Drawn {
	// Half of an odd number of ticks does not exist; the half tick is far below anything measured.
	return { outline: circle(0, 0, Math.round(s.diameter / 2)), sides: [1, 1], complaints: [] };
}

export function ovalShape(s: Of<'oval'>): Drawn {
	const [a, b] = [Math.round(s.length / 2), Math.round(s.width / 2)];
	if (a === b) return { outline: circle(0, 0, a), sides: [1, 1], complaints: [] };
	if (s.ends === 'ellipse') {
		const curve = ellipse({ x: 0, y: 0 }, { x: a, y: 0 }, b / a);
		const outline = onGrid(arcsAlong(curve, FINE, 4));
		return { outline, sides: outline.map(() => 1), complaints: [] };
	}
	return drawn(a > b ? lyingSlot(a, b) : standingSlot(a, b));
}

function lyingSlot(a: number, b: number): Outline {
	const c = a - b;
	return [
		corner({ x: -c, y: -b }),
		corner({ x: c, y: -b }, 1),
		corner({ x: c, y: b }),
		corner({ x: -c, y: b }, 1),
	];
}

function standingSlot(a: number, b: number): Outline {
	const c = b - a;
	return [
		corner({ x: a, y: -c }),
		corner({ x: a, y: c }, 1),
		corner({ x: -a, y: c }),
		corner({ x: -a, y: -c }, 1),
	];
}

export function cornersShape(s: Of<'corners'>): Drawn {
	return drawn(
		s.corners.map((c, i) => {
			const next = around(s.corners, i + 1);
			return corner(c, c.through ? bulgeThrough(c, c.through, next) : c.bulge);
		}),
	);
}

export function onGrid(corners: readonly Corner[]): Outline {
	return corners.map((c) => corner({ x: Math.round(c.x), y: Math.round(c.y) }, c.bulge));
}

/**
 * An outline with its corners rounded or cut off; refused when two cuts want the same stretch of an
 * edge, or one a stretch of an arc.
 */
export function cutCorners(
	points: readonly Corner[],
	cuts: readonly CornerShape[],
	ruler: Ruler,
): Drawn | Undrawn {
	const n = points.length;
	const at = (i: number): Point => nth(points, (i + n) % n);
	const curved = points.findIndex((p, i) => cuts[i] && (p.bulge || around(points, i - 1).bulge));
	if (curved >= 0) return meetsCurve(curved);
	const taken = points.map((p, i) => takenBy(cuts[i] ?? null, at(i - 1), p, at(i + 1)));
	for (const [i, p] of points.entries()) {
		const wanted = nth(taken, i) + nth(taken, (i + 1) % n);
		const there = distance(p, at(i + 1));
		if (wanted > there + 2) return tooLarge(i, { wanted, there }, ruler);
	}
	const outline: Corner[] = [];
	const sides: (number | null)[] = [];
	for (const [i, p] of points.entries()) {
		const made = cutCorner(cuts[i] ?? null, at(i - 1), p, at(i + 1));
		outline.push(...made.slice(0, -1), corner(lastOf(made), p.bulge));
		sides.push(...(made.length === 2 ? [null, i + 1] : [i + 1]));
	}
	return upright(...used(outline, sides));
}

/** Where two roundings use up an edge between them, the edge has no length and is left out. */
function used(
	outline: readonly Corner[],
	sides: readonly (number | null)[],
): [Outline, (number | null)[]] {
	const keep = outline.map((c, i) => distance(c, around(outline, i + 1)) > 2);
	return [outline.filter((_, i) => keep[i]), sides.filter((_, i) => keep[i])];
}

const meetsCurve = (i: number): Undrawn =>
	refused(
		`Corner ${i + 1} meets a curved side: only a corner between two straight sides is rounded or cut off.`,
		'Leave the corner as it is, or mark its rounding as a curve.',
	);

function tooLarge(
	i: number,
	{ wanted, there }: { readonly wanted: number; readonly there: number },
	ruler: Ruler,
): Undrawn {
	return refused(
		`The roundings at both ends of edge ${i + 1} take ${sayRough(wanted, ruler)} of it, and it is ${sayRough(there, ruler)} long.`,
		`Make the radii or chamfers at corners ${i + 1} and ${i + 2} smaller.`,
	);
}
