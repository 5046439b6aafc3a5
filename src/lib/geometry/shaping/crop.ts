import { lastOf } from '../../measure';
import type { Outline, Point, Rect } from '../outline';

/**
 * The same area as far as a box shows it, with fewer corners: a run of corners all on one outer
 * side of the box is shortened to its ends. Inside the box nothing changes by a hair. For outlines
 * without arcs.
 */
export function cropped(outline: Outline, box: Rect): Outline {
	const kept: Point[] = [];
	const sides: number[] = [];
	const first = outline[0];
	if (!first) return outline;
	let side = beyond(first, box);
	outline.forEach((p, i) => {
		const next = beyond(outline[i + 1] ?? first, box);
		// The edges on both sides of this corner and the straight way past it lie beyond one side
		// of the box.
		if (kept.length === 0 || (lastOf(sides) & side & next) === 0) {
			kept.push(p);
			sides.push(side);
		}
		side = next;
	});
	return kept;
}

/** Beyond which sides of the box a point lies, as bits: left, right, below, above. */
function beyond(p: Point, box: Rect): number {
	return (
		(p.x < box.x ? 1 : 0) |
		(p.x > box.x + box.length ? 2 : 0) |
		(p.y < box.y ? 4 : 0) |
		(p.y > box.y + box.width ? 8 : 0)
	);
}
