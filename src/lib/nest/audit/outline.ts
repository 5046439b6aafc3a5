import { nth, around } from '../../measure';
import {
	common,
	commonArea,
	regionArea,
	bounds,
	perimeter,
	flatten,
	type Outline,
	type Point,
	type Rect,
	orient,
	rectangle,
	moved,
	turned,
} from '../../geometry';
import type { AuditFault, Placed } from '../types';

/**
 * Arcs are judged by chords that lie inside the true outline by no more than this, ticks: 0.005 mm.
 */
const AUDIT_FLAT = 8;

interface Shaped {
	readonly id: string;
	readonly length: number;
	readonly width: number;
	readonly outline?: Outline;
	readonly holes?: readonly Outline[];
}

interface Lying {
	readonly name: string;
	readonly box: Rect;
	readonly outline: Outline;
	readonly holes: readonly Outline[];
}

/**
 * Are the true outlines of laid pieces apart by `gap`? Straight edges on the grid are judged
 * exactly, arcs within twice {@link AUDIT_FLAT}. A piece may lie in a hole of another, with the
 * same gap. Shares nothing with the search.
 */
export function auditOutlines(
	placed: readonly Placed[],
	pieces: readonly Shaped[],
	gap: number,
	where = 'outlines',
): AuditFault[] {
	const lying = placed.flatMap((p) =>
		lyingOf(
			p,
			pieces.find((piece) => piece.id === p.id),
		),
	);
	lying.sort((a, b) => a.box.x - b.box.x);
	const faults: AuditFault[] = [];
	lying.forEach((a, i) => {
		for (let j = i + 1; j < lying.length; j++) {
			const b = nth(lying, j);
			if (b.box.x >= a.box.x + a.box.length + gap) break;
			const what = faultBetween(a, b, gap);
			if (what !== null) faults.push({ where, what: `${a.name} and ${b.name}: ${what}` });
		}
	});
	return faults;
}

/**
 * The outline of a laid piece where it lies: the outline turns with its length x width rectangle.
 */
function outlineAt(placed: Placed, piece: Shaped, outline: Outline): Outline {
	const { length, width } = piece;
	const shift = { 0: [0, 0], 90: [width, 0], 180: [length, width], 270: [0, length] }[placed.turn];
	return moved(turned(outline, placed.turn), placed.x + nth(shift, 0), placed.y + nth(shift, 1));
}

function lyingOf(placed: Placed, piece: Shaped | undefined): Lying[] {
	if (piece === undefined) return [];
	const own = piece.outline ?? rectangle(0, 0, piece.length, piece.width);
	const outline = flatten(outlineAt(placed, piece, own), AUDIT_FLAT, 'inward');
	const holes = (piece.holes ?? []).map((hole) =>
		flatten(outlineAt(placed, piece, hole), AUDIT_FLAT, 'outward'),
	);
	return [{ name: `${placed.id} (copy ${placed.copy})`, box: bounds(outline), outline, holes }];
}

function faultBetween(a: Lying, b: Lying, gap: number): string | null {
	if (boxGap(a.box, b.box) >= gap && boxGap(a.box, b.box) >= 0) return null;
	if (overlap(a, b)) return 'they overlap.';
	const least = nearest(a, b, gap);
	// A distance is a root: a tick of rounding must not condemn a layout that is exactly right.
	return least < gap - 1 ? `they lie ${Math.floor(least)} ticks apart, less than the gap.` : null;
}

/** How far two boxes are apart, 0 when they touch, negative when they overlap. */
function boxGap(a: Rect, b: Rect): number {
	const dx = Math.max(a.x - b.x - b.length, b.x - a.x - a.length);
	const dy = Math.max(a.y - b.y - b.width, b.y - a.y - a.width);
	return Math.max(dx, dy);
}

function overlap(a: Lying, b: Lying): boolean {
	const near = edgesNear(b, a.box, 0);
	if (edgesNear(a, b.box, 0).some(([p, q]) => near.some(([r, s]) => cross(p, q, r, s))))
		return true;
	if (boxGap(a.box, b.box) >= 0) return false;
	// No edges cross: one may still hold the other, outside its holes, or lap it edge upon edge.
	const shared = common([a.outline], [b.outline]);
	const all = shared.reduce((sum, region) => sum + regionArea(region), 0);
	const inHoles = (of: Lying, other: Lying): number =>
		of.holes.reduce((sum, hole) => sum + commonArea([hole], [other.outline]), 0);
	// A sliver a tick wide all along is rounding.
	const sliver = shared.reduce((sum, region) => sum + perimeter(region.outline), 0);
	return all - inHoles(a, b) - inHoles(b, a) > sliver;
}

/** The edges that come within a distance of a box: the others need no comparing. */
function edgesNear(of: Lying, box: Rect, within: number): [Point, Point][] {
	return edges(of).filter(
		([p, q]) =>
			Math.max(p.x, q.x) >= box.x - within &&
			Math.min(p.x, q.x) <= box.x + box.length + within &&
			Math.max(p.y, q.y) >= box.y - within &&
			Math.min(p.y, q.y) <= box.y + box.width + within,
	);
}

function edges(of: Lying): [Point, Point][] {
	return [of.outline, ...of.holes].flatMap((loop) =>
		loop.map((p, i): [Point, Point] => [p, around(loop, i + 1)]),
	);
}

function cross(p: Point, q: Point, r: Point, s: Point): boolean {
	if (Math.max(p.x, q.x) <= Math.min(r.x, s.x) || Math.max(r.x, s.x) <= Math.min(p.x, q.x))
		return false;
	if (Math.max(p.y, q.y) <= Math.min(r.y, s.y) || Math.max(r.y, s.y) <= Math.min(p.y, q.y))
		return false;
	return orient(p, q, r) * orient(p, q, s) < 0 && orient(r, s, p) * orient(r, s, q) < 0;
}

/** The least distance between edges, Infinity when all are farther apart than `within`. */
function nearest(a: Lying, b: Lying, within: number): number {
	let least = Infinity;
	if (within <= 0) return least;
	const near = edgesNear(b, a.box, within);
	for (const [p, q] of edgesNear(a, b.box, within))
		for (const [r, s] of near) {
			const dx = Math.max(
				Math.min(p.x, q.x) - Math.max(r.x, s.x),
				Math.min(r.x, s.x) - Math.max(p.x, q.x),
			);
			const dy = Math.max(
				Math.min(p.y, q.y) - Math.max(r.y, s.y),
				Math.min(r.y, s.y) - Math.max(p.y, q.y),
			);
			if (dx >= within || dy >= within) continue;
			least = Math.min(least, toEdge(p, r, s), toEdge(q, r, s), toEdge(r, p, q), toEdge(s, p, q));
		}
	return least;
}

function toEdge(p: Point, a: Point, b: Point): number {
	const dx = b.x - a.x;
	const dy = b.y - a.y;
	const square = dx * dx + dy * dy;
	const along = square === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / square;
	const t = Math.max(0, Math.min(1, along));
	return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
