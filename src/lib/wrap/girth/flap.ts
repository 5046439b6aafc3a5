import { alongEdge, edgeBounds, headingAt, type Point, type Rect } from '../../geometry';
import { chordPoints, outOf, type Span } from './span';
import { turnUnder } from './turn-under';

/** The cloth past a fold, ticks: down the edge, along the back, beyond the trim line. */
export interface FlapWidth {
	readonly wall: number;
	readonly back: number;
	readonly total: number;
	readonly folds: boolean;
	/**
	 * What it would be if nothing were in the way; more than `total` where a flap from the other
	 * side is met.
	 */
	readonly wanted: number;
}

/** The cloth past the fold of one span. */
export interface Flap extends FlapWidth {
	readonly span: Span;
}

/**
 * Gap kept between two flaps that meet in a narrow window or slot, ticks: the width of a knife cut.
 */
const KNIFE = 800;

/**
 * The flaps along one outline. Where two edges face each other nearer than both flaps together, in
 * a small window or a slot, each flap gets half of what is there.
 */
export function flapsOf(line: readonly Span[]): Flap[] {
	const wanted = line.map((span) => turnUnder(span.cloth));
	const row = new Row(line.map((span, i) => ({ span, wants: wanted[i]!.total })));
	return line.map((span, i) => {
		const under = wanted[i]!;
		const total = Math.max(0, Math.min(under.total, room(row.all[i]!, row.near(i))));
		const wall = Math.min(under.wall, total);
		return {
			span,
			wall,
			back: Math.min(under.back, total - wall),
			total,
			folds: under.folds,
			wanted: under.total,
		};
	});
}

const SAMPLES = [0.25, 0.375, 0.5, 0.625, 0.75];

interface Beside {
	readonly span: Span;
	readonly wants: number;
	readonly points: readonly Point[];
}

/** Edges with their boxes in flat lists: a long outline compares every edge with every other. */
class Row {
	readonly all: readonly Beside[];
	private readonly low: { readonly x: Float64Array; readonly y: Float64Array };
	private readonly high: { readonly x: Float64Array; readonly y: Float64Array };

	constructor(spans: readonly { readonly span: Span; readonly wants: number }[]) {
		this.all = spans.map(({ span, wants }) => ({ span, wants, points: chordPoints(span) }));
		const boxes = spans.map(({ span }) => edgeBounds(span));
		const list = (of: (b: Rect, wants: number) => number): Float64Array =>
			Float64Array.from(boxes, (b, i) => of(b, spans[i]!.wants));
		// Each box is wider by its own flap, so that flaps of two edges can meet only where the
		// boxes do.
		this.low = { x: list((b, w) => b.x - w), y: list((b, w) => b.y - w) };
		this.high = { x: list((b, w) => b.x + b.length + w), y: list((b, w) => b.y + b.width + w) };
	}

	/** Edges whose flaps might meet that of edge i. */
	near(i: number): Beside[] {
		const { low, high } = this;
		const [x0, x1, y0, y1] = [low.x[i]!, high.x[i]!, low.y[i]!, high.y[i]!];
		const found: Beside[] = [];
		for (let j = 0; j < this.all.length; j++) {
			if (low.x[j]! > x1 || high.x[j]! < x0 || low.y[j]! > y1 || high.y[j]! < y0) continue;
			if (j !== i && inFront(this.all[j]!, this.all[i]!.span)) found.push(this.all[j]!);
		}
		return found;
	}
}

/** Beyond a straight edge its flap meets only what lies in front of it and faces it. */
function inFront(other: Beside, span: Span): boolean {
	if (span.arc) return true;
	const out = outOf(span.leaves);
	const from = out.x * span.from.x + out.y * span.from.y;
	if (other.points.every((p) => out.x * p.x + out.y * p.y <= from + 1)) return false;
	const { leaves } = other.span;
	return other.span.arc !== null || out.x * leaves.y - out.y * leaves.x < 1e-9;
}

/** How far a flap of this span can reach before it meets one from the other side. */
function room(own: Beside, others: readonly Beside[]): number {
	const { span } = own;
	let free = span.arc && span.arc.sweep < 0 ? span.arc.radius - KNIFE : Infinity;
	for (const t of SAMPLES) {
		const from = alongEdge(span, t);
		const out = outOf(headingAt(span, t));
		for (const { points, wants } of others) {
			const reach = rayTo(from, out, points);
			// Farther away than both flaps together there is nothing in the way.
			if (reach < own.wants + wants + 2 * KNIFE) free = Math.min(free, reach / 2 - KNIFE);
		}
	}
	return free;
}

/**
 * How far a ray runs before it meets a line of points from its outer side; Infinity when it does
 * not. Plain figures, no vectors: a long outline asks this some ten thousand times.
 */
function rayTo(from: Point, out: Point, points: readonly Point[]): number {
	let nearest = Infinity;
	for (let i = 0; i + 1 < points.length; i++) {
		const a = points[i]!;
		const b = points[i + 1]!;
		const [ex, ey] = [b.x - a.x, b.y - a.y];
		const c = out.x * ey - out.y * ex;
		// Only an edge that faces the ray: its own outer side looks back at where the ray comes
		// from.
		if (c >= 0) continue;
		const [tx, ty] = [a.x - from.x, a.y - from.y];
		const reach = (tx * ey - ty * ex) / c;
		if (reach <= 1 || reach >= nearest) continue;
		const at = (tx * out.y - ty * out.x) / c;
		if (at >= 0 && at <= 1) nearest = reach;
	}
	return nearest;
}
