import type { Corner, Point } from '../outline';
import { corner } from '../turn';
import { cross, dot, minus, plus, snapPoint, times, unit } from '../vector';

/** What a corner between two straight edges is to become. */
export type CornerShape = { readonly radius: number } | { readonly chamfer: number } | null;

/** How much of each edge at a corner the cut takes away, ticks. */
export function takenBy(cut: CornerShape, before: Point, at: Point, after: Point): number {
	if (!cut) return 0;
	if ('chamfer' in cut) return cut.chamfer;
	const turn = turnAt(before, at, after);
	return cut.radius * Math.tan(Math.abs(turn) / 2);
}

/** Angle the outline turns by at a corner, radians, positive to the left. */
function turnAt(before: Point, at: Point, after: Point): number {
	const into = minus(at, before);
	const out = minus(after, at);
	return Math.atan2(cross(into, out), dot(into, out));
}

/**
 * The corner, or the two corners of its rounding (the first with the bulge) or chamfer, on the
 * grid.
 */
export function cutCorner(
	cut: CornerShape,
	before: Point,
	at: Point,
	after: Point,
): readonly Corner[] {
	const taken = takenBy(cut, before, at, after);
	if (!cut || taken === 0) return [corner(at)];
	const start = snapPoint(plus(at, times(unit(minus(before, at)), taken)));
	const end = snapPoint(plus(at, times(unit(minus(after, at)), taken)));
	const bulge = 'radius' in cut ? Math.tan(turnAt(before, at, after) / 4) : 0;
	return [corner(start, bulge), corner(end)];
}
