import { nth } from '../../measure';
import {
	type Filled,
	type FreeSpot,
	liftedPast,
	type Spans,
	spansOfShape,
	type Strip,
	united,
	workOfLifting,
} from './free-columns';
import type { FreeKind, FreeShape } from './free-shape';

/** Where the pattern of a cloth lets a kind of piece lie. */
export interface Lattice {
	/** Starts come again after so much along the strip. */
	readonly repeat: number;
	/** The starts of a kind within one repeat, rising. */
	startsOf(kind: number): readonly number[];
	/** The first place across at or after `from` for a kind that starts at `x`. */
	sideAt(kind: number, x: number, from: number): number;
}

/**
 * Lay pieces one by one on a pattern, where their right end comes farthest left, lowest across. As
 * in fillColumns a piece claims the stretches it touches in narrow columns; it starts where the
 * pattern lets it, not at a column, so its stretches are those of its place within a column.
 */
export function fillPattern(
	kinds: readonly FreeKind[],
	order: readonly number[],
	{ strip, column, lattice }: PatternStrip,
): Filled {
	const filler = new PatternFiller(kinds, { strip, column, lattice });
	const spots: FreeSpot[] = [];
	const left: number[] = [];
	for (const kind of order) {
		const spot = filler.lay(kind);
		if (spot === null) left.push(kind);
		else spots.push(spot);
	}
	const length = spots.reduce((end, { x, shape }) => Math.max(end, x + shape.length), 0);
	return { spots, left, length, work: filler.work };
}

export interface PatternStrip {
	readonly strip: Strip;
	readonly column: number;
	readonly lattice: Lattice;
}

class PatternFiller {
	work = 0;
	private readonly taken: number[][] = []; // per column: lo, hi, lo, hi ..., sorted and apart
	private readonly spans = new Map<string, Spans>();
	/** How far left of the strip a grown piece may reach. */
	private readonly before: number;
	private end = 0;

	constructor(
		private readonly kinds: readonly FreeKind[],
		private readonly on: PatternStrip,
	) {
		const lefts = kinds.flatMap((kind) => kind.shapes.map((shape) => -shape.left));
		this.before = Math.max(0, ...lefts);
	}

	lay(kind: number): FreeSpot | null {
		let best: FreeSpot | null = null;
		for (const shape of nth(this.kinds, kind).shapes) {
			const end: number = best === null ? Infinity : best.x + best.shape.length;
			best = this.firstPlace(kind, shape, end) ?? best;
		}
		if (best !== null) this.claim(best);
		return best;
	}

	private firstPlace(kind: number, shape: FreeShape, before: number): FreeSpot | null {
		const { strip, lattice } = this.on;
		const starts = lattice.startsOf(kind);
		// Past all that lies there a place within two repeats is as good as any after it.
		for (let n = 0; n * lattice.repeat <= this.end + 2 * lattice.repeat; n++) {
			for (const start of starts) {
				const x = n * lattice.repeat + start;
				if (x + shape.length > strip.limit || x + shape.length >= before) return null;
				const y = this.lowest(kind, shape, x);
				if (y !== null) return { kind, shape, x, y };
			}
		}
		return null;
	}

	private lowest(kind: number, shape: FreeShape, x: number): number | null {
		const most = this.on.strip.width - shape.width;
		const { at, spans } = this.spansAt(shape, x);
		for (let y = this.on.lattice.sideAt(kind, x, 0); y <= most;) {
			const from = y;
			for (let k = 0; k < spans.length; k++) {
				const [own, taken] = [nth(spans, k), this.taken[at + k] ?? []];
				this.work += workOfLifting(own, taken);
				y = liftedPast(own, taken, y);
			}
			if (y === from) return y;
			y = this.on.lattice.sideAt(kind, x, y);
		}
		return null;
	}

	private claim({ shape, x, y }: FreeSpot): void {
		const { at, spans } = this.spansAt(shape, x);
		spans.forEach((own, k) => {
			while (this.taken.length <= at + k) this.taken.push([]);
			this.taken[at + k] = united([...nth(this.taken, at + k), ...own.map((side) => side + y)]);
		});
		this.end = Math.max(this.end, x + shape.right);
	}

	/** The column a piece at `x` begins in, and its stretches from there on. */
	private spansAt(shape: FreeShape, x: number): { readonly at: number; readonly spans: Spans } {
		const { column } = this.on;
		const left = x + shape.left + this.before;
		const at = Math.floor(left / column);
		const within = left - at * column;
		const key = `${shape.n} ${within}`;
		const known = this.spans.get(key);
		if (known !== undefined) return { at, spans: known };
		const spans = spansOfShape(shape, column, shape.left - within);
		this.spans.set(key, spans);
		return { at, spans };
	}
}
