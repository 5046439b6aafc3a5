import type { FreeSpot, Strip } from './free-columns';
import type { FreeKind, FreeShape } from './free-shape';
import { random, type Random } from '../random';
import { LooseLayout, type Lying } from './separate';
import { PairTables } from './tables';
import type { Budget } from '../types';

/** Work of the column filler for one unit: measured. */
export const STRETCHES_PER_UNIT = 400;
/** Looks at an edge for one unit: measured, 20 microseconds on a desk computer. */
const LOOKS_PER_UNIT = 3000;

export interface FreeState {
	readonly spots: readonly FreeSpot[];
	readonly left: readonly number[];
	readonly length: number;
	readonly effort: number;
}

export type FreeBest = Omit<FreeState, 'effort'>;

/** What all steps of the search of one strip share: its best so far, and what was spent. */
export class StripSearch {
	best: FreeBest;
	/** Of the column filler, in units. */
	filled = 0;
	readonly tables: PairTables;
	readonly stream: Random;
	readonly effort: number;
	private readonly shapes: readonly FreeShape[];
	private loose: LooseLayout | null = null;

	constructor(
		readonly kinds: readonly FreeKind[],
		readonly strip: Strip,
		readonly bound: number,
		budget: Budget,
		gap: number,
	) {
		this.tables = new PairTables(kinds, gap);
		this.stream = random(budget.seed);
		this.effort = budget.effort;
		this.shapes = kinds.flatMap((kind) => kind.shapes);
		const left = kinds.flatMap((kind, k) => new Array<number>(kind.count).fill(k));
		this.best = { spots: [], left, length: 0 };
	}

	get spent(): number {
		const looks = this.tables.work + (this.loose?.work ?? 0);
		return this.filled + Math.ceil(looks / LOOKS_PER_UNIT);
	}

	/** Is so much of the budget spent, or nothing shorter possible? */
	isOver(share: number): boolean {
		if (this.spent >= share * this.effort) return true;
		return this.best.left.length === 0 && this.best.length <= this.bound;
	}

	get state(): FreeState {
		return { ...this.best, effort: this.spent };
	}

	/** The pieces of the best layout, ready to be pushed about. */
	openLayout(): LooseLayout {
		const { tables, stream } = this;
		const kinds = this.best.spots.map((spot) => this.kinds[spot.kind]!);
		const first = this.kinds.map((_, k) =>
			this.kinds.slice(0, k).reduce((n, kind) => n + kind.shapes.length, 0),
		);
		const choices = this.best.spots.map(({ kind }) =>
			Int32Array.from(this.kinds[kind]!.shapes, (_, s) => first[kind]! + s),
		);
		const { width } = this.strip;
		const areas = kinds.map((kind) => kind.area);
		const start = lyingOf(this.best.spots);
		this.loose = new LooseLayout({ tables, width, choices, areas, stream }, start);
		return this.loose;
	}

	/** Keep where the pieces lie now, slid to the left, if that is shorter. */
	keep({ lying }: LooseLayout): void {
		const spots = this.settled(
			Array.from(lying.shape, (n, i): FreeSpot => {
				const shape = this.shapes[n]!;
				const x = Math.round(lying.x[i]! - shape.length / 2);
				const y = Math.round(lying.y[i]! - shape.width / 2);
				return { kind: this.tables.kind[n]!, shape, x, y };
			}),
		);
		const length = endOf(spots);
		if (length < this.best.length) this.best = { spots, left: [], length };
	}

	/**
	 * Slide every piece to the left, those farthest left first. All others are in its way, also
	 * those not moved yet: one may lie in the mouth of an outline that starts farther left.
	 */
	settled(laid: readonly FreeSpot[]): FreeSpot[] {
		const spots = [...laid];
		const order = spots.map((_, i) => i).sort((a, b) => spots[a]!.x - spots[b]!.x || a - b);
		for (const i of order) {
			const spot = spots[i]!;
			let free = spot.x;
			for (const { other, clear } of this.leftOf(spots, i)) {
				// One as far off as that is not met before, nor is any after it.
				if (clear >= free) break;
				free = Math.min(free, this.slide(other, spot));
			}
			spots[i] = { ...spot, x: spot.x - Math.max(0, Math.floor(free)) };
		}
		return spots;
	}

	/**
	 * What a piece could run into on its way, by how far it may go before their rectangles meet:
	 * the table of a pair is made only when the pair is near.
	 */
	private leftOf(spots: readonly FreeSpot[], i: number): { other: FreeSpot; clear: number }[] {
		const { x, y, shape } = spots[i]!;
		const { reachX, reachY } = this.tables;
		const near = spots.flatMap((other, j) => {
			if (j === i) return [];
			const [a, b] = [other.shape, shape];
			const apart = y + b.width / 2 - other.y - a.width / 2;
			if (Math.abs(apart) >= reachY[a.n]! + reachY[b.n]!) return [];
			const along = x + b.length / 2 - other.x - a.length / 2;
			return [{ other, clear: along - reachX[a.n]! - reachX[b.n]! }];
		});
		return near.sort((a, b) => a.clear - b.clear);
	}

	private slide(other: FreeSpot, spot: FreeSpot): number {
		const [a, b] = [other.shape, spot.shape];
		const x = spot.x + b.length / 2 - other.x - a.length / 2;
		const y = spot.y + b.width / 2 - other.y - a.width / 2;
		const { reachX, reachY } = this.tables;
		if (Math.abs(y) >= reachY[a.n]! + reachY[b.n]!) return Infinity;
		if (x <= -reachX[a.n]! - reachX[b.n]!) return Infinity;
		return this.tables.slideLeft(a.n, b.n, x, y);
	}
}

export function endOf(spots: readonly FreeSpot[]): number {
	return spots.reduce((end, spot) => Math.max(end, spot.x + spot.shape.length), 0);
}

export function lyingOf(spots: readonly FreeSpot[]): Lying {
	return {
		shape: Int32Array.from(spots, (spot) => spot.shape.n),
		x: Float64Array.from(spots, (spot) => spot.x + spot.shape.length / 2),
		y: Float64Array.from(spots, (spot) => spot.y + spot.shape.width / 2),
	};
}
