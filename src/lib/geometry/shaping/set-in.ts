import { nth, around } from '../../measure';
import { bulgeOf } from '../arc';
import { crossings, type Crossing } from '../meeting';
import { edgesOf, type Edge } from '../edge';
import { area } from '../extent';
import type { Corner, Outline, Point } from '../outline';
import { blendCurve, headingsAt, joint, setCurve, type SetCurve } from './set-curve';
import { corner } from '../turn';
import { between, distance, dot, minus, snapPoint } from '../vector';

/** What became of an edge that is not there any more. */
export interface GoneEdge {
	readonly edge: number;
	readonly why: 'radius' | 'length';
}

export interface SetOutline {
	/** Null when nothing is left. */
	readonly outline: Outline | null;
	/**
	 * For each edge of the result the edge it comes from, or null for a jog between two distances.
	 */
	readonly from: readonly (number | null)[];
	readonly gone: readonly GoneEdge[];
	/** Necks that closed: places where the moved edges cross. */
	readonly closed: readonly Crossing[];
}

/**
 * Move every edge of a counter-clockwise outline to its left by its own distance in ticks
 * (negative: outwards). Arcs stay arcs, their radii follow; edges that vanish are dropped and their
 * neighbours run on until they meet. A distance of null follows the neighbours: a rounding between
 * edges that differ goes smoothly from one to the other.
 */
export function setIn(outline: Outline, inward: readonly (number | null)[]): SetOutline {
	const edges = edgesOf(outline);
	const gone: GoneEdge[] = [];
	const ring = new MovedRing(curvesOf(edges, inward, gone), edges);
	for (;;) {
		if (ring.broken) return { outline: null, from: [], gone, closed: [] };
		const worst = ring.firstToVanish();
		if (worst === null) return finished(ring.curves, ring.joints, gone);
		gone.push({ edge: nth(ring.curves, worst).edge, why: 'length' });
		ring.drop(worst);
	}
}

/** All edges by the same distance. */
export function setInAll(outline: Outline, inward: number): SetOutline {
	return setIn(
		outline,
		outline.map(() => inward),
	);
}

function curvesOf(
	edges: readonly Edge[],
	inward: readonly (number | null)[],
	gone: GoneEdge[],
): SetCurve[] {
	const own = edges.map((e, i) => {
		const d = inward[i] ?? null;
		return d === null ? null : setCurve(e, i, d);
	});
	const curves: SetCurve[] = [];
	edges.forEach((e, i) => {
		const curve = (inward[i] ?? null) === null ? following(e, i, inward, own) : nth(own, i);
		if (curve) curves.push(curve);
		else gone.push({ edge: i, why: 'radius' });
	});
	return curves;
}

function following(
	e: Edge,
	i: number,
	inward: readonly (number | null)[],
	own: readonly (SetCurve | null)[],
): SetCurve | null {
	const n = inward.length;
	const before = own[(i + n - 1) % n] ?? null;
	const after = own[(i + 1) % n] ?? null;
	const least = before?.inward ?? after?.inward ?? 0;
	const most = after?.inward ?? least;
	if (before && after && least !== most && e.bulge !== 0) {
		if (before.line && after.line) return blendCurve(e, i, before, after);
	}
	return setCurve(e, i, Math.max(least, most));
}

type Joint = readonly [Point, Point];

/**
 * The moved edges in order, each with the joint after it and the moment it vanishes if all
 * distances grew in step. Where one is dropped only its neighbours are looked at again: of a long
 * outline whole stretches may go.
 */
class MovedRing {
	readonly joints: Joint[] = [];
	/** When each edge vanishes; Infinity for one that remains. */
	private readonly when: number[] = [];
	/** Two edges do not meet, or there is only one left: nothing can be made of it. */
	broken = false;

	constructor(
		readonly curves: SetCurve[],
		private readonly edges: readonly Edge[],
	) {
		if (curves.length < 2) this.broken = true;
		for (let k = 0; k < curves.length && !this.broken; k++) this.join(k);
		for (let k = 0; k < curves.length && !this.broken; k++) this.look(k);
	}

	firstToVanish(): number | null {
		let worst: number | null = null;
		let soonest = Infinity;
		this.when.forEach((when, k) => {
			if (when < soonest) [worst, soonest] = [k, when];
		});
		return worst;
	}

	drop(k: number): void {
		for (const list of [this.curves, this.joints, this.when]) list.splice(k, 1);
		const n = this.curves.length;
		if (n < 2) this.broken = true;
		const before = (k + n - 1) % n;
		if (!this.broken) this.join(before);
		if (this.broken) return;
		this.look(before);
		this.look(k % n);
	}

	private join(k: number): void {
		const a = nth(this.curves, k);
		const b = around(this.curves, k + 1);
		const adjacent = (a.edge + 1) % this.edges.length === b.edge;
		const headings = adjacent ? headingsAt(nth(this.edges, a.edge), nth(this.edges, b.edge)) : null;
		const at = joint(a, b, adjacent ? a.to : between(a.to, b.from, 0.5), headings);
		if (at) this.joints[k] = at;
		else this.broken = true;
	}

	private look(k: number): void {
		const n = this.curves.length;
		const start = nth(this.joints, (k + n - 1) % n)[1];
		const [before, after] = lengths(nth(this.curves, k), start, nth(this.joints, k)[0]);
		this.when[k] = after > 0 ? Infinity : before / (before - after);
	}
}

/** Original length and the length now, negative when the edge would have to run backwards. */
function lengths(c: SetCurve, start: Point, end: Point): readonly [number, number] {
	if (c.line) return [distance(c.from, c.to), dot(minus(end, start), c.line.heading)];
	const { radius } = circleOf(c);
	return [radius * Math.abs(c.sweep), radius * newSweep(c, start, end) * Math.sign(c.sweep)];
}

/** The circle of a curve that is no line. */
function circleOf({ circle }: SetCurve): NonNullable<SetCurve['circle']> {
	if (!circle) throw new Error('bug: a line has no circle');
	return circle;
}

/** The sweep between two points on the circle, taken as the one nearest to what it was. */
function newSweep(c: SetCurve, start: Point, end: Point): number {
	const { centre } = circleOf(c);
	const raw =
		Math.atan2(end.y - centre.y, end.x - centre.x) -
		Math.atan2(start.y - centre.y, start.x - centre.x);
	const turn = 2 * Math.PI;
	return raw + Math.round((c.sweep - raw) / turn) * turn;
}

function newBulge(c: SetCurve, start: Point, end: Point): number {
	const sweep = newSweep(c, start, end);
	return Math.abs(sweep - c.sweep) < 1e-9 ? c.bulge : bulgeOf(sweep);
}

function finished(
	curves: readonly SetCurve[],
	joints: readonly Joint[],
	gone: readonly GoneEdge[],
): SetOutline {
	const corners: Corner[] = [];
	const from: (number | null)[] = [];
	for (const [k, c] of curves.entries()) {
		const start = nth(joints, (k + curves.length - 1) % curves.length)[1];
		const [end, next] = nth(joints, k);
		corners.push(corner(snapPoint(start), c.circle ? newBulge(c, start, end) : 0));
		from.push(c.edge);
		if (distance(end, next) >= 1) {
			corners.push(corner(snapPoint(end)));
			from.push(null);
		}
	}
	if (area(corners) <= 0) return { outline: null, from: [], gone, closed: [] };
	return { outline: corners, from, gone, closed: crossings(corners) };
}
