import type { FreeKind, FreeShape } from './free-shape';
import type { FreeSpot } from './free-columns';
import type { PairTables } from './free-pairs';
import type { Random } from '../random';

/**
 * Less overlap than this, ticks, counts as touching: the shapes were grown by more than it, see
 * free-shape.
 */
const TOUCH = 1;
/** Places tried for a piece that overlaps: near its own, and anywhere. */
const NEAR = 12;
const ANYWHERE = 24;
/** How far 'near' is, as a share of the piece's size. */
const NEAR_SHARE = 0.15;
/** The best places that are refined. */
const REFINED = 3;
/**
 * Sweeps without 2 % less overlap before giving up, and how often it starts again from the best
 * state.
 */
const PATIENCE = 30;
const STRIKES = 2;

/** Where the pieces lie. */
export interface Lying {
	readonly shapes: FreeShape[];
	readonly x: Float64Array;
	readonly y: Float64Array;
}

/** What is pushed apart, across what width, and by which dice. */
interface Room {
	readonly kinds: readonly FreeKind[];
	readonly width: number;
	readonly tables: PairTables;
	readonly stream: Random;
}

interface Candidate {
	shape: FreeShape;
	x: number;
	y: number;
	cost: number;
}

/**
 * Pushes overlapping pieces apart within a strip of given length: each piece that overlaps moves to
 * where its weighted overlap is least, and the weight of a pair grows as long as it overlaps, so
 * that no pair can stay stuck for ever (the guided local search of J. Egeblad, B.K. Nielsen, A.
 * Odgaard, "Fast neighborhood search for two- and three-dimensional nesting problems", European J.
 * Operational Research 183, 2007, with penetration depth as the measure).
 */
export class Separation {
	readonly count: number;
	now: Lying;
	private readonly kinds: readonly FreeKind[];
	private readonly width: number;
	private readonly tables: PairTables;
	private readonly stream: Random;
	private readonly weight: Float64Array;
	private readonly scale: Float64Array;

	constructor(
		{ kinds, width, tables, stream }: Room,
		private readonly kindOf: readonly number[],
		start: Lying,
	) {
		this.kinds = kinds;
		this.width = width;
		this.tables = tables;
		this.stream = stream;
		this.count = kindOf.length;
		this.now = start;
		this.weight = new Float64Array(this.count * this.count).fill(1);
		this.scale = Float64Array.from(kindOf, (k) => kinds[k]!.area ** (1 / 8));
	}

	/** Try to lie apart within `length`. Yields after each sweep; true when nothing overlaps. */
	*run(length: number, patience = PATIENCE): Generator<void, boolean, void> {
		this.clamp(length);
		let best = copyOf(this.now);
		let least = Infinity;
		for (let strikes = 0; strikes < STRIKES; strikes++) {
			for (let idle = 0; idle < patience; idle++) {
				const overlap = this.reweigh();
				if (overlap === 0) return true;
				if (overlap < least) {
					if (overlap < 0.98 * least) idle = 0;
					least = overlap;
					best = copyOf(this.now);
				}
				this.sweep(length);
				yield;
			}
			this.now = copyOf(best);
		}
		return false;
	}

	/** All raw overlap; the weights of pairs that overlap grow, the others shrink back. */
	private reweigh(): number {
		const { count, weight } = this;
		const depths = new Float64Array(count * count);
		let sum = 0;
		let deepest = 0;
		for (let i = 0; i < count; i++)
			for (let j = i + 1; j < count; j++) {
				const depth = this.depth(i, j);
				if (depth <= TOUCH) continue;
				depths[i * count + j] = depth;
				sum += depth;
				deepest = Math.max(deepest, depth);
			}
		for (let i = 0; i < count; i++)
			for (let j = i + 1; j < count; j++) {
				const depth = depths[i * count + j]!;
				const old = weight[i * count + j]!;
				const grown = depth > 0 ? old * (1.2 + (0.8 * depth) / deepest) : Math.max(1, 0.95 * old);
				weight[i * count + j] = grown;
				weight[j * count + i] = grown;
			}
		return sum;
	}

	private depth(i: number, j: number): number {
		const { shapes, x, y } = this.now;
		return this.tables.depth(shapes[i]!, shapes[j]!, x[j]! - x[i]!, y[j]! - y[i]!);
	}

	private clamp(length: number): void {
		const { shapes, x, y } = this.now;
		shapes.forEach((shape, i) => {
			x[i] = clamped(x[i]!, length - shape.length);
			y[i] = clamped(y[i]!, this.width - shape.width);
		});
	}

	/** Every overlapping piece, in random order, moves to a better place if it finds one. */
	private sweep(length: number): void {
		const order = Array.from({ length: this.count }, (_, i) => i);
		for (let i = order.length - 1; i > 0; i--) {
			const j = this.stream.int(i + 1);
			[order[i], order[j]] = [order[j]!, order[i]!];
		}
		for (const i of order) {
			const here = this.candidate(i, this.now.shapes[i]!, this.now.x[i]!, this.now.y[i]!, Infinity);
			if (here.cost > 0) this.move(i, here, length);
		}
	}

