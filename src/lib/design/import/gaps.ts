import { lastOf, nth, type Ruler } from '../../measure';
import { distance, type Corner, type Point } from '../../geometry';
import { sayRough } from '../shape';
import type { DrawingFile } from './drawing-file';

/** Loose ends compared with each other: more are never mended by hand. */
const MOST_ENDS = 400;
/** Gaps that are named. */
const NAMED = 3;

/**
 * The narrowest gaps between loose ends, in words: how wide, and where both ends lie as the drawing
 * itself counts. `ticks`: one unit of the drawing.
 */
export function gapsBetween(
	open: readonly (readonly Corner[])[],
	file: Pick<DrawingFile, 'yDown'>,
	{ ticks, ruler }: { readonly ticks: number; readonly ruler: Ruler },
): string {
	const ends = open.slice(0, MOST_ENDS / 2).flatMap((run) => [nth(run, 0), lastOf(run)]);
	const gaps = ends.flatMap((end, i) => {
		const other = nearestTo(end, i, ends);
		const back = nearestTo(nth(ends, other), other, ends);
		// Both are each other's nearest: told once.
		return back === i && other < i ? [] : [leftFirst(end, nth(ends, other))];
	});
	const wide = gaps
		.map((g) => ({ ...g, gap: distance(g.from, g.to) }))
		.sort((a, b) => a.gap - b.gap)
		.slice(0, NAMED);
	const at = (p: Point): string => `${short(p.x)}, ${short(file.yDown ? -p.y : p.y)}`;
	return wide
		.map(
			(g) =>
				`a gap of ${sayRough(g.gap * ticks, ruler)} from ${at(g.from)} to ${at(g.to)} in the drawing`,
		)
		.join('; ');
}

function leftFirst(a: Point, b: Point): { readonly from: Point; readonly to: Point } {
	return a.x < b.x || (a.x === b.x && a.y < b.y) ? { from: a, to: b } : { from: b, to: a };
}

function nearestTo(end: Point, i: number, ends: readonly Point[]): number {
	let best = i === 0 ? 1 : 0;
	for (const [j, other] of ends.entries())
		if (j !== i && distance(end, other) < distance(end, nth(ends, best))) best = j;
	return best;
}

/** A place in the drawing's own unit, as short as a person can find it by; never minus nothing. */
const short = (n: number): number => Number(n.toPrecision(6)) + 0;
