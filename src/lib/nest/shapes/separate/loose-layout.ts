import type { Random } from '../../random';
import { TOUCHING, type PairTables } from '../tables';

/** Where pieces lie: a shape and the centre of its box each. */
export interface Lying {
	readonly shape: Int32Array;
	readonly x: Float64Array;
	readonly y: Float64Array;
}

export function copyOf({ shape, x, y }: Lying): Lying {
	return { shape: shape.slice(), x: x.slice(), y: y.slice() };
}

/** What a layout is made of, across what width. */
export interface LooseParts {
	readonly tables: PairTables;
	readonly width: number;
	/** Shapes that each piece may take. */
	readonly choices: readonly Int32Array[];
	/** Area of each piece: small ones give way to large ones. */
	readonly areas: readonly number[];
	readonly stream: Random;
}

/** Looks at an edge that asking for the overlap of one piece, and passing another by, are worth. */
const ASKING = 12;
const PASSING = 1;
const LOOKING = 10;

/**
 * Pieces on a strip that may still overlap. They are kept in the order of their centres along it,
 * so that only those near a piece are asked. Each pair has a weight by which its overlap counts.
 */
export class LooseLayout {
	readonly count: number;
	readonly lying: Lying;
	readonly tables: PairTables;
	readonly width: number;
	readonly choices: readonly Int32Array[];
	readonly stream: Random;
	/** Usable length at the moment. */
	length = Infinity;
	/** Pairs that overlapped when they were last listed: pieces i < j and how deep. */
	readonly pairs: { i: number; j: number; depth: number }[] = [];
	/** Looks at edges, those of the tables not counted. */
	work = 0;
	/** What is asked, and the answer: in fields, as in a table of a pair, for the same reason. */
	atX = 0;
	atY = 0;
	bar = Infinity;
	cost = 0;
	slopeX = 0;
	slopeY = 0;
	private readonly weight: Float64Array;
	private readonly scale: Float64Array;
	private readonly order: Int32Array; // pieces by x
	private readonly rank: Int32Array;
	private readonly sorted: Float64Array; // their x
	private readonly widest: number;

	constructor({ tables, width, choices, areas, stream }: LooseParts, start: Lying) {
		this.tables = tables;
		this.width = width;
		this.choices = choices;
		this.stream = stream;
		this.count = start.x.length;
		this.lying = copyOf(start);
		this.weight = new Float64Array(this.count * this.count).fill(1);
		this.scale = Float64Array.from(areas, (area) => area ** (1 / 8));
		this.order = Int32Array.from(start.x, (_, i) => i);
		this.rank = this.order.slice();
		this.sorted = new Float64Array(this.count);
		this.widest = tables.reachX.reduce((most, reach) => Math.max(most, reach), 0);
		this.sort();
	}

	/** All pieces at once lie elsewhere. */
	set({ shape, x, y }: Lying): void {
		this.lying.shape.set(shape);
		this.lying.x.set(x);
		this.lying.y.set(y);
		this.sort();
	}

	/** One piece lies elsewhere. */
	move(i: number, shape: number, x: number, y: number): void {
		this.lying.shape[i] = shape;
		this.lying.x[i] = x;
		this.lying.y[i] = y;
		this.shift(i);
	}

	/** Everything within the strip of this length; what is too long as it lies is turned. */
	clamp(length: number): void {
		this.length = length;
		const { shape, x, y } = this.lying;
		for (let i = 0; i < this.count; i++) {
			if (!this.fits(shape[i]!))
				shape[i] = this.choices[i]!.find((other) => this.fits(other)) ?? shape[i]!;
			x[i] = this.clampX(shape[i]!, x[i]!);
			y[i] = this.clampY(shape[i]!, y[i]!);
		}
		this.sort();
	}

	/** Is the strip long and wide enough for a shape? */
	fits(shape: number): boolean {
		const { halfLength, halfWidth } = this.tables;
		return 2 * halfLength[shape]! <= this.length && 2 * halfWidth[shape]! <= this.width;
	}

	clampX(shape: number, x: number): number {
		const half = this.tables.halfLength[shape]!;
		return x < half ? half : x > this.length - half ? this.length - half : x;
	}

	clampY(shape: number, y: number): number {
		const half = this.tables.halfWidth[shape]!;
		return y < half ? half : y > this.width - half ? this.width - half : y;
	}

	/**
	 * Sets `cost` to the weighted overlap of piece i lying at `atX`, `atY`; may stop once it passes
	 * `bar`.
	 */
	ask(i: number, shape: number): void {
		const { tables, order, sorted, count, weight, scale, atX, atY, bar } = this;
		const { shape: shapes, y: ys } = this.lying;
		const { reachX, reachY } = tables;
		const row = i * count;
		const reach = reachX[shape]! + this.widest;
		const across = reachY[shape]!;
		const along = reachX[shape]!;
		const own = scale[i]!;
		let cost = 0;
		let looks = 0;
		let k = this.firstFrom(atX - reach);
		const from = k;
		for (; k < count; k++) {
			const dx = sorted[k]! - atX;
			if (dx >= reach) break;
			const j = order[k]!;
			const other = shapes[j]!;
			const dy = ys[j]! - atY;
			const near = across + reachY[other]!;
			if (dy >= near || -dy >= near || j === i) continue;
			const beside = along + reachX[other]!;
			if (dx >= beside || -dx >= beside) continue;
			looks += 1;
			const depth = tables.depth(shape, other, dx, dy);
			if (depth <= TOUCHING) continue;
			cost += weight[row + j]! * own * scale[j]! * depth;
			if (cost > bar) break;
		}
		this.cost = cost;
		this.work += ASKING + PASSING * (k - from) + LOOKING * looks;
	}

