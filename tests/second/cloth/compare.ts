import { expect } from 'vitest';
import { extentOf, fromBehind, type Laid } from './flat';
import type { Spot } from '../section';

/* A blank of the plan held against a cloth worked the second way. */

const MM = 1600;
/** The planner's edges lie on the grid, each end off by less than a tick or two. mm */
export const GRID = 0.005;
/** A curve drawn as chords runs up to a tenth of a millimetre from it, and its ends snap. mm */
const CHORD = 0.12;
/** How far beside an edge spots are tried. mm */
const BESIDE = 0.1;

/** What is read of a blank of the plan; ticks. */
export interface BlankRead {
	readonly id: string;
	readonly label: string;
	readonly covers: string;
	readonly cloth: string;
	readonly count: number;
	readonly length: number;
	readonly width: number;
	readonly outline: readonly { readonly x: number; readonly y: number }[];
	readonly marks: readonly {
		readonly kind: string;
		readonly line: readonly { readonly x: number; readonly y: number }[];
	}[];
	readonly bonded: number;
	readonly partAt?: { readonly x: number; readonly y: number };
}

export function sizeIs(blank: BlankRead, length: number, width: number): void {
	expect(Math.abs(blank.length / MM - length), `${blank.covers}: along the roll`).toBeLessThan(
		GRID,
	);
	expect(Math.abs(blank.width / MM - width), `${blank.covers}: across it`).toBeLessThan(GRID);
}

/**
 * Sizes, and where it meets nothing odd the whole outline: beside every part of its edge the cloth
 * lies on one hand and not on the other, and both enclose the same area.
 */
export function outlineIs(
	blank: BlankRead,
	cloth: Laid,
	nap: number,
	radius?: number,
): 'whole' | 'odd' {
	const { low, high } = extentOf(cloth.corners().map((p) => fromBehind(p, nap)));
	if (!cloth.plain) return 'odd';
	const off = radius === undefined ? GRID : CHORD;
	const size = { x: high.x - low.x, y: high.y - low.y };
	expect(Math.abs(blank.length / MM - size.x), `${blank.covers}: along the roll`).toBeLessThan(off);
	expect(Math.abs(blank.width / MM - size.y), `${blank.covers}: across it`).toBeLessThan(off);
	const holds = (p: Spot): boolean =>
		cloth.holds(fromBehind({ x: p.x + low.x, y: p.y + low.y }, nap));
	// Outside a rounding the planner takes its tangents: as much of a larger circle farther off.
	const farther = radius === undefined ? 0 : (CHORD * (radius + cloth.farthest)) / radius;
	besideTheEdge(blank, holds, BESIDE + farther);
	sameArea(blank, holds, size);
	return 'whole';
}

function besideTheEdge(
	{ outline, covers }: BlankRead,
	holds: (p: Spot) => boolean,
	inside: number,
): void {
	const corners = outline.map(({ x, y }) => ({ x: x / MM, y: y / MM }));
	corners.forEach((a, k) => {
		const b = corners[(k + 1) % corners.length]!;
		const long = Math.hypot(b.x - a.x, b.y - a.y);
		if (long < 4 * inside) return;
		const out = { x: (b.y - a.y) / long, y: (a.x - b.x) / long };
		const spot = (at: Spot, by: number): Spot => ({ x: at.x + out.x * by, y: at.y + out.y * by });
		for (const part of [(2 * inside) / long, 0.31, 0.5, 0.73, 1 - (2 * inside) / long]) {
			const at = { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
			const where = `${covers}: edge ${k}, ${at.x.toFixed(1)}, ${at.y.toFixed(1)}`;
			expect(holds(spot(at, -inside)), `${where}, inside`).toBe(true);
			expect(holds(spot(at, BESIDE)), `${where}, outside`).toBe(false);
		}
	});
}

const POINTS = 4000;
/** Points so spread miss an area by some POINTS^(-3/4) of its room, 0.2 %; five times that. */
const NEAR = 5 * POINTS ** -0.75;

function sameArea(blank: BlankRead, holds: (p: Spot) => boolean, size: Spot): void {
	let on = 0;
	for (let n = 1; n <= POINTS; n++)
		if (holds({ x: ((n - 0.5) / POINTS) * size.x, y: mirrored(n) * size.y })) on++;
	const room = size.x * size.y;
	const found = (on / POINTS) * room;
	expect(Math.abs(areaOf(blank.outline) - found) / room, `${blank.covers}: area`).toBeLessThan(
		NEAR,
	);
}

/** By the shoelace, mm2. */
export const areaOf = (ring: readonly { readonly x: number; readonly y: number }[]): number =>
	Math.abs(
		ring.reduce((sum, p, k) => {
			const q = ring[(k + 1) % ring.length]!;
			return sum + (p.x * q.y - q.x * p.y) / 2;
		}, 0),
	) /
	MM ** 2;

/** The digits of n to the base 2 behind the point, last first: spots without gaps or heaps. */
function mirrored(n: number): number {
	let sum = 0;
	for (let rest = n, place = 0.5; rest > 0; rest >>= 1, place /= 2) sum += (rest & 1) * place;
	return sum;
}
