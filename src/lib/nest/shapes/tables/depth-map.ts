import { depthInSum, type Sums } from './sums';

/** Cells on the longer side of a map. */
const CELLS = 48;
/** Within so many cells of the border the sums themselves are asked, so that zero stays exact. */
const NEAR_BORDER = 1.5;

export const OUTSIDE = -1;
export const DEEP = -2;

export interface Extent {
	readonly left: number;
	readonly right: number;
	readonly bottom: number;
	readonly top: number;
}

/** How deep a point lies, by the cell of a grid it falls into. */
export interface DepthMap {
	/** Cells a tick. */
	readonly scale: number;
	/** Cells along x. */
	readonly across: number;
	/** Per cell: OUTSIDE, DEEP, or where in `lists` the sums that touch it are listed. */
	readonly cells: Int32Array;
	readonly lists: Uint16Array; // how many, then which
	/** At the corners of the cells; the DEEP ones answer by it alone. */
	readonly corners: Float32Array;
}

/** A map of one cell in which every sum is asked. */
export function plainMap(sums: Sums): DepthMap {
	const lists = Uint16Array.from({ length: sums.count + 1 }, (_, k) =>
		k === 0 ? sums.count : k - 1,
	);
	return { scale: 0, across: 1, cells: new Int32Array(1), lists, corners: new Float32Array(4) };
}

/**
 * How far it is out of all the sums together, on a grid of points. A single sum knows only the way
 * out of itself; of many that overlap each other the way out of one often leads into the next.
 */
export function depthMap(sums: Sums, { left, right, bottom, top }: Extent): DepthMap {
	const cell = Math.max(right - left, top - bottom) / CELLS;
	const nx = Math.ceil((right - left) / cell);
	const ny = Math.ceil((top - bottom) / cell);
	const grid = { nx, ny, cell, left, bottom };
	const corners = wayOut(sums, grid);
	// a hair less, so that nothing lands past the last cell
	return { scale: (1 - 1e-12) / cell, across: nx, corners, ...cellsOf(sums, grid, corners) };
}

/** What making a map is worth, in looks at an edge. */
export function mapWork(sums: Sums, { cells, across }: DepthMap): number {
	return cells.length * (4 * sums.count + across + 20);
}

interface Grid {
	readonly nx: number;
	readonly ny: number;
	readonly cell: number;
	readonly left: number;
	readonly bottom: number;
}

/** At each corner the greater of the depth in one sum and the distance to a corner in none. */
function wayOut(sums: Sums, grid: Grid): Float32Array {
	const { nx, ny, cell, left, bottom } = grid;
	const depth = new Float32Array((nx + 1) * (ny + 1));
	for (let s = 0; s < sums.count; s++) {
		const [x0, x1, y0, y1] = rangeOf(sums, s, grid);
		for (let iy = y0; iy <= y1; iy++)
			for (let ix = x0; ix <= x1; ix++) {
				const at = iy * (nx + 1) + ix;
				const d = depthInSum(sums, s, left + ix * cell, bottom + iy * cell, depth[at]!);
				if (d > depth[at]!) depth[at] = d;
			}
	}
	const far = distances(depth, grid);
	for (let at = 0; at < depth.length; at++)
		if (depth[at]! > 0) depth[at] = Math.max(depth[at]!, (far[at]! - 0.5) * cell);
	return depth;
}

/** The corners and cells that a sum's box reaches. */
function rangeOf(sums: Sums, s: number, grid: Grid): [number, number, number, number] {
	const { nx, ny, cell, left, bottom } = grid;
	const at = (value: number, most: number): number =>
		Math.max(0, Math.min(most, Math.floor(value / cell)));
	const { boxes } = sums;
	return [
		at(boxes[4 * s]! - left, nx - 1),
		at(boxes[4 * s + 1]! - left, nx - 1),
		at(boxes[4 * s + 2]! - bottom, ny - 1),
		at(boxes[4 * s + 3]! - bottom, ny - 1),
	];
}

