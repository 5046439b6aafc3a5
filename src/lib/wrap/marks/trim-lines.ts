import { nth } from '../../measure';
import { type Point, between, distance, plus, times, headingAt } from '../../geometry';
import { foldLine, type Flap, type Climb, breaks, outOf, turnTo } from '../girth';

/**
 * The lines over the knife groove, where the cloth is trimmed once it is glued down: one for each
 * edge that has a groove.
 */
export function trimLines(flaps: readonly Flap[], climb: Climb): Point[][] {
	const n = flaps.length;
	const line = flaps.map((f) => f.span);
	return flaps.flatMap((flap, i) => {
		const beyond = flap.wall + flap.back;
		if (!flap.folds || flap.span.cloth.groove === null || beyond >= flap.total) return [];
		const before = nth(flaps, (i + n - 1) % n);
		const after = nth(flaps, (i + 1) % n);
		const moved = beside(flap, foldLine(line, i, climb), beyond);
		const cut = trimmed(
			moved,
			atCorner(flap, before, turnTo(before.span.arrives, flap.span.leaves)),
			atCorner(flap, after, turnTo(flap.span.arrives, after.span.leaves)),
		);
		return cut ? [cut] : [];
	});
}

/** A fold moved out over the back; on an arc each point goes out along its own radius. */
function beside(flap: Flap, fold: readonly Point[], by: number): Point[] {
	const parts = breaks(flap.span);
	return fold.map((p, k) => {
		const part = nth(parts, Math.min(k, parts.length - 1));
		return plus(p, times(outOf(headingAt(flap.span, part)), by));
	});
}

/**
 * How much of a trim line a corner takes away: on the back two flaps meet in a mitre, at an inside
 * corner in a slit.
 */
function atCorner(flap: Flap, neighbour: Flap, turn: number): number {
	if (!neighbour.folds) return 0;
	const tan = Math.tan(Math.min(Math.abs(turn), 2.6) / 2);
	return turn > 0 ? flap.back * tan : (flap.wall + flap.back) * tan;
}

/** A line shortened at both ends; null when nothing is left. */
function trimmed(line: readonly Point[], start: number, end: number): Point[] | null {
	const first = shorter(line, start);
	const both = first && shorter(first.reverse(), end);
	return both ? both.reverse() : null;
}

function shorter(line: readonly Point[], by: number): Point[] | null {
	let left = by;
	for (let i = 0; i + 1 < line.length; i++) {
		const d = distance(nth(line, i), nth(line, i + 1));
		if (d > left) return [between(nth(line, i), nth(line, i + 1), left / d), ...line.slice(i + 1)];
		left -= d;
	}
	return null;
}
