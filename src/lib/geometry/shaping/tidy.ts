import { nth } from '../../measure';
import { area } from '../extent';
import { cornerAt } from '../edge';
import { orient } from '../orient';
import type { Corner, Outline } from '../outline';
import { corner, wound } from '../turn';
import { distance, dot, minus } from '../vector';

/** What was put right in an outline, to be told to the person. */
export interface Tidied {
	readonly outline: Outline;
	readonly doubled: number;
	readonly slivers: number;
	readonly straight: number;
	readonly turnedRound: boolean;
}

/**
 * An outline cleaned of doubled corners (nearer than `nearest` ticks), of slivers (spikes thinner
 * than that) and of corners on a straight run, wound counter-clockwise. Never adds or moves a
 * corner.
 */
export function tidy(outline: Outline, nearest = 16): Tidied {
	const single = withoutDoubled(outline, nearest);
	const ring = new Ring(single);
	let slivers = 0;
	let straight = 0;
	// Taking a corner out may make its neighbours needless in turn: they are looked at again.
	const look = single.map((_, i) => single.length - 1 - i);
	for (let i = look.pop(); i !== undefined; i = look.pop()) {
		const why = ring.has(i) && ring.size > 3 ? needless(ring, i, nearest) : null;
		if (!why) continue;
		if (why === 'straight') straight++;
		else if (why === 'sliver') slivers++;
		look.push(...ring.remove(i));
	}
	const current = ring.outline();
	return {
		outline: wound(current),
		doubled: outline.length - single.length,
		slivers,
		straight,
		turnedRound: area(current) < 0,
	};
}

/** An outline from which corners are taken one by one, each at no cost. */
class Ring {
	private readonly next: number[];
	private readonly previous: number[];
	private readonly there: boolean[];
	size: number;

	constructor(private readonly corners: Outline) {
		const n = corners.length;
		this.next = corners.map((_, i) => (i + 1) % n);
		this.previous = corners.map((_, i) => (i + n - 1) % n);
		this.there = corners.map(() => true);
		this.size = n;
	}

	has(i: number): boolean {
		return this.there[i] === true;
	}

	/** The corner before, at and after i. */
	around(i: number): readonly [Corner, Corner, Corner] {
		return [
			nth(this.corners, nth(this.previous, i)),
			nth(this.corners, i),
			nth(this.corners, nth(this.next, i)),
		];
	}

	/** Takes corner i out and returns its neighbours. */
	remove(i: number): readonly [number, number] {
		const [before, after] = [nth(this.previous, i), nth(this.next, i)];
		this.next[before] = after;
		this.previous[after] = before;
		this.there[i] = false;
		this.size--;
		return [before, after];
	}

	outline(): Outline {
		return this.corners.filter((_, i) => this.there[i]);
	}
}

function withoutDoubled(outline: Outline, nearest: number): Outline {
	const kept = outline.filter((c, i) => {
		const next = cornerAt(outline, i + 1);
		// An arc of nearly a whole turn starts and ends at neighbouring points and is no doubled
		// corner.
		return Math.abs(c.bulge ?? 0) > 1 || distance(c, next) > nearest;
	});
	return kept.length >= 2 ? kept : outline;
}

/** Why a corner is not needed, or null when it is. Corners of arcs always are. */
function needless(
	ring: Ring,
	i: number,
	nearest: number,
): 'sliver' | 'straight' | 'doubled' | null {
	const [before, at, after] = ring.around(i);
	if ((before.bulge ?? 0) !== 0 || (at.bulge ?? 0) !== 0) return null;
	// Left over where a spike was taken off.
	if (distance(at, after) <= nearest) return 'doubled';
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