	private candidate(i: number, shape: FreeShape, x: number, y: number, bar: number): Candidate {
		return { shape, x, y, cost: this.cost(i, shape, x, y, bar) };
	}

	/** Weighted overlap of piece i lying as given; may stop once it passes `bar`. */
	private cost(i: number, shape: FreeShape, x: number, y: number, bar: number): number {
		const { count, weight, scale, tables } = this;
		const { shapes, x: xs, y: ys } = this.now;
		let cost = 0;
		for (let j = 0; j < count; j++) {
			if (j === i) continue;
			const depth = tables.depth(shape, shapes[j]!, xs[j]! - x, ys[j]! - y);
			if (depth <= TOUCH) continue;
			cost += weight[i * count + j]! * scale[i]! * scale[j]! * depth;
			if (cost > bar) return cost;
		}
		return cost;
	}

	private move(i: number, here: Candidate, length: number): void {
		const best: Candidate[] = [{ ...here }];
		for (const { shape, x, y } of this.tries(here, this.kinds[this.kindOf[i]!]!, length)) {
			const bar = best.length < REFINED ? Infinity : best[best.length - 1]!.cost;
			const tried = this.candidate(i, shape, x, y, bar);
			if (tried.cost >= bar) continue;
			best.push(tried);
			best.sort((a, b) => a.cost - b.cost);
			if (best.length > REFINED) best.pop();
		}
		for (const tried of best) {
			const first = tried.x === here.x && tried.y === here.y ? 0.05 : 0.25;
			this.refine(i, tried, length, first, 0.02);
		}
		best.sort((a, b) => a.cost - b.cost);
		this.refine(i, best[0]!, length, 0.02, 0.001);
		if (best[0]!.cost >= here.cost) return;
		this.now.shapes[i] = best[0]!.shape;
		this.now.x[i] = best[0]!.x;
		this.now.y[i] = best[0]!.y;
	}

	private *tries(
		here: Candidate,
		kind: FreeKind,
		length: number,
	): Generator<Omit<Candidate, 'cost'>> {
		const { stream, width } = this;
		for (let k = 0; k < NEAR; k++) {
			const dx = (2 * stream.unit() - 1) * NEAR_SHARE * here.shape.length;
			const dy = (2 * stream.unit() - 1) * NEAR_SHARE * here.shape.width;
			const x = clamped(here.x + dx, length - here.shape.length);
			yield { shape: here.shape, x, y: clamped(here.y + dy, width - here.shape.width) };
		}
		for (let k = 0; k < ANYWHERE; k++) {
			const shape = kind.shapes[stream.int(kind.shapes.length)]!;
			if (shape.length > length || shape.width > width) continue;
			yield {
				shape,
				x: stream.unit() * (length - shape.length),
				y: stream.unit() * (width - shape.width),
			};
		}
	}

	/** Steps along x, y or a diagonal, longer after a gain, shorter after none. Changes `at`. */
	private refine(i: number, at: Candidate, length: number, first: number, last: number): void {
		const size = Math.min(at.shape.length, at.shape.width);
		let dx = first * size;
		let dy = first * size;
		while (Math.max(dx, dy) > last * size && at.cost > 0) {
			const way = this.stream.int(4);
			const alongX = way === 0 || way >= 2;
			const alongY = way === 1 || way >= 2;
			const gained = this.step(i, at, length, alongX ? dx : 0, alongY ? (way === 3 ? -dy : dy) : 0);
			const factor = gained ? 1.1 : 0.5;
			if (alongX) dx *= factor;
			if (alongY) dy *= factor;
		}
	}

	private step(i: number, at: Candidate, length: number, dx: number, dy: number): boolean {
		const before = at.cost;
		const { x, y } = at;
		for (const sign of [1, -1]) {
			const tx = clamped(x + sign * dx, length - at.shape.length);
			const ty = clamped(y + sign * dy, this.width - at.shape.width);
			const cost = this.cost(i, at.shape, tx, ty, at.cost);
			if (cost >= at.cost) continue;
			at.x = tx;
			at.y = ty;
			at.cost = cost;
		}
		return at.cost < before;
	}
}

function clamped(value: number, most: number): number {
	return Math.max(0, Math.min(value, most));
}

export function copyOf(lying: Lying): Lying {
	return { shapes: [...lying.shapes], x: lying.x.slice(), y: lying.y.slice() };
}

export function lyingOf(spots: readonly FreeSpot[]): Lying {
	return {
		shapes: spots.map((spot) => spot.shape),
		x: Float64Array.from(spots, (spot) => spot.x),
		y: Float64Array.from(spots, (spot) => spot.y),
	};
}

/** On the grid again; the shapes were grown by more than rounding can lose. */
export function spotsOf(lying: Lying, kindOf: readonly number[]): FreeSpot[] {
	return lying.shapes.map((shape, i) => ({
		kind: kindOf[i]!,
		shape,
		x: Math.round(lying.x[i]!),
		y: Math.round(lying.y[i]!),
	}));
}
