import { depthIn, forbidden, type Forbidden } from '../../geometry';
import type { FreeShape } from './free-shape';

interface PairTable {
	readonly sums: readonly Forbidden[];
	readonly left: number;
	readonly right: number;
	readonly bottom: number;
	readonly top: number;
}

/** Where shapes may not lie beside each other, worked out for a pair when it is first asked for. */
export class PairTables {
	/** Work done: parts compared, a close look counting as eight. */
	work = 0;
	private readonly tables = new Map<number, PairTable>();

	constructor(private readonly shapes: number) {}

	/** How deep b, lying at x, y from a, overlaps it; 0 when they are apart or touch. */
	depth(a: FreeShape, b: FreeShape, x: number, y: number): number {
		if (a.n > b.n) return this.depth(b, a, -x, -y);
		const table = this.table(a, b);
		if (x <= table.left || x >= table.right || y <= table.bottom || y >= table.top) return 0;
		let deepest = 0;
		this.work += table.sums.length;
		for (const sum of table.sums) {
			if (x <= sum.left || x >= sum.right || y <= sum.bottom || y >= sum.top) continue;
			this.work += 8;
			const depth = depthIn(sum, x, y);
			if (depth > deepest) deepest = depth;
		}
		return deepest;
	}

	/**
	 * How far b, lying at x, y from a, may slide to the left before it meets a; Infinity when it
	 * never does.
	 */
	slideLeft(a: FreeShape, b: FreeShape, x: number, y: number): number {
		let free = Infinity;
		for (const sum of this.table(a, b).sums) {
			if (y <= sum.bottom || y >= sum.top || x <= sum.left) continue;
			this.work += 8;
			free = Math.min(free, Math.max(0, x - rightAt(sum, y)));
		}
		return free;
	}

	private table(a: FreeShape, b: FreeShape): PairTable {
		const key = a.n * this.shapes + b.n;
		const known = this.tables.get(key);
		if (known !== undefined) return known;
		const sums = a.parts.flatMap((one) => b.parts.map((other) => forbidden(one, other)));
		this.work += 30 * sums.length;
		const table = {
			sums,
			left: Math.min(...sums.map((s) => s.left)),
			right: Math.max(...sums.map((s) => s.right)),
			bottom: Math.min(...sums.map((s) => s.bottom)),
			top: Math.max(...sums.map((s) => s.top)),
		};
		this.tables.set(key, table);
		return table;
	}
}

/** Where a level line at y leaves the polygon on the right. */
function rightAt(sum: Forbidden, y: number): number {
	let right = Infinity;
	for (let e = 0; e < sum.edges.length; e += 3) {
		const nx = sum.edges[e]!;
		if (nx > 0) right = Math.min(right, (sum.edges[e + 2]! - sum.edges[e + 1]! * y) / nx);
	}
	return right;
}
