import {
	arcOfEdge,
	area,
	bounds,
	cross,
	distance,
	type Edge,
	edgesOf,
	headingAt,
	lineLine,
	minus,
	dot,
	type Outline,
	type Point,
	type Rect,
	reversed,
} from '../../geometry';
import { around, nth } from '../../measure';

/** An outline as it is marked on a board: what square, compasses and rule can draw. */
export type OutlineForm =
	| { readonly kind: 'round'; readonly centre: Point; readonly diameter: number }
	/** Its sides run along those of the board; radii from the lower left corner, 0 for sharp. */
	| { readonly kind: 'rectangle'; readonly box: Rect; readonly radii: readonly number[] }
	/** Counter-clockwise from the lower left. */
	| { readonly kind: 'corners'; readonly corners: readonly FormCorner[] };

export interface FormCorner {
	/** Where its two sides meet, before it is rounded. */
	readonly at: Point;
	/** Of its rounding; 0 for a sharp corner. */
	readonly radius: number;
	/** The curve from here to the next corner; null for a straight side. */
	readonly curve: Curve | null;
}

interface Curve {
	readonly radius: number;
	/** How far it stands off the straight line between its ends; negative: into the shape. */
	readonly rise: number;
}

/** Two directions this little apart are one, radians: arcs end on whole ticks. */
const ALIKE = 0.02;
/** Ticks that centre and radius of one circle may be apart: 0.02 mm. */
const NEAR = 32;

/** How to mark an outline. Ticks. */
export function formOf(outline: Outline): OutlineForm {
	const ccw = area(outline) < 0 ? reversed(outline) : outline;
	const edges = withoutNeedless(edgesOf(ccw).filter((e) => distance(e.from, e.to) > 0));
	const round = roundOf(edges);
	if (round) return round;
	const corners = fromLowerLeft(cornersOf(edges));
	return rectangleOf(corners, bounds(outline)) ?? { kind: 'corners', corners };
}

/** An outline with the way it is marked. */
export const marked = (outline: Outline): { outline: Outline; form: OutlineForm } => ({
	outline,
	form: formOf(outline),
});

/** Straight edges that go on in one line are one. */
function withoutNeedless(edges: readonly Edge[]): Edge[] {
	const joined: Edge[] = [];
	for (const e of edges) {
		const last = joined.at(-1);
		if (last && goesOn(last, e)) joined[joined.length - 1] = { ...last, to: e.to };
		else joined.push(e);
	}
	const [first, last] = [nth(joined, 0), nth(joined, joined.length - 1)];
	if (joined.length < 3 || !goesOn(last, first)) return joined;
	return [{ ...first, from: last.from }, ...joined.slice(1, -1)];
}

/** Not a tick off the line from end to end. */
function goesOn(a: Edge, b: Edge): boolean {
	if (a.bulge !== 0 || b.bulge !== 0) return false;
	const whole = minus(b.to, a.from);
	const off = Math.abs(cross(whole, minus(a.to, a.from))) / Math.hypot(whole.x, whole.y);
	return off < 1 && dot(minus(a.to, a.from), minus(b.to, b.from)) > 0;
}

function roundOf(edges: readonly Edge[]): OutlineForm | null {
	const arcs = edges.map(arcOfEdge);
	const first = arcs[0];
	if (!first) return null;
	const alike = arcs.every(
		(a) =>
			a !== null &&
			distance(a.centre, first.centre) < NEAR &&
			Math.abs(a.radius - first.radius) < NEAR,
	);
	return alike ? { kind: 'round', centre: first.centre, diameter: 2 * first.radius } : null;
}

function cornersOf(edges: readonly Edge[]): FormCorner[] {
	const rounded = edges.map((_, i) => roundingAt(edges, i));
	return edges.flatMap((e, i): FormCorner[] => {
		const rounding = nth(rounded, i);
		if (rounding) return [rounding];
		if (around(rounded, i - 1)) return [];
		return [{ at: e.from, radius: 0, curve: curveOf(e) }];
	});
}

/** The corner that an arc rounds, if straight sides run into it and out of it. */
function roundingAt(edges: readonly Edge[], i: number): FormCorner | null {
	const e = nth(edges, i);
	const arc = arcOfEdge(e);
	const [before, after] = [around(edges, i - 1), around(edges, i + 1)];
	if (!arc || before.bulge !== 0 || after.bulge !== 0 || before === after) return null;
	const smooth =
		apart(headingAt(before, 1), headingAt(e, 0)) < ALIKE &&
		apart(headingAt(e, 1), headingAt(after, 0)) < ALIKE;
	if (!smooth || Math.abs(arc.sweep) > Math.PI - 0.1) return null;
	const at = lineLine(
		{ at: before.from, heading: headingAt(before, 0) },
		{ at: after.from, heading: headingAt(after, 0) },
	);
	return at && { at, radius: arc.radius, curve: null };
}

const apart = (a: Point, b: Point): number => Math.abs(Math.atan2(cross(a, b), dot(a, b)));

function curveOf(e: Edge): Curve | null {
	const arc = arcOfEdge(e);
	if (!arc) return null;
	// Sagitta: half the chord times the bulge, which is the tangent of a quarter of the sweep.
	return { radius: arc.radius, rise: (distance(e.from, e.to) / 2) * e.bulge };
}

function fromLowerLeft(corners: readonly FormCorner[]): FormCorner[] {
	const far = corners.map(({ at }) => at.x + at.y);
	const first = far.indexOf(Math.min(...far));
	return [...corners.slice(first), ...corners.slice(0, first)];
}

function rectangleOf(corners: readonly FormCorner[], box: Rect): OutlineForm | null {
	if (corners.length !== 4 || corners.some((c) => c.curve)) return null;
	const [right, top] = [box.x + box.length, box.y + box.width];
	const spots = [
		{ x: box.x, y: box.y },
		{ x: right, y: box.y },
		{ x: right, y: top },
		{ x: box.x, y: top },
	];
	const square = corners.every((c, i) => distance(c.at, nth(spots, i)) < 3);
	return square ? { kind: 'rectangle', box, radii: corners.map((c) => c.radius) } : null;
}
