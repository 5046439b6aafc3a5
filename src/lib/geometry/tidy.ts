import { area } from './extent';
import { cornerAt } from './edge';
import { orient } from './orient';
import type { Outline } from './outline';
import { corner, wound } from './turn';
import { distance, dot, minus } from './vector';

/** What was put right in an outline, to be told to the person. */
export interface Tidied {
	readonly outline: Outline;
	readonly doubled: number;
	readonly slivers: number;
	readonly straight: number;
	readonly turnedRound: boolean;
}

/**
 * An outline cleaned of doubled corners (nearer than `nearest` ticks), of slivers (spikes thinner than that) and of
 * corners on a straight run, wound counter-clockwise. Never adds or moves a corner.
 */
export function tidy(outline: Outline, nearest = 16): Tidied {
	const single = withoutDoubled(outline, nearest);
	let current = single;
	let slivers = 0;
	let straight = 0;
	for (let i = 0; i < current.length && current.length > 3;) {
		const why = needless(current, i, nearest);
		if (!why) i++;
		else {
			if (why === 'sliver') slivers++;
			else straight++;
			current = withoutDoubled(
				current.filter((_, k) => k !== i),
				why === 'sliver' ? nearest : 0,
			);
			i = Math.max(0, i - 2);
		}
	}
	return {
		outline: wound(current),
		doubled: outline.length - single.length,
		slivers,
		straight,
		turnedRound: area(current) < 0,
	};
}

function withoutDoubled(outline: Outline, nearest: number): Outline {
	const kept = outline.filter((c, i) => {
		const next = cornerAt(outline, i + 1);
		// An arc of nearly a whole turn starts and ends at neighbouring points and is no doubled corner.
		return Math.abs(c.bulge ?? 0) > 1 || distance(c, next) > nearest;
	});
	return kept.length >= 2 ? kept : outline;
}

/** Why the corner between two straight edges is not needed, or null when it is. */
function needless(outline: Outline, i: number, nearest: number): 'sliver' | 'straight' | null {
	const before = cornerAt(outline, i - 1);
	const at = cornerAt(outline, i);
	const after = cornerAt(outline, i + 1);
	if ((before.bulge ?? 0) !== 0 || (at.bulge ?? 0) !== 0) return null;
	const back = dot(minus(before, at), minus(after, at)) > 0;
	if (orient(before, at, after) === 0) return back ? 'sliver' : 'straight';
	if (!back) return null;
	const reach = Math.min(distance(before, at), distance(after, at));
	const short = distance(before, at) < distance(after, at) ? before : after;
	const long = short === before ? after : before;
	const off = Math.abs((long.x - at.x) * (short.y - at.y) - (long.y - at.y) * (short.x - at.x));
	return reach > 0 && off / distance(at, long) < nearest ? 'sliver' : null;
}

/** A rectangle as an outline, corner at x, y. */
export function rectangle(x: number, y: number, length: number, width: number): Outline {
	return [
		corner({ x, y }),
		corner({ x: x + length, y }),
		corner({ x: x + length, y: y + width }),
		corner({ x, y: y + width }),
	];
}

/** A circle as two half turns. */
export function circle(x: number, y: number, radius: number): Outline {
	return [corner({ x: x - radius, y }, 1), corner({ x: x + radius, y }, 1)];
}
