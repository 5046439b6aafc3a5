import type { FreeKind } from '../free-shape';
import type { Point } from '../../../geometry';
import { PairTable, type Upkeep } from './pair-table';

/**
 * Added to the gap between two pieces: what the grid takes when both are moved to it (the square
 * root of two) and what counts as touching (TOUCHING).
 */
const SPARE = 2;
/** Less overlap than this, ticks, counts as touching. */
export const TOUCHING = 0.5;
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
	private readonly upkeep: Upkeep = { left: MEMORY, work: 0 };
	private readonly tables: (PairTable | null)[];
	private readonly parts: readonly (readonly (readonly Point[])[])[][];
	private readonly margin: number;

	constructor(
		private readonly kinds: readonly FreeKind[],
		gap: number,
	) {
		this.margin = gap + SPARE;
		this.tables = new Array<PairTable | null>(4 * kinds.length ** 2).fill(null);
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
		return this.upkeep.work;
	}

	/** How deep shape b, its centre x, y from that of shape a, overlaps it; 0 apart or touching. */
	depth(a: number, b: number, x: number, y: number): number {
		const table = this.between(a, b, x, y);
		table.ask();
		return table.depth;
	}

	/** The same, and the shortest way out for b left in `exitX`, `exitY`. */
	exit(a: number, b: number, x: number, y: number): number {
		const table = this.between(a, b, x, y);
		table.askExit();
		const { exitX, exitY } = table;
		const turned = this.frameOf(a, b);
		this.exitX = turned === 0 ? exitX : turned === 1 ? -exitY : turned === 2 ? -exitX : exitY;
		this.exitY = turned === 0 ? exitY : turned === 1 ? exitX : turned === 2 ? -exitY : -exitX;
		return table.depth;
	}

	/** By how many quarters the first of the two kinds is turned; a swap counts as two. */
	private frameOf(a: number, b: number): number {
		return this.kind[a]! > this.kind[b]! ? this.quarters[b]! ^ 2 : this.quarters[a]!;
	}

	/** The table of two shapes, ready to be asked about b at x, y from a. */
	private between(a: number, b: number, x: number, y: number): PairTable {
		const { kind, quarters } = this;
		const swapped = kind[a]! > kind[b]!;
		const first = swapped ? b : a;
		const second = swapped ? a : b;
		const turn = quarters[first]!;
		const at =
			4 * (kind[first]! * this.kinds.length + kind[second]!) + ((quarters[second]! - turn) & 3);
		const table = this.tables[at] ?? this.make(at);
		// the offset as the first of the two kinds sees it
		const turned = swapped ? turn ^ 2 : turn;
		table.x = turned === 0 ? x : turned === 1 ? y : turned === 2 ? -x : -y;
		table.y = turned === 0 ? y : turned === 1 ? -x : turned === 2 ? -y : x;
		return table;
	}

	private make(at: number): PairTable {
		const { parts, margin, upkeep } = this;
		const pair = at >> 2;
		const [a, b] = [Math.floor(pair / this.kinds.length), pair % this.kinds.length];
		const table = new PairTable(parts[a]![0]!, parts[b]![at & 3]!, margin, upkeep);
		this.tables[at] = table;
		return table;
	}

	/** How far b may slide to the left before it meets a; Infinity when it never does. */
	slideLeft(a: number, b: number, x: number, y: number): number {
		const table = this.between(a, b, x, y);
		return table.freeRun([table.x, table.y], turnedBack(-1, 0, this.frameOf(a, b)));
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
