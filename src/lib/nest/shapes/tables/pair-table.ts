import type { Point } from '../../../geometry';
import { DepthMap, type Box } from './depth-map';
import { depthInSum, freeRun, sumsOf, type Sums } from './sums';

/** So many questions make a map worth its work. */
const MAP_AFTER = 400;

/** Memory that all tables of a search share, in bytes. */
export interface Store {
	left: number;
	/** Looks at edges so far. */
	work: number;
}

type Parts = readonly (readonly Point[])[];

/** How two kinds of piece at one turn against each other lie apart, asked by the offset of centres. */
export class PairTable implements Box {
	readonly left: number;
	readonly right: number;
	readonly bottom: number;
	readonly top: number;
	/** The way out where it was last asked. */
	exitX = 0;
	exitY = 0;
	private readonly sums: Sums;
	private map: DepthMap | null = null;
	private asked = 0;

	constructor(
		a: Parts,
		b: Parts,
		margin: number,
		private readonly store: Store,
	) {
		const sums = sumsOf(a, b, margin);
		this.sums = sums;
		let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
		for (let s = 0; s < sums.count; s++) {
			left = Math.min(left, sums.boxes[4 * s]!);
			right = Math.max(right, sums.boxes[4 * s + 1]!);
			bottom = Math.min(bottom, sums.boxes[4 * s + 2]!);
			top = Math.max(top, sums.boxes[4 * s + 3]!);
		}
		[this.left, this.right, this.bottom, this.top] = [left, right, bottom, top];
		store.left -= 8 * (sums.edges.length + sums.boxes.length) + 4 * sums.first.length + 400;
		store.work += 30 * sums.edges.length;
	}

	/** How deep the two overlap, ticks; 0 when they are apart or touch. */
	depth(x: number, y: number): number {
		if (x <= this.left || x >= this.right || y <= this.bottom || y >= this.top) return 0;
		if (this.map !== null) return this.map.at(x, y);
		return this.deepest(x, y);
	}

	private deepest(x: number, y: number): number {
		const { sums } = this;
		let deepest = 0;
		for (let s = 0; s < sums.count; s++) {
			const depth = depthInSum(sums, s, x, y, deepest);
			if (depth > deepest) deepest = depth;
		}
		this.store.work += 2 * sums.count;
		this.asked += 1;
		if (this.asked === MAP_AFTER && sums.count > 1 && this.store.left > 0) this.makeMap();
		return deepest;
	}

	private makeMap(): void {
		this.map = new DepthMap(this.sums, this);
		this.store.left -= this.map.bytes;
		this.store.work += this.map.work;
	}

	/** The depth, and the shortest way out left in `exitX`, `exitY`. */
	exit(x: number, y: number): number {
		const depth = this.depth(x, y);
		if (depth <= 0) return 0;
		if (this.map?.findsExit(x, y) === true) {
			this.exitX = this.map.exitX;
			this.exitY = this.map.exitY;
		} else this.exitOfSums(x, y);
		return depth;
	}

	private exitOfSums(x: number, y: number): void {
		const { sums } = this;
		let deepest = 0;
		for (let s = 0; s < sums.count; s++) {
			if (depthInSum(sums, s, x, y, deepest) <= deepest) continue;
			let nearest = Infinity;
			for (let e = 3 * sums.first[s]!; e < 3 * sums.first[s + 1]!; e += 3) {
				const d = sums.edges[e + 2]! - sums.edges[e]! * x - sums.edges[e + 1]! * y;
				if (d >= nearest) continue;
				nearest = d;
				this.exitX = sums.edges[e]!;
				this.exitY = sums.edges[e + 1]!;
			}
			deepest = nearest;
		}
	}

	/** How far the second may go along a direction of length one before it meets the first. */
	freeRun(from: readonly [number, number], along: readonly [number, number]): number {
		let free = Infinity;
		for (let s = 0; s < this.sums.count; s++)
			free = Math.min(free, freeRun(this.sums, s, from, along));
		this.store.work += 4 * this.sums.count;
		return free;
	}
}
