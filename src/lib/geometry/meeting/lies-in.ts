import { nth } from '../../measure';
import { alongEdge, edgeBounds, edgesOf } from '../edge';
import { bounds } from '../extent';
import { meets, whereIs, type Where } from './inside';
import type { Corner, Outline, Point } from '../outline';

/** Shorter outlines are looked through faster than they are sorted. */
const FEW = 12;

/**
 * The edges of an outline by the height they lie at, so that a point is held against the few edges
 * at its own height.
 */
class Rows {
	private readonly rows: number[][] = [];
	private readonly low: number;
	private readonly step: number;

	constructor(private readonly outline: Outline) {
		const boxes = edgesOf(outline).map(edgeBounds);
		this.low = Math.min(...boxes.map((b) => b.y)) - 1;
		const high = Math.max(...boxes.map((b) => b.y + b.width)) + 1;
		this.step = (high - this.low) / outline.length;
		boxes.forEach((b, i) => {
			const last = this.row(b.y + b.width + 1);
			for (let row = this.row(b.y - 1); row <= last; row++) (this.rows[row] ??= []).push(i);
		});
	}

	where(p: Point): Where {
		let inside = false;
		for (const i of this.rows[this.row(p.y)] ?? []) {
			const to = nth(this.outline, i + 1 === this.outline.length ? 0 : i + 1);
			const met = meets(p, nth(this.outline, i), to);
			if (met === 'on') return 'on';
			if (met === 'crossed') inside = !inside;
		}
		return inside ? 'inside' : 'outside';
	}

	private row(y: number): number {
		return Math.floor((y - this.low) / this.step);
	}
}

const sorted = new WeakMap<Outline, Rows>();

/** As whereIs, for many points of one outline: its edges are sorted once. */
export function finder(outline: Outline): (p: Point) => Where {
	if (outline.length < FEW) return (p) => whereIs(p, outline);
	const rows = sorted.get(outline) ?? new Rows(outline);
	sorted.set(outline, rows);
	return (p) => rows.where(p);
}

/**
 * Is the outline wholly inside the other, sharing no more than its edge? Corners and middles of
 * edges are looked at both ways: where edges cross between them, a corner of one lies on the wrong
 * side of the other.
 */
export function liesIn(inner: Outline, outer: Outline): boolean {
	const [a, b] = [bounds(inner), bounds(outer)];
	const sticksOut =
		a.x < b.x || a.y < b.y || a.x + a.length > b.x + b.length || a.y + a.width > b.y + b.width;
	if (sticksOut) return false;
	const [inOuter, inInner] = [finder(outer), finder(inner)];
	return (
		everyStation(inner, (p) => inOuter(p) !== 'outside') &&
		everyStation(outer, (p) => inInner(p) !== 'inside')
	);
}

/**
 * Does it hold for every corner and the middle of every edge? Corners first: they tell most often.
 */
function everyStation(outline: Outline, holds: (p: Point) => boolean): boolean {
	const middle = (c: Corner, i: number): Point => {
		const to = outline[i + 1] ?? nth(outline, 0);
		if (!c.bulge) return { x: (c.x + to.x) / 2, y: (c.y + to.y) / 2 };
		return alongEdge({ from: c, to, bulge: c.bulge }, 0.5);
	};
	return outline.every(holds) && outline.every((c, i) => holds(middle(c, i)));
}
