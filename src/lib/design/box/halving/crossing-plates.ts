import { common, type Outline, type Point, type Rect, rectangle, without } from '../../../geometry';
import type { Board } from '../board';
import { cross3, dot3, flat, p3, type Point3, raised, scale3 } from '../solid';

/*
 * Two flat boards that stand square to each other, each looked at along the line they cross on:
 * `x` runs along that line, `y` across it, square through the other board. Ticks, on the grid.
 */

/** One of the two, in that view. */
export interface Crossed {
	readonly board: Board;
	/** Both its faces, which are one where its edges are square, and what is cut out of it. */
	readonly faces: readonly [Outline, Outline];
	readonly open: readonly Outline[];
	/** Where the other one stands: from and to, across the line. */
	readonly band: readonly [number, number];
	/** A point of the view on the board's own face. */
	readonly home: (p: Point) => Point;
}

/** Two boards on the line they cross on, which runs along `axis`: to the right, back or up. */
export interface CrossingPair {
	readonly axis: keyof Point3;
	readonly pair: readonly [Crossed, Crossed];
}

/** How far from square two boards, or from an axis their line, may be. */
const SQUARE = 1e-9;

/** Two boards as they cross; null where they do not stand square to each other and to the box. */
export function crossingPair(a: Board, b: Board): CrossingPair | null {
	if (Math.abs(dot3(a.frame.n, b.frame.n)) > SQUARE) return null;
	const line = cross3(a.frame.n, b.frame.n);
	const axis = (['x', 'y', 'z'] as const).find((k) => 1 - Math.abs(line[k]) < SQUARE);
	if (!axis) return null;
	const along = scale3(line, Math.sign(line[axis]));
	return { axis, pair: [crossed(a, b, along), crossed(b, a, along)] };
}

function crossed(board: Board, other: Board, along: Point3): Crossed {
	const { frame, solid } = board;
	const n = other.frame.n;
	const across = scale3(n, Math.sign(n.x + n.y + n.z));
	const seen = (p: Point3): Point => ({
		x: Math.round(dot3(p, along)),
		y: Math.round(dot3(p, across)),
	});
	const through = [...other.solid.outside, ...other.solid.inside].map((p) => dot3(p, across));
	return {
		board,
		faces: [solid.outside.map(seen), solid.inside.map(seen)],
		open: board.holes.map((h) => h.outline.map((p) => seen(raised(p, frame)))),
		band: [Math.min(...through), Math.max(...through)],
		home: (p) => {
			const at = p3(0, 0, 0);
			const from = flat(at, frame);
			const [u, v] = [frame.u, frame.v];
			return {
				x: from.x + p.x * dot3(along, u) + p.y * dot3(across, u),
				y: from.y + p.x * dot3(along, v) + p.y * dot3(across, v),
			};
		},
	};
}

/** Wood of a face within a band across the line, and within a stretch of it. */
export function woodIn(
	{ faces, open }: Crossed,
	face: 0 | 1,
	band: readonly [number, number],
	[from, to]: readonly [number, number],
): Outline[] {
	const [low, high] = bandOnGrid(band);
	const x = Math.max(from, -FAR);
	const rect: Rect = { x, y: low, length: Math.min(to, FAR) - x, width: high - low };
	if (rect.length <= 0) return [];
	const strip = rectangle(rect.x, rect.y, rect.length, rect.width);
	const there = common([faces[face]], [strip]).map((r) => r.outline);
	return there.length === 0 ? [] : without(there, open).map((r) => r.outline);
}

/** A band on the grid outward; rounding noise must not cost a tick. */
export const bandOnGrid = ([low, high]: readonly [number, number]): readonly [number, number] => [
	Math.floor(low + HAIR),
	Math.ceil(high - HAIR),
];

const HAIR = 1e-3;

/** Past the end of any box, ticks. */
const FAR = 1e8;

/** Stretches of the line, from and to, in order; those that touch are one. */
export type LineStretch = readonly [number, number];

export function stretchesOf(outlines: readonly Outline[]): LineStretch[] {
	const each = outlines
		.map((o): LineStretch => {
			const x = o.map((p) => p.x);
			return [Math.min(...x), Math.max(...x)];
		})
		.sort((p, q) => p[0] - q[0]);
	const joined: LineStretch[] = [];
	for (const one of each) {
		const last = joined.at(-1);
		if (last && one[0] <= last[1]) joined[joined.length - 1] = [last[0], Math.max(last[1], one[1])];
		else joined.push(one);
	}
	return joined;
}

/** What two lists of stretches share, but for what only touches. */
export function sharedStretches(
	a: readonly LineStretch[],
	b: readonly LineStretch[],
): LineStretch[] {
	return a.flatMap((p) =>
		b.flatMap((q): LineStretch[] => {
			const [from, to] = [Math.max(p[0], q[0]), Math.min(p[1], q[1])];
			return to - from > TOUCH ? [[from, to]] : [];
		}),
	);
}

/** Boards that touch share no more than this, ticks. */
export const TOUCH = 4;