/** In cells, from each corner to the nearest in no sum; all round the map lies none. */
function distances(depth: Float32Array, { nx, ny }: Grid): Float64Array {
	const wide = nx + 1;
	const high = ny + 1;
	const up = new Float64Array(depth.length); // to the nearest in the same column
	for (let ix = 0; ix < wide; ix++) {
		for (let iy = 0; iy < high; iy++) {
			const at = iy * wide + ix;
			up[at] = depth[at]! > 0 ? (iy > 0 ? up[at - wide]! : 0) + 1 : 0;
		}
		for (let iy = high - 1; iy >= 0; iy--) {
			const at = iy * wide + ix;
			up[at] = Math.min(up[at]!, (iy < high - 1 ? up[at + wide]! : 0) + 1);
		}
	}
	const far = new Float64Array(depth.length);
	for (let iy = 0; iy < high; iy++)
		for (let ix = 0; ix < wide; ix++) {
			let least = Math.min(ix + 1, wide - ix) ** 2;
			for (let k = 0; k < wide; k++) {
				const square = (k - ix) ** 2 + up[iy * wide + k]! ** 2;
				if (square < least) least = square;
			}
			far[iy * wide + ix] = Math.sqrt(least);
		}
	return far;
}

/** What each cell answers by. */
function cellsOf(
	sums: Sums,
	grid: Grid,
	depth: Float32Array,
): { readonly cells: Int32Array; readonly lists: Uint16Array } {
	const { nx, ny, cell } = grid;
	const cells = new Int32Array(nx * ny);
	const touching: [number, number][] = []; // cell and sum
	const deep = deepCells(grid, depth, NEAR_BORDER * cell);
	for (let s = 0; s < sums.count; s++) {
		const [x0, x1, y0, y1] = rangeOf(sums, s, grid);
		for (let iy = y0; iy <= y1; iy++)
			for (let ix = x0; ix <= x1; ix++) {
				const at = iy * nx + ix;
				if (deep[at] === 1 || !touches(sums, s, grid, ix, iy)) continue;
				touching.push([at, s]);
				cells[at]! += 1;
			}
	}
	const lists = new Uint16Array(touching.length + nx * ny);
	let next = 0;
	for (let at = 0; at < cells.length; at++) {
		const many = cells[at]!;
		if (many === 0) cells[at] = deep[at] === 1 ? DEEP : OUTSIDE;
		else {
			cells[at] = next;
			next += many + 1;
		}
	}
	for (const [at, s] of touching) {
		const start = cells[at]!;
		lists[start]! += 1;
		lists[start + lists[start]!] = s;
	}
	return { cells, lists: lists.slice(0, next) };
}

/** The cells with all four corners at least so deep. */
function deepCells({ nx, ny }: Grid, depth: Float32Array, least: number): Uint8Array {
	const deep = new Uint8Array(nx * ny);
	for (let iy = 0; iy < ny; iy++)
		for (let ix = 0; ix < nx; ix++) {
			const corner = iy * (nx + 1) + ix;
			const above = corner + nx + 1;
			const low = Math.min(depth[corner]!, depth[corner + 1]!, depth[above]!, depth[above + 1]!);
			if (low >= least) deep[iy * nx + ix] = 1;
		}
	return deep;
}

/** Does no edge of the sum keep all of a cell outside? Some cells it does not touch pass. */
function touches(sums: Sums, s: number, grid: Grid, ix: number, iy: number): boolean {
	const { cell } = grid;
	const x = grid.left + ix * cell;
	const y = grid.bottom + iy * cell;
	for (let e = 3 * sums.first[s]!; e < 3 * sums.first[s + 1]!; e += 3) {
		const [nx, ny] = [sums.edges[e]!, sums.edges[e + 1]!];
		const nearest = nx * (nx > 0 ? x : x + cell) + ny * (ny > 0 ? y : y + cell);
		if (nearest > sums.edges[e + 2]!) return false;
	}
	return true;
}
