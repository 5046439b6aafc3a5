import { nth, around } from '../../measure';
import type { FreeKind, FreeShape } from './free-shape';

/** A piece laid: corner of the true piece's bounding rectangle, whole ticks. */
export interface FreeSpot {
	readonly kind: number;
	readonly shape: FreeShape;
	readonly x: number;
	readonly y: number;
}

/** A stretch of roll or the usable part of a sheet. */
export interface Strip {
	readonly width: number;
	readonly limit: number; // Infinity for an endless roll
}

export interface Filled {
	readonly spots: readonly FreeSpot[];
	readonly left: readonly number[]; // kinds, one entry a copy
	readonly length: number;
	readonly work: number; // pairs of stretches compared
}

/**
 * The stretches across the strip that a shape touches, column by column: lo, hi, lo, hi ... from
 * the true corner.
 */
export type Spans = readonly (readonly number[])[];

/** The first place at or after `y` where one's own stretches, moved there, miss those taken. */
export function liftedPast(own: readonly number[], taken: readonly number[], y: number): number {
	let place = y;
	for (let i = 0; i < own.length; i += 2)
		for (let j = 0; j < taken.length; j += 2)
			if (nth(taken, j) - nth(own, i + 1) < place && place < nth(taken, j + 1) - nth(own, i))
				place = nth(taken, j + 1) - nth(own, i);
	return place;
}

/** What that takes, in pairs of stretches compared and what there is besides. */
export const workOfLifting = (own: readonly number[], taken: readonly number[]): number =>
	3 + (own.length * taken.length) / 4;

/**
 * The stretches of shapes, worked out once for each width of column, whatever a shape is laid on. A
 * search keeps its own.
 */
export class SpanTables {
	private readonly byColumn = new Map<number, Map<FreeShape, Spans>>();

	of(column: number): Map<FreeShape, Spans> {
		const known = this.byColumn.get(column) ?? new Map<FreeShape, Spans>();
		this.byColumn.set(column, known);
		return known;
	}
}

/**
 * Lay pieces one by one where their right end comes farthest left, lowest across. The strip is cut
 * into narrow columns, and a piece claims the stretch it touches anywhere in a column: so two
 * pieces never overlap, positions across are exact, and along the strip less than one column is
 * lost per piece. Holes stay free by themselves.
 */
export function fillColumns(
	kinds: readonly FreeKind[],
	order: readonly number[],
	strip: Strip,
	column: number,
	tables: SpanTables,
): Filled {
	const filler = new ColumnFiller(kinds, strip, column, tables.of(column));
	const spots: FreeSpot[] = [];
	const left: number[] = [];
	let length = 0;
	for (const kind of order) {
		const spot = filler.lay(kind);
		if (spot === null) left.push(kind);
		else {
			spots.push(spot);
			length = Math.max(length, spot.x + spot.shape.length);
		}
	}
	return { spots, left, length, work: filler.work };
}

class ColumnFiller {
	work = 0;
	private readonly taken: number[][] = []; // per column: lo, hi, lo, hi ..., sorted and apart
	/** Per shape, the first column not yet known to be full for it; what is laid never moves. */
	private readonly from = new Map<number, number>();
	/** How far left of the strip a grown piece may reach. */
	private readonly before: number;

	constructor(
		private readonly kinds: readonly FreeKind[],
		private readonly strip: Strip,
		private readonly column: number,
		private readonly known: Map<FreeShape, Spans>,
	) {
		const lefts = kinds.flatMap((kind) => kind.shapes.map((shape) => -shape.left));
		this.before = Math.max(0, ...lefts);
	}

	lay(kind: number): FreeSpot | null {
		let best: FreeSpot | null = null;
		let bestEnd = Infinity;
		for (const shape of nth(this.kinds, kind).shapes) {
			const spot = this.firstPlace(kind, shape, bestEnd);
			if (spot === null) continue;
			best = spot;
			bestEnd = spot.x + shape.length;
		}
		if (best !== null) this.claim(best);
		return best;
	}

