import type { FreeKind } from '../free-shape';
import type { Point } from '../../../geometry';
import { PairTable, type Store } from './pair-table';

/**
 * Added to the gap between two pieces: what the grid takes when both are moved to it (the square
 * root of two) and what counts as touching (TOUCH).
 */
const SPARE = 2;
/** Less overlap than this, ticks, counts as touching. */
export const TOUCH = 0.5;
/** Memory for tables and maps, bytes; past it maps are no longer made. */
const MEMORY = 300e6;

/** How far two shapes overlap, from tables made when they are first asked for. */
export class PairTables {
	/** Kind, quarter turns, and how far it reaches from the centre of its box, per shape. */
	readonly kind: Int32Array;
	readonly quarters: Int32Array;
	readonly reachX: Float64Array;
	readonly reachY: Float64Array;
	/** Half the sides of the true piece, per shape. */
	readonly halfLength: Float64Array;
	readonly halfWidth: Float64Array;
	/** The way out where it was last asked, for the second shape. */
	exitX = 0;
	exitY = 0;
	private readonly store: Store = { left: MEMORY, work: 0 };
	private readonly tables: (PairTable | undefined)[] = [];
	private readonly parts: readonly (readonly (readonly Point[])[])[][];
	private readonly margin: number;

	constructor(
		private readonly kinds: readonly FreeKind[],
		gap: number,
	) {
		this.margin = gap + SPARE;
		const shapes = kinds.flatMap((kind, k) => kind.shapes.map((shape) => ({ shape, k })));
		this.kind = Int32Array.from(shapes, ({ k }) => k);
		this.quarters = Int32Array.from(shapes, ({ shape }) => shape.turn / 90);
		this.halfLength = Float64Array.from(shapes, ({ shape }) => shape.length / 2);
		this.halfWidth = Float64Array.from(shapes, ({ shape }) => shape.width / 2);
		this.parts = kinds.map((kind) => turnedParts(kind));
		const extents = shapes.map(({ shape, k }) => this.parts[k]![shape.turn / 90]!.flat());
		this.reachX = Float64Array.from(
			extents,
			(points) => reach(points, (p) => p.x) + this.margin / 2,
		);
		this.reachY = Float64Array.from(
			extents,
			(points) => reach(points, (p) => p.y) + this.margin / 2,
		);
	}

	get work(): number {
		return this.store.work;
	}

	/** How deep shape b, its centre x, y from that of shape a, overlaps it; 0 apart or touching. */
	depth(a: number, b: number, x: number, y: number): number {
		const kindA = this.kind[a]!;
		const kindB = this.kind[b]!;
		if (kindA > kindB) return this.depth(b, a, -x, -y);
		const turn = this.quarters[a]!;
		const relative = (this.quarters[b]! - turn) & 3;
		const table = this.tables[4 * (kindA * this.kinds.length + kindB) + relative];
		const known = table ?? this.make(kindA, kindB, relative);
		if (turn === 0) return known.depth(x, y);
		if (turn === 1) return known.depth(y, -x);
		if (turn === 2) return known.depth(-x, -y);
		return known.depth(-y, x);
	}

	private make(a: number, b: number, relative: number): PairTable {
		const { parts, margin, store } = this;
		const table = new PairTable(parts[a]![0]!, parts[b]![relative]!, margin, store);
		this.tables[4 * (a * this.kinds.length + b) + relative] = table;
		return table;
	}

	/** The same, and the shortest way out for b left in `exitX`, `exitY`. */
	exit(a: number, b: number, x: number, y: number): number {
		if (this.kind[a]! > this.kind[b]!) {
			const depth = this.exit(b, a, -x, -y);
			this.exitX = -this.exitX;
			this.exitY = -this.exitY;
			return depth;
		}
		const turn = this.quarters[a]!;
		const table = this.between(a, b);
		const [lx, ly] = turnedBack(x, y, turn);
		const depth = table.exit(lx, ly);
		[this.exitX, this.exitY] = turnedBack(table.exitX, table.exitY, (4 - turn) & 3);
		return depth;
	}

	/** How far b may slide to the left before it meets a; Infinity when it never does. */
	slideLeft(a: number, b: number, x: number, y: number): number {
		const swapped = this.kind[a]! > this.kind[b]!;
		const [first, second, sign] = swapped ? [b, a, -1] : [a, b, 1];
		const turn = this.quarters[first]!;
		const from = turnedBack(sign * x, sign * y, turn);
		return this.between(first, second).freeRun(from, turnedBack(-sign, 0, turn));
	}

	private between(a: number, b: number): PairTable {
		const relative = (this.quarters[b]! - this.quarters[a]!) & 3;
		const [kindA, kindB] = [this.kind[a]!, this.kind[b]!];
		return (
			this.tables[4 * (kindA * this.kinds.length + kindB) + relative] ??
			this.make(kindA, kindB, relative)
		);
	}
}

/** The parts of a kind from the centre of its box, for each number of quarter turns. */
function turnedParts(kind: FreeKind): Point[][][] {
	const centred = kind.parts.map((part) =>
		part.map((p) => ({ x: p.x - kind.length / 2, y: p.y - kind.width / 2 })),
	);
	return [0, 1, 2, 3].map((turn) =>
		centred.map((part) =>
			part.map((p) => {
				const [x, y] = turnedBack(p.x, p.y, (4 - turn) & 3);
				return { x, y };
			}),
		),
	);
}

/** Turned clockwise by so many quarters. */
function turnedBack(x: number, y: number, quarters: number): [number, number] {
	if (quarters === 0) return [x, y];
	if (quarters === 1) return [y, -x];
	if (quarters === 2) return [-x, -y];
	return [-y, x];
}

function reach(points: readonly Point[], of: (p: Point) => number): number {
	return points.reduce((far, p) => Math.max(far, Math.abs(of(p))), 0);
}