	/** The same in full, and how it grows with x and y in `slopeX`, `slopeY`. */
	askSlope(i: number, shape: number): void {
		const { tables, order, sorted, count, weight, scale, atX, atY } = this;
		const { shape: shapes, y: ys } = this.lying;
		const { reachX, reachY } = tables;
		const row = i * count;
		const reach = reachX[shape]! + this.widest;
		this.cost = 0;
		this.slopeX = 0;
		this.slopeY = 0;
		let k = this.firstFrom(atX - reach);
		for (; k < count; k++) {
			const dx = sorted[k]! - atX;
			if (dx >= reach) break;
			const j = order[k]!;
			const other = shapes[j]!;
			const dy = ys[j]! - atY;
			const near = reachY[shape]! + reachY[other]!;
			const beside = reachX[shape]! + reachX[other]!;
			if (Math.abs(dy) >= near || Math.abs(dx) >= beside || j === i) continue;
			this.work += 2 * LOOKING;
			const depth = tables.exit(shape, other, dx, dy);
			if (depth <= TOUCHING) continue;
			const w = weight[row + j]! * scale[i]! * scale[j]!;
			this.cost += w * depth;
			this.slopeX += w * tables.exitX;
			this.slopeY += w * tables.exitY;
		}
		this.work += ASKING;
	}

	/** The same where it lies, in full. */
	askHere(i: number): void {
		const { shape, x, y } = this.lying;
		this.atX = x[i]!;
		this.atY = y[i]!;
		this.bar = Infinity;
		this.ask(i, shape[i]!);
	}

	/** List all pairs that overlap; returns the sum of their depths. */
	listPairs(): number {
		const { tables, order, sorted, count, pairs } = this;
		const { shape, y } = this.lying;
		pairs.length = 0;
		let sum = 0;
		for (let k = 0; k < count; k++) {
			const i = order[k]!;
			const reach = tables.reachX[shape[i]!]! + this.widest;
			for (let l = k + 1; l < count; l++) {
				const dx = sorted[l]! - sorted[k]!;
				if (dx >= reach) break;
				const j = order[l]!;
				const depth = tables.depth(shape[i]!, shape[j]!, dx, y[j]! - y[i]!);
				this.work += LOOKING;
				if (depth <= TOUCHING) continue;
				pairs.push({ i, j, depth });
				sum += depth;
			}
		}
		return sum;
	}

	/** The weights of the pairs that overlap grow, the deepest most; the others shrink back. */
	reweigh(): void {
		const { weight, count, pairs } = this;
		for (let n = 0; n < weight.length; n++)
			if (weight[n]! > 1) weight[n] = Math.max(1, 0.95 * weight[n]!);
		const deepest = pairs.reduce((most, { depth }) => Math.max(most, depth), 0);
		for (const { i, j, depth } of pairs) {
			const grown = (weight[i * count + j]! * (1.2 + (0.8 * depth) / deepest)) / 0.95;
			weight[i * count + j] = grown;
			weight[j * count + i] = grown;
		}
		this.work += weight.length;
	}

	/** How readily a piece gives way, beside another: the smaller the more. */
	share(i: number, j: number): number {
		return this.scale[j]! / (this.scale[i]! + this.scale[j]!);
	}

	/** The first place in the order at or after x. */
	private firstFrom(x: number): number {
		const { sorted } = this;
		let low = 0;
		let high = this.count;
		while (low < high) {
			const middle = (low + high) >> 1;
			if (sorted[middle]! < x) low = middle + 1;
			else high = middle;
		}
		return low;
	}

	private sort(): void {
		const { order, rank, sorted } = this;
		const { x } = this.lying;
		for (let k = 0; k < this.count; k++) {
			const i = order[k]!;
			let at = k;
			for (; at > 0 && x[order[at - 1]!]! > x[i]!; at--) order[at] = order[at - 1]!;
			order[at] = i;
		}
		for (let k = 0; k < this.count; k++) {
			rank[order[k]!] = k;
			sorted[k] = x[order[k]!]!;
		}
	}

	/** Piece i takes its place in the order again. */
	private shift(i: number): void {
		const { order, rank, sorted } = this;
		const x = this.lying.x[i]!;
		let k = rank[i]!;
		for (; k > 0 && sorted[k - 1]! > x; k--) this.put(k, order[k - 1]!, sorted[k - 1]!);
		for (; k < this.count - 1 && sorted[k + 1]! < x; k++)
			this.put(k, order[k + 1]!, sorted[k + 1]!);
		order[k] = i;
		rank[i] = k;
		sorted[k] = x;
	}

	private put(k: number, i: number, x: number): void {
		this.order[k] = i;
		this.rank[i] = k;
		this.sorted[k] = x;
	}
}
