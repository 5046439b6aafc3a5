import { nth, around } from '../../measure';
import { area } from '../extent';
import { orient } from '../orient';
import type { Outline, Point } from '../outline';

/*
 * A flat area cut into convex parts. Overlap of two convex parts is a handful of multiplications,
 * so whatever must be asked a million times is asked of parts.
 */

/**
 * Convex parts, counter-clockwise, that together cover the straight-edged outline less its holes
 * exactly: ears are cut off, then parts are joined over their longest common edges while they stay
 * convex. Corners must be whole ticks.
 */
export function convexParts(outline: Outline, holes: readonly Outline[] = []): Point[][] {
	const { points, loop } = bridged(outline, holes);
	return joined(points, ears(points, loop)).map((part) => part.map((i) => nth(points, i)));
}

interface Loop {
	readonly points: readonly Point[];
	readonly loop: number[];
}

/**
 * One closed walk round the outline and, over bridges there and back, round each hole the other
 * way.
 */
function bridged(outline: Outline, holes: readonly Outline[]): Loop {
	const points: Point[] = outline.map(({ x, y }) => ({ x, y }));
	let loop = points.map((_, i) => i);
	if (area(outline) < 0) loop.reverse();
	const inward = holes.map((hole) => {
		const plain = hole.map(({ x, y }) => ({ x, y }));
		return area(hole) > 0 ? plain.reverse() : plain;
	});
	inward.forEach((hole, i) => (loop = withHole(points, loop, hole, inward.slice(i))));
	return { points, loop };
}

function withHole(
	points: Point[],
	loop: readonly number[],
	hole: readonly Point[],
	unbridged: readonly (readonly Point[])[],
): number[] {
	const start = hole.reduce((best, p, i) => (p.x > nth(hole, best).x ? i : best), 0);
	const from = nth(hole, start);
	const order = loop.map((_, k) => k);
	const apart = (k: number): number => {
		const p = nth(points, nth(loop, k));
		return (p.x - from.x) ** 2 + (p.y - from.y) ** 2;
	};
	order.sort((a, b) => apart(a) - apart(b) || a - b);
	const at = order.find(
		(k) =>
			sees(points, loop, k, from) &&
			unbridged.every((other) => clear(from, nth(points, nth(loop, k)), other)),
	);
	// a hole that touches the outline: nothing is lost by filling it
	if (at === undefined) return [...loop];
	const base = points.length;
	points.push(...hole);
	const round = hole.map((_, i) => base + ((start + i) % hole.length));
	return [...loop.slice(0, at + 1), ...round, base + start, nth(loop, at), ...loop.slice(at + 1)];
}

/**
 * Does the walk lie clear of the straight line from its corner `k` to `p`, and does the line leave
 * to the inside?
 */
function sees(points: readonly Point[], loop: readonly number[], k: number, p: Point): boolean {
	const n = loop.length;
	const at = nth(points, nth(loop, k));
	const before = nth(points, nth(loop, (k + n - 1) % n));
	const after = nth(points, nth(loop, (k + 1) % n));
	if (!insideCorner(before, at, after, p)) return false;
	return clear(
		p,
		at,
		loop.map((i) => nth(points, i)),
	);
}

function insideCorner(before: Point, at: Point, after: Point, p: Point): boolean {
	const leftOfIn = orient(before, at, p) > 0;
	const leftOfOut = orient(at, after, p) > 0;
	return orient(before, at, after) >= 0 ? leftOfIn && leftOfOut : leftOfIn || leftOfOut;
}

/** Does no edge of the walk meet the line from `p` to `q` except at those ends? */
function clear(p: Point, q: Point, walk: readonly Point[]): boolean {
	return walk.every((a, i) => {
		const b = around(walk, i + 1);
		if (alike(a, p) || alike(a, q) || alike(b, p) || alike(b, q)) return true;
		const apart = orient(p, q, a) * orient(p, q, b) > 0 || orient(a, b, p) * orient(a, b, q) > 0;
		return apart;
	});
}

const alike = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

/** A corner of what is left of the walk, with what was seen of it when last looked at. */
interface Corner {
	readonly i: number;
	side: number;
	/** On a straight run: nothing is cut off with it. */
	isStraight: boolean;
	fat: number;
	/** One that lies in the ear. As long as it is there, no other needs to be looked for. */
	blocker: Corner | null;
}

/**
 * Ear by ear. Where no clean ear is left (the walk touches itself), the least bad convex corner
 * goes. A corner is looked at again only when a neighbour or its blocker is gone.
 */
function ears(points: readonly Point[], loop: readonly number[]): number[][] {
	const rest = loop.map((i): Corner => ({ i, side: 0, isStraight: false, fat: 0, blocker: null }));
	const parts: number[][] = [];
	rest.forEach((_, k) => look(points, rest, k));
	while (rest.length > 3) {
		const at = findEar(rest);
		const ear = nth(rest, at);
		const beside = [around(rest, at - 1), around(rest, at + 1)] as const;
		if (ear.side > 0) parts.push([beside[0].i, ear.i, beside[1].i]);
		rest.splice(at, 1);
		rest.forEach((corner, k) => {
			if (beside.includes(corner) || corner.blocker === ear) look(points, rest, k);
		});
	}
	if (rest.length === 3 && nth(rest, 0).side > 0) parts.push(rest.map(({ i }) => i));
	return parts;
}

