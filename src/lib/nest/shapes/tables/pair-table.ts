import type { Point } from '../../../geometry';
import {
	DEEP,
	depthMap,
	OUTSIDE,
	plainMap,
	mapWork,
	type DepthMap,
	type Extent,
} from './depth-map';
import { depthInSum, freeRun, sumsOf, type Sums } from './sums';

/** So many questions make a map worth its work. */
const MAP_AFTER = 400;

/** What all tables of a search share. */
export interface Upkeep {
	/** Memory for more of them, bytes. */
	left: number;
	/** Looks at edges so far. */
	work: number;
}

type Parts = readonly (readonly Point[])[];

/**
 * Where a kind of piece may not lie beside another, at one turn against it, asked by the offset of
 * their centres. This is asked some million times a second, so what is asked and answered stands
 * in fields: handing numbers on from function to function costs more than the sum itself.
 */
export class PairTable implements Extent {
	readonly left: number;
	readonly right: number;
	readonly bottom: number;
	readonly top: number;
	/** The offset asked about. */
	x = 0;
	y = 0;
	/** How deep that is, and the shortest way out. */
	depth = 0;
	exitX = 0;
	exitY = 0;
	private readonly sums: Sums;
	private scale: number;
	private across: number;
	private cells: Int32Array;
	private lists: Uint16Array;
	private corners: Float32Array;
	private asked = 0;

	constructor(
		a: Parts,
		b: Parts,
		margin: number,
		private readonly upkeep: Upkeep,
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
		const { scale, across, cells, lists, corners } = plainMap(sums);
		[this.scale, this.across] = [scale, across];
		[this.cells, this.lists, this.corners] = [cells, lists, corners];
		upkeep.left -= 8 * (sums.edges.length + sums.boxes.length) + 4 * sums.first.length + 400;
		upkeep.work += 30 * sums.edges.length;
	}

	/** Sets `depth` for the offset `x`, `y`: 0 when the two are apart or touch. */
	ask(): void {
		const { x, y } = this;
		this.depth = 0;
		if (x <= this.left || x >= this.right || y <= this.bottom || y >= this.top) return;
		const fx = (x - this.left) * this.scale;
		const fy = (y - this.bottom) * this.scale;
		const ix = fx | 0;
		const iy = fy | 0;
		const cell = this.cells[iy * this.across + ix]!;
		if (cell === OUTSIDE) return;
		if (cell !== DEEP) {
			this.askSums(cell);
			return;
		}
		const { corners } = this;
		const below = iy * (this.across + 1) + ix;
		const above = below + this.across + 1;
		const u = fx - ix;
		const low = corners[below]! + u * (corners[below + 1]! - corners[below]!);
		const high = corners[above]! + u * (corners[above + 1]! - corners[above]!);
		this.depth = low + (fy - iy) * (high - low);
	}

	private askSums(cell: number): void {
		const { lists, x, y } = this;
		const { first, edges } = this.sums;
		let deepest = 0;
		for (let k = cell + 1, end = cell + lists[cell]!; k <= end; k++) {
			const s = lists[k]!;
			let depth = Infinity;
			for (let e = 3 * first[s]!, last = 3 * first[s + 1]!; e < last; e += 3) {
				const d = edges[e + 2]! - edges[e]! * x - edges[e + 1]! * y;
				if (d < depth) {
					depth = d;
					if (d <= deepest) break;
				}
			}
			if (depth > deepest) deepest = depth;
		}
		this.depth = deepest;
		if (this.scale === 0) this.countAsked();
	}

	private countAsked(): void {
		this.upkeep.work += 2 * this.sums.count;
		this.asked += 1;
		if (this.asked !== MAP_AFTER || this.sums.count === 1 || this.upkeep.left <= 0) return;
		const map = depthMap(this.sums, this);
		this.take(map);
		this.upkeep.left -= 4 * (map.corners.length + map.cells.length) + 2 * map.lists.length;
		this.upkeep.work += mapWork(this.sums, map);
	}

	private take({ scale, across, cells, lists, corners }: DepthMap): void {
		[this.scale, this.across] = [scale, across];
		[this.cells, this.lists, this.corners] = [cells, lists, corners];
	}

	/** Sets the shortest way out too. */
	askExit(): void {
		this.ask();
		if (this.depth <= 0) return;
		const fx = (this.x - this.left) * this.scale;
		const fy = (this.y - this.bottom) * this.scale;
		const ix = fx | 0;
		const iy = fy | 0;
		if (this.cells[iy * this.across + ix] !== DEEP) return this.exitOfSums();
		const { corners } = this;
		const below = iy * (this.across + 1) + ix;
		const above = below + this.across + 1;
		const along = corners[below + 1]! - corners[below]!;
		const across = corners[above]! - corners[below]!;
		const twist = corners[above + 1]! - corners[above]! - along;
		const gx = along + (fy - iy) * twist;
		const gy = across + (fx - ix) * twist;
		const steep = Math.sqrt(gx * gx + gy * gy);
		if (steep === 0) return this.exitOfSums();
		this.exitX = -gx / steep;
		this.exitY = -gy / steep;
	}

	private exitOfSums(): void {
		const { sums, x, y } = this;
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
		this.upkeep.work += 4 * this.sums.count;
		return free;
	}
}
