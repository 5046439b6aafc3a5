import { lastOf, nth, type Length, snap, around, mm } from '../../../measure';
import {
	flatten,
	grown,
	linesOutside,
	type Outline,
	type Point,
	setIn,
	setInAll,
	distance,
} from '../../../geometry';
import { say, type Bench } from '../bench';
import type { Fit, GrooveFigure } from '../figures';

/** Something on the back the groove must not run through. */
export interface GrooveObstacle {
	readonly name: string;
	readonly outline: Outline;
	readonly keep: number; // clear distance, ticks
}

export interface GrooveSize {
	readonly width: Length;
	readonly depth: Length;
	readonly offset: Length;
}

/** The groove asked for, or null for none: a bare panel has nothing to trim. */
export function grooveSize(bench: Bench): GrooveSize | null {
	const { panel, job } = bench;
	if (panel.cloth === null || panel.groove === 'none') return null;
	return panel.groove === 'shop' ? job.shop.groove : panel.groove;
}

/**
 * What must be left of the board under the groove: 3 mm, and no less than a third. Common practice,
 * no source.
 */
export function checkGroove(bench: Bench, size: GrooveSize, thickness: number): GrooveSize | null {
	const left = thickness - size.depth;
	if (left <= 0) {
		bench.log.stop(
			['groove'],
			`The knife groove is ${say(bench, size.depth)} deep and the board ${say(bench, thickness)} thick: it would cut through.`,
			`Make it ${say(bench, thickness / 2)} deep or less, or do without one. Until then the cloth is turned under without a groove.`,
		);
		return null;
	}
	if (left < Math.max(mm(3), thickness / 3))
		bench.log.check(
			['groove'],
			`The knife groove leaves ${say(bench, left)} of a board ${say(bench, thickness)} thick; its edge may break out.`,
			`Make it ${say(bench, thickness / 2)} deep or less.`,
		);
	return size;
}

/**
 * Centre lines of the groove along every wrapped edge of board and windows, stopped short of the
 * obstacles; null where the board is too narrow for it.
 */
export function grooveFigure(
	bench: Bench,
	size: GrooveSize,
	fit: Fit,
	windows: readonly Outline[],
	obstacles: readonly GrooveObstacle[],
): GrooveFigure | null {
	const centre = size.offset + size.width / 2;
	const round = boardLines(bench, fit, centre);
	if (!round) return null;
	const lines = [...round, ...windows.flatMap((w) => ringLine(w, centre))];
	const walls = obstacles.map((o) =>
		grown([o.outline], o.keep + size.width / 2).map((r) => r.outline),
	);
	const runs = linesOutside(lines, walls.flat()).map((line) => [...line]);
	const all = lengthOf(lines);
	const free = lengthOf(runs) >= all - 1;
	const stops = obstacles.filter(
		(_, i) => !free && lengthOf(linesOutside(lines, nth(walls, i))) < all - 1,
	);
	return {
		...size,
		runs,
		length: snap(lengthOf(runs)),
		stops: [...new Set(stops.map((o) => o.name))],
	};
}

export function lengthOf(lines: readonly (readonly Point[])[]): number {
	let sum = 0;
	for (const line of lines)
		for (let i = 1; i < line.length; i++) sum += distance(nth(line, i - 1), nth(line, i));
	return sum;
}

const FLAT = 80; // 0.05 mm, finer than a groove is wide by far

/** Along wrapped edges; at an edge that is not wrapped the groove runs out of the board. */
function boardLines(bench: Bench, fit: Fit, centre: number): Point[][] | null {
	const set = setIn(
		fit.board,
		fit.boardEdges.map((end) => (end === 'wrapped' ? centre : 0)),
	);
	if (!set.outline || set.closed.length > 0) {
		bench.log.check(
			['groove'],
			'The knife groove does not fit on the back: the board is too narrow for it. It is left out, and the cloth is turned under without one.',
			'Set it nearer to the edge, or ask for none.',
		);
		return null;
	}
	const wrapped = set.from.map((k, i) => {
		const from = k ?? set.from[i - 1] ?? null;
		return from !== null && k !== null && fit.boardEdges[from] === 'wrapped';
	});
	return chains(set.outline, wrapped);
}

/** The stretches of an outline whose edges are marked, as open lines. */
function chains(outline: Outline, marked: readonly boolean[]): Point[][] {
	const n = outline.length;
	if (marked.every(Boolean)) return [closedLine(outline)];
	const start = marked.findIndex((m, i) => m && !marked[(i + n - 1) % n]);
	if (start < 0) return [];
	const lines: Point[][] = [];
	for (let k = 0; k < n; k++) {
		const i = (start + k) % n;
		if (!marked[i]) continue;
		const joins = k > 0 && marked[(i + n - 1) % n];
		const edge = edgeLine(outline, i);
		if (joins) lastOf(lines).push(...edge.slice(1));
		else lines.push(edge);
	}
	return lines;
}

/** One edge as a flattened line. */
function edgeLine(outline: Outline, i: number): Point[] {
	const from = nth(outline, i);
	const to = around(outline, i + 1);
	// Flattened with its own chord as the way back, which is left out again.
	return [...flatten([from, { x: to.x, y: to.y }], FLAT)];
}

function closedLine(outline: Outline): Point[] {
	const flat = flatten(outline, FLAT);
	return [...flat, nth(flat, 0)];
}

function ringLine(hole: Outline, centre: number): Point[][] {
	const set = setInAll(hole, -centre);
	return set.outline && set.closed.length === 0 ? [closedLine(set.outline)] : [];
}
