import { nth, ticks } from '../../measure';
import type { Covering } from '../../design';
import { common, boundsOfPoints, area, flatten, type Point } from '../../geometry';
import { heightsBetween, levelLines, risingEdges, type Rising } from './level-lines';
import { CHORD_ERROR } from './span';

/*
 * The tape laid over the steps. Along any line across the panel the cloth climbs every step it
 * meets, up and down, so it has to be longer than the panel by the sum of those heights. The cloth
 * is laid from the largest layer outwards, and what the longest line needs is shared out to both
 * sides as it is climbed there.
 */

/** What the cloth climbs on each side of where it is laid first, in ticks. */
export interface Climb {
	readonly left: number;
	readonly right: number;
	readonly down: number;
	readonly up: number;
}

/** A panel without steps. */
export const STILL: Climb = { left: 0, right: 0, down: 0, up: 0 };

/**
 * Where the edge of the cloth moves because of the steps, at an edge whose outward normal is `n`.
 */
export function shift(climb: Climb, n: Point): Point {
	return {
		x: n.x > 1e-9 ? climb.right : n.x < -1e-9 ? -climb.left : 0,
		y: n.y > 1e-9 ? climb.up : n.y < -1e-9 ? -climb.down : 0,
	};
}

/**
 * The same for what is drawn: near an axis it passes smoothly from one side to the other, so that
 * the fold of a curved edge does not jump. Never more than {@link shift}.
 */
export function smoothShift(climb: Climb, n: Point): Point {
	const whole = shift(climb, n);
	return { x: whole.x * eased(n.x), y: whole.y * eased(n.y) };
}

/** Within 17 degrees of an axis the shift along it fades out. */
const eased = (part: number): number => Math.min(1, Math.abs(part) / 0.3);

/** A cloth laid over the steps of a panel. */
export interface LaidCloth {
	readonly climb: Climb;
	/**
	 * How far a point of the panel moves on the flat cloth: what is climbed on the way to it from
	 * where the cloth is laid first.
	 */
	moved(p: Point): Point;
}

export function layOver(covering: Pick<Covering, 'outline' | 'steps'>): LaidCloth {
	if (covering.steps.length === 0) return { climb: STILL, moved: () => ({ x: 0, y: 0 }) };
	const wide = scan(covering);
	const high = upright(wide);
	const [left, right] = mostClimbed(wide);
	const [down, up] = mostClimbed(high);
	return {
		climb: { left, right, down, up },
		moved: (p) => ({ x: climbedTo(wide, p), y: climbedTo(high, swapped(p)) }),
	};
}

/** A panel to be crossed by level lines: the board first, then what of each layer lies on it. */
interface Scan {
	readonly rings: readonly { readonly points: readonly Point[]; readonly height: number }[];
	readonly edges: readonly Rising[];
	readonly middle: Point;
}

function scan(covering: Pick<Covering, 'outline' | 'steps'>): Scan {
	const board = flatten(covering.outline, CHORD_ERROR);
	const steps = covering.steps.flatMap((s) =>
		common([s.outline], [board], CHORD_ERROR).map((r) => ({ points: r.outline, height: s.height })),
	);
	const b = boundsOfPoints(largest(steps.map((s) => s.points)) ?? board);
	const middle = { x: b.x + b.length / 2, y: b.y + b.width / 2 };
	const rings = [{ points: board, height: ticks(0) }, ...steps];
	return { rings, edges: risingEdges(rings), middle };
}

function largest(outlines: readonly (readonly Point[])[]): readonly Point[] | undefined {
	return [...outlines].sort((a, b) => area(b) - area(a))[0];
}

const swapped = (p: Point): Point => ({ x: p.y, y: p.x });

/** The same panel laid on its side: level lines then run up the panel. */
function upright(s: Scan): Scan {
	const rings = s.rings.map((r) => ({ ...r, points: r.points.map(swapped) }));
	return { rings, edges: risingEdges(rings), middle: swapped(s.middle) };
}

/** The most a level line climbs within the board, shared out to both sides of the middle. */
function mostClimbed(s: Scan): [number, number] {
	let [total, before, after] = [0, 0, 0];
	levelLines(s.edges, heightsBetween(s.rings.slice(1), s.middle.x), (met) => {
		const all = climbedBetween(s, met, -Infinity, Infinity);
		// A step right in the middle is shared, so that a mirrored panel gets the mirrored cloth.
		const left =
			(climbedBetween(s, met, -Infinity, s.middle.x) +
				all -
				climbedBetween(s, met, s.middle.x, Infinity)) /
			2;
		const right = all - left;
		before = Math.max(before, left);
		after = Math.max(after, right);
		total = Math.max(total, left + right);
	});
	if (total === 0) return [0, 0];
	const share = Math.round((total * before) / (before + after));
	return [share, total - share];
}

function climbedTo(s: Scan, p: Point): number {
	let sum = 0;
	// Half a tick up: heights must not be those of corners, which lie on the grid.
	levelLines(s.edges, [Math.floor(p.y) + 0.5], (met) => {
		sum = climbedBetween(s, met, Math.min(p.x, s.middle.x), Math.max(p.x, s.middle.x));
	});
	return Math.sign(p.x - s.middle.x) * sum;
}

/**
 * A step that ends at the board's edge is climbed there as part of the edge; this near (ticks), it
 * ends there.
 */
const AT_THE_EDGE = 160;

/** What a level line climbs between `lo` and `hi`, given the edges it meets. */
function climbedBetween(s: Scan, met: readonly Rising[], lo: number, hi: number): number {
	let sum = 0;
	for (const c of met) {
		if (c.ring === 0 || c.at <= lo || c.at >= hi) continue;
		const atEdge = met.some((e) => e.ring === 0 && Math.abs(c.at - e.at) * e.steep < AT_THE_EDGE);
		if (!atEdge) sum += nth(s.rings, c.ring).height;
	}
	return sum;
}
