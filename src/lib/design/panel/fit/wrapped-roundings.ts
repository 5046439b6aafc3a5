import { nth } from '../../../measure';
import {
	bulgeOf,
	arcOfEdge,
	cornerAt,
	type Edge,
	lineCircle,
	type Circle,
	type Corner,
	type Outline,
	type Point,
	type SetOutline,
	corner,
	minus,
	snapPoint,
	unit,
} from '../../../geometry';

/**
 * Cloth on the edges of the opening, ticks; `null` marks a rounding, which is wrapped where a
 * neighbour is.
 */
type Cloths = readonly (number | null)[];

/**
 * The finished outline with its roundings as the cloth makes them. A rounding between a wrapped
 * edge and another is wrapped all along, so it stands a whole cloth out from the board's own
 * rounding and ends where it runs into the line of the other edge. The tape laid across a panel
 * measures that, not an arc that touches both finished edges.
 */
export function wrapRoundings(board: SetOutline, finished: SetOutline, cloths: Cloths): Outline {
	const { outline } = board;
	if (!outline || !finished.outline) throw new Error('bug: roundings of no outline');
	const corners: Corner[] = [...finished.outline];
	finished.from.forEach((k, i) => {
		if (k === null || (cloths[k] ?? null) !== null) return;
		const [before, after] = [besides(cloths, k, -1), besides(cloths, k, 1)];
		const j = board.from.indexOf(k);
		if (before === after || j < 0 || !sameNeighbours(board.from, j, finished.from, i)) return;
		const round = arcOfEdge(edgeAt(outline, j));
		if (!round || round.sweep < 0) return;
		const circle = { centre: round.centre, radius: round.radius + Math.max(before, after) };
		put(corners, i, circle);
	});
	return corners;
}

/** Cloth on the next edge of the opening that is no rounding. */
function besides(cloths: Cloths, k: number, by: 1 | -1): number {
	const n = cloths.length;
	for (let i = 1; i < n; i++) {
		const cloth = cloths[(k + by * i + i * n) % n];
		if (typeof cloth === 'number') return cloth;
	}
	return 0;
}

function sameNeighbours(
	a: readonly (number | null)[],
	i: number,
	b: readonly (number | null)[],
	j: number,
): boolean {
	const at = (list: readonly (number | null)[], k: number) => list[(k + list.length) % list.length];
	return at(a, i - 1) === at(b, j - 1) && at(a, i + 1) === at(b, j + 1);
}

function edgeAt(outline: Outline, i: number): Edge {
	const from = cornerAt(outline, i);
	return { from, to: cornerAt(outline, i + 1), bulge: from.bulge ?? 0 };
}

/**
 * Puts the rounding at corner `i` on the circle given, between the straight edges before and after
 * it.
 */
function put(corners: Corner[], i: number, circle: Circle): void {
	const [before, after] = [edgeAt(corners, i - 1), edgeAt(corners, i + 1)];
	if (before.bulge !== 0 || after.bulge !== 0) return;
	const start = farthest(before, circle);
	const end = farthest({ ...after, from: after.to, to: after.from }, circle);
	if (!start || !end) return;
	const angle = (p: Point): number => Math.atan2(p.y - circle.centre.y, p.x - circle.centre.x);
	const sweep = (angle(end) - angle(start) + 4 * Math.PI) % (2 * Math.PI);
	const next = (i + 1) % corners.length;
	corners[i] = corner(snapPoint(start), bulgeOf(sweep));
	corners[next] = corner(snapPoint(end), nth(corners, next).bulge);
}

/** Where a straight edge, run on, leaves the circle. */
function farthest(e: Edge, circle: Circle): Point | undefined {
	const line = { at: e.from, heading: unit(minus(e.to, e.from)) };
	return lineCircle(line, circle, SLACK).at(-1);
}

/**
 * Corners of a board lie on the grid, so its circle may miss the line it touches by a few ticks.
 */
const SLACK = 8;