function look(points: readonly Point[], rest: readonly Corner[], k: number): void {
	const corner = nth(rest, k);
	const [a, b, c] = [
		nth(points, around(rest, k - 1).i),
		nth(points, corner.i),
		nth(points, around(rest, k + 1).i),
	];
	corner.side = orient(a, b, c);
	corner.isStraight = corner.side === 0 && isBetween(a, b, c);
	if (corner.side <= 0) return;
	corner.fat = fatness(a, b, c);
	corner.blocker = rest.find(({ i }) => blocks(nth(points, i), a, b, c)) ?? null;
}

/** A corner on a straight run goes at once; else the fattest ear. */
function findEar(rest: readonly Corner[]): number {
	let best = -1;
	let bestFat = -1;
	for (let k = 0; k < rest.length; k++) {
		const { side, isStraight, fat, blocker } = nth(rest, k);
		if (isStraight) return k;
		if (side > 0 && blocker === null && fat > bestFat) [best, bestFat] = [k, fat];
	}
	if (best >= 0) return best;
	const flat = rest.findIndex(({ side }) => side === 0);
	return Math.max(0, flat >= 0 ? flat : rest.findIndex(({ side }) => side > 0));
}

function cornerSide(points: readonly Point[], loop: readonly number[], k: number): number {
	const n = loop.length;
	return orient(
		nth(points, nth(loop, (k + n - 1) % n)),
		nth(points, nth(loop, k)),
		nth(points, nth(loop, (k + 1) % n)),
	);
}

function isBetween(a: Point, b: Point, c: Point): boolean {
	return (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) >= 0;
}

/** A corner inside the ear, or on the line that would cut it off, blocks it. */
function blocks(p: Point, a: Point, b: Point, c: Point): boolean {
	if (alike(p, a) || alike(p, b) || alike(p, c)) return false;
	return orient(a, b, p) >= 0 && orient(b, c, p) >= 0 && orient(c, a, p) >= 0;
}

/** Area against the square of the longest side: slivers make poor parts. */
function fatness(a: Point, b: Point, c: Point): number {
	const twice = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
	const square = (p: Point, q: Point): number => (p.x - q.x) ** 2 + (p.y - q.y) ** 2;
	return twice / Math.max(square(a, b), square(b, c), square(c, a));
}

/** Join parts over common edges, the longest first, as long as they stay convex. */
function joined(points: readonly Point[], parts: readonly number[][]): number[][] {
	// A part that was joined to another is left empty.
	const all = parts.map((part) => [...part]);
	for (const [i, j] of commonEdges(points, parts)) {
		const a = all.findIndex((part) => edgeAt(part, i, j) >= 0);
		const b = all.findIndex((part) => edgeAt(part, j, i) >= 0);
		if (a < 0 || b < 0 || a === b) continue;
		const merged = merge(nth(all, a), nth(all, b), i, j);
		if (!isConvex(points, merged)) continue;
		all[a] = merged;
		all[b] = [];
	}
	return all.filter((part) => part.length > 0);
}

function commonEdges(points: readonly Point[], parts: readonly number[][]): [number, number][] {
	const edges = new Set(parts.flatMap((part) => part.map((i, k) => `${i} ${around(part, k + 1)}`)));
	const common: { ends: [number, number]; length: number }[] = [];
	for (const part of parts) {
		part.forEach((i, k) => {
			const j = around(part, k + 1);
			if (i > j || !edges.has(`${j} ${i}`)) return;
			const [p, q] = [nth(points, i), nth(points, j)];
			common.push({ ends: [i, j], length: Math.hypot(p.x - q.x, p.y - q.y) });
		});
	}
	common.sort((a, b) => b.length - a.length || a.ends[0] - b.ends[0] || a.ends[1] - b.ends[1]);
	return common.map((edge) => edge.ends);
}

function edgeAt(part: readonly number[], i: number, j: number): number {
	return part.findIndex((v, k) => v === i && part[(k + 1) % part.length] === j);
}

/**
 * `a` holds the edge i to j, `b` the edge j to i: round a from j to i, then round b from i to j.
 */
function merge(a: readonly number[], b: readonly number[], i: number, j: number): number[] {
	const fromJ = rotated(a, a.indexOf(j));
	const fromI = rotated(b, b.indexOf(i));
	return [...fromJ, ...fromI.slice(1, -1)];
}

function rotated(part: readonly number[], k: number): number[] {
	return [...part.slice(k), ...part.slice(0, k)];
}

function isConvex(points: readonly Point[], part: readonly number[]): boolean {
	return part.every((_, k) => cornerSide(points, part, k) >= 0);
}
