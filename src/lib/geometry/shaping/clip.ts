import {
	Clipper,
	Clipper64,
	ClipType,
	EndType,
	FillRule,
	JoinType,
	PolyTree64,
	type Path64,
	type PolyPath64,
} from 'clipper2-ts';
import { flatten } from '../flatten';
import type { Outline, Point } from '../outline';

/*
 * The one file the polygon clipping library enters through. It works on straight edges on the grid;
 * outlines with arcs are flattened first, to the tolerance given (ticks).
 */

/** A flat area: its outline and the holes in it, all counter-clockwise. */
export interface Region {
	readonly outline: Outline;
	readonly holes: readonly Outline[];
}

/** 0.05 mm: finer than any saw, coarse enough for a few dozen corners on a rounding. */
export const FLAT = 80;

const path = (o: Outline, tolerance: number): Path64 =>
	flatten(o, tolerance).map((p) => ({ x: p.x, y: p.y }));
const paths = (list: readonly Outline[], tolerance: number): Path64[] =>
	list.map((o) => path(o, tolerance));

function regions(type: ClipType, a: Path64[], b: Path64[]): Region[] {
	const tree = new PolyTree64();
	Clipper.booleanOpWithPolyTree(type, a, b, tree, FillRule.NonZero);
	const found: Region[] = [];
	collect(tree, found);
	return found;
}

function collect(node: PolyPath64, found: Region[]): void {
	for (let i = 0; i < node.count; i++) {
		const outer = node.child(i);
		const holes: Outline[] = [];
		for (let k = 0; k < outer.count; k++) {
			const hole = outer.child(k);
			holes.push(plain(hole.poly ?? []).reverse());
			collect(hole, found);
		}
		found.push({ outline: plain(outer.poly ?? []), holes });
	}
}

/** The library's points carry a height, which is none of ours. */
function plain(path: Path64): Point[] {
	return path.map(({ x, y }) => ({ x, y }));
}

/** Everything covered by any of the outlines. */
export function union(of: readonly Outline[], tolerance = FLAT): Region[] {
	return regions(ClipType.Union, paths(of, tolerance), []);
}

/** What the outlines `a` cover and those of `b` do not. */
export function without(a: readonly Outline[], b: readonly Outline[], tolerance = FLAT): Region[] {
	return regions(ClipType.Difference, paths(a, tolerance), paths(b, tolerance));
}

/** What both lists cover. */
export function common(a: readonly Outline[], b: readonly Outline[], tolerance = FLAT): Region[] {
	return regions(ClipType.Intersection, paths(a, tolerance), paths(b, tolerance));
}

/** Area both lists cover, square ticks. */
export function commonArea(a: readonly Outline[], b: readonly Outline[]): number {
	return common(a, b).reduce((sum, r) => sum + regionArea(r), 0);
}

export function regionArea(r: Region): number {
	const holes = r.holes.reduce((sum, h) => sum + Math.abs(Clipper.area([...h])), 0);
	return Math.abs(Clipper.area([...r.outline])) - holes;
}

/**
 * The outlines grown by `by` ticks all round (negative: shrunk), corners rounded or run out to a
 * point.
 */
export function grown(
	of: readonly Outline[],
	by: number,
	corners: 'round' | 'sharp' = 'round',
	tolerance = FLAT,
): Region[] {
	const join = corners === 'round' ? JoinType.Round : JoinType.Miter;
	const wide = Clipper.inflatePaths(
		paths(of, tolerance),
		by,
		join,
		EndType.Polygon,
		4,
		tolerance / 2,
	);
	return regions(ClipType.Union, wide, []);
}

/** The stretches of open lines that lie outside all of the outlines. */
export function linesOutside(
	lines: readonly (readonly Point[])[],
	of: readonly Outline[],
): Point[][] {
	return openLines(ClipType.Difference, lines, of);
}

/** The stretches of open lines that lie inside one of the outlines. */
export function linesInside(
	lines: readonly (readonly Point[])[],
	of: readonly Outline[],
): Point[][] {
	return openLines(ClipType.Intersection, lines, of);
}

function openLines(
	type: ClipType,
	lines: readonly (readonly Point[])[],
	of: readonly Outline[],
): Point[][] {
	const clipper = new Clipper64();
	clipper.addOpenSubject(lines.map((line) => line.map((p) => ({ x: p.x, y: p.y }))));
	clipper.addClip(paths(of, FLAT));
	const open: Path64[] = [];
	clipper.execute(type, FillRule.NonZero, [], open);
	return open.map(plain);
}