	/** Where the true corner lies when the grown piece starts at column `at`. */
	private xAt(shape: FreeShape, at: number): number {
		return at * this.column - this.before - shape.left;
	}

	private firstPlace(kind: number, shape: FreeShape, before: number): FreeSpot | null {
		if (shape.width > this.strip.width) return null;
		const start = this.from.get(shape.n) ?? Math.ceil((this.before + shape.left) / this.column);
		for (let at = start; ; at++) {
			const x = this.xAt(shape, at);
			if (x + shape.length > this.strip.limit || x + shape.length >= before) return null;
			const y = this.lowest(this.spansOf(shape), shape, at);
			if (y !== null) return { kind, shape, x, y };
			this.from.set(shape.n, at + 1);
		}
	}

	/**
	 * The lowest position across at which the shape touches nothing taken: whatever is in the way
	 * lifts it to where that ends, until nothing is.
	 */
	private lowest(spans: Spans, shape: FreeShape, at: number): number | null {
		const most = this.strip.width - shape.width;
		for (let y = 0; ;) {
			const from = y;
			for (let k = 0; k < spans.length; k++) {
				const taken = this.taken[at + k];
				if (taken === undefined) break;
				const own = nth(spans, k);
				this.work += workOfLifting(own, taken);
				y = liftedPast(own, taken, y);
				if (y > most) return null;
			}
			if (y === from) return y;
		}
	}

	private claim(spot: FreeSpot): void {
		const at = Math.round((spot.x + this.before + spot.shape.left) / this.column);
		this.spansOf(spot.shape).forEach((own, k) => {
			while (this.taken.length <= at + k) this.taken.push([]);
			const all = nth(this.taken, at + k);
			for (const y of own) all.push(y + spot.y);
			this.taken[at + k] = united(all);
		});
	}

	private spansOf(shape: FreeShape): Spans {
		const known = this.known.get(shape);
		if (known !== undefined) return known;
		const spans = spansOfShape(shape, this.column);
		this.known.set(shape, spans);
		return spans;
	}
}

/** @param start where the first column begins, no farther right than the shape does */
export function spansOfShape(shape: FreeShape, column: number, start = shape.left): Spans {
	const count = Math.max(1, Math.ceil((shape.right - start) / column));
	const spans: number[][] = Array.from({ length: count }, () => []);
	for (const part of shape.parts) {
		const xs = part.map((p) => p.x);
		const first = Math.max(0, Math.floor((Math.min(...xs) - start) / column));
		const last = Math.min(count - 1, Math.floor((Math.max(...xs) - start) / column));
		for (let k = first; k <= last; k++) {
			const span = slab(part, start + k * column, start + (k + 1) * column);
			if (span !== null) nth(spans, k).push(...span);
		}
	}
	return spans.map(united);
}

/** The stretch of y a convex part takes between two values of x, to whole ticks outward. */
function slab(part: FreeShape['parts'][number], from: number, to: number): [number, number] | null {
	let lo = Infinity;
	let hi = -Infinity;
	part.forEach((p, i) => {
		const q = around(part, i + 1);
		const [a, b] = p.x <= q.x ? [p, q] : [q, p];
		if (b.x < from || a.x > to) return;
		for (const x of [Math.max(a.x, from), Math.min(b.x, to)]) {
			const y = b.x === a.x ? [a.y, b.y] : [a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x)];
			lo = Math.min(lo, ...y);
			hi = Math.max(hi, ...y);
		}
	});
	return lo > hi ? null : [Math.floor(lo), Math.ceil(hi)];
}

/** Stretches sorted, those that meet or overlap made one. */
export function united(flat: readonly number[]): number[] {
	const pairs: [number, number][] = [];
	for (let i = 0; i < flat.length; i += 2) pairs.push([nth(flat, i), nth(flat, i + 1)]);
	pairs.sort((a, b) => a[0] - b[0]);
	const out: number[] = [];
	for (const [lo, hi] of pairs) {
		if (out.length > 0 && lo <= nth(out, out.length - 1)) {
			if (hi > nth(out, out.length - 1)) out[out.length - 1] = hi;
		} else out.push(lo, hi);
	}
	return out;
}
