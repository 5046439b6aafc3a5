import Module, { type Manifold as Body } from 'manifold-3d';
export type { Body };
import type { BoxBoard } from '../../../src/lib/design/box/box-plan';
import type { Solid } from '../../../src/lib/design/box/solid/solid';
import type { Point3 } from '../../../src/lib/design/box/solid/vec';
import { TICKS_PER_MM } from '../../../src/lib/measure/length';

/*
 * A solid-modelling kernel as the referee: bodies in millimetres, made from the corners of the
 * boards and nothing else.
 */

const wasm = await Module();
wasm.setup();
export const { Manifold } = wasm;

type Vec = [number, number, number];
const mm = (p: Point3): Vec => [p.x / TICKS_PER_MM, p.y / TICKS_PER_MM, p.z / TICKS_PER_MM];

/** The convex body round these corners. */
export function hullOf(points: readonly Point3[]): Body {
	return Manifold.hull(points.map(mm));
}

/**
 * A body whose sides are flat between corresponding corners. One with an inward corner is cut into
 * convex pieces along the diagonals of its outline first.
 */
export function bodyOf(solid: Solid): Body {
	const pieces = triangles(solid);
	if (!pieces) return hullOf([...solid.outside, ...solid.inside]);
	return Manifold.union(
		pieces.map((t) => hullOf(t.flatMap((i) => [solid.outside[i]!, solid.inside[i]!]))),
	);
}

/** Triangles of an outline with inward corners, by index; null for a convex one. */
function triangles({ outside }: Solid): number[][] | null {
	const normal = newell(outside);
	const turn = (a: number, b: number, c: number): number =>
		dot(cross(sub(outside[b]!, outside[a]!), sub(outside[c]!, outside[b]!)), normal);
	let left = outside.map((_, i) => i);
	if (left.every((_, k) => turn(at(left, k - 1), left[k]!, at(left, k + 1)) > -1e-3)) return null;
	const found: number[][] = [];
	while (left.length > 3) {
		const k = left.findIndex((_, i) => {
			const [a, b, c] = [at(left, i - 1), left[i]!, at(left, i + 1)];
			if (turn(a, b, c) <= 0) return false;
			const others = left.filter((q) => q !== a && q !== b && q !== c);
			return !others.some((q) => turn(a, b, q) >= 0 && turn(b, c, q) >= 0 && turn(c, a, q) >= 0);
		});
		if (k < 0) throw new Error('no ear');
		found.push([at(left, k - 1), left[k]!, at(left, k + 1)]);
		left = left.filter((_, i) => i !== k);
	}
	return [...found, left];
}

const at = (list: readonly number[], i: number): number => list[(i + list.length) % list.length]!;
const sub = (a: Point3, b: Point3): Point3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const sub2 = (a: Spot2, b: Spot2): Spot2 => ({ x: a.x - b.x, y: a.y - b.y });
const dot = (a: Point3, b: Point3): number => a.x * b.x + a.y * b.y + a.z * b.z;
const cross = (a: Point3, b: Point3): Point3 => ({
	x: a.y * b.z - a.z * b.y,
	y: a.z * b.x - a.x * b.z,
	z: a.x * b.y - a.y * b.x,
});

function newell(points: readonly Point3[]): Point3 {
	const zero = { x: 0, y: 0, z: 0 };
	return points.reduce((sum, p, i) => {
		const c = cross(p, points[(i + 1) % points.length]!);
		return { x: sum.x + c.x, y: sum.y + c.y, z: sum.z + c.z };
	}, zero);
}

/**
 * All bodies as one, one after the other: the kernel's union of many at once loses slivers between
 * touching faces, up to a thousandth of a box. It puts work off until a figure is asked for and
 * then joins all that waits at once, so each step is asked for. Bodies that have nothing in common
 * may still come out smaller than their sum in one order and not in the other; those that do
 * overlap come out smaller in both.
 */
export function joined(bodies: readonly Body[]): Body {
	const there = oneByOne(bodies);
	const sum = bodies.reduce((total, b) => total + b.volume(), 0);
	if (there.volume() > sum * (1 - 1e-9)) return there;
	const back = oneByOne([...bodies].reverse());
	return back.volume() > there.volume() ? back : there;
}

function oneByOne(bodies: readonly Body[]): Body {
	return bodies.reduce((whole, b) => {
		const more = whole.add(b);
		if (more.status() !== 'NoError') throw new Error(`the kernel says ${more.status()}`);
		return more;
	});
}

/** A board with its rabbets and its straight-sided holes taken out. */
export function boardBody(board: BoxBoard): Body {
	let body = bodyOf(board.solid);
	for (const cut of board.rabbets) body = body.subtract(bodyOf(cut));
	for (const hole of board.holes) {
		if (hole.outline.some((c) => c.bulge)) throw new Error('round holes are checked by formula');
		body = body.subtract(bodyOf(holeSolid(board, hole.outline)));
	}
	return body;
}

/**
 * What the corners of its holes, given on the grid, leave in doubt of a board: each stands up to
 * half a tick beside where it is in both directions, so each hole is out by up to half a tick times
 * the way round it (counted along both directions) times the thickness. mm3.
 */
export function holeGrid(board: BoxBoard): number {
	const half = 0.5 / TICKS_PER_MM;
	const round = board.holes.reduce((sum, { outline }) => {
		const sides = outline.map((p, i) => sub2(outline[(i + 1) % outline.length]!, p));
		return sum + sides.reduce((s, d) => s + Math.abs(d.x) + Math.abs(d.y), 0);
	}, 0);
	return (half * round * board.thickness) / TICKS_PER_MM ** 2;
}

/**
 * A body grown a hundredth of a millimetre on every side. Not made larger about its middle: the
 * inward corner of a stepped end would move away from the step it stands on.
 */
export function grown(body: Body): Body {
	return body.minkowskiSum(Manifold.cube([0.02, 0.02, 0.02], true));
}

interface Spot2 {
	readonly x: number;
	readonly y: number;
}

/** Where the outsides of neighbouring walls meet in the side view, wall by wall. Ticks. */
export function outsideCorners(walls: readonly BoxBoard[]): Spot2[] {
	const lines = walls.map(({ frame, solid }) => {
		const n = { x: frame.n.y, y: frame.n.z };
		const p = solid.outside[0]!;
		return { n, d: n.x * p.y + n.y * p.z };
	});
	return lines.map((b, i) => {
		const a = lines[(i + lines.length - 1) % lines.length]!;
		const det = a.n.x * b.n.y - a.n.y * b.n.x;
		return { x: (a.d * b.n.y - b.d * a.n.y) / det, y: (a.n.x * b.d - b.n.x * a.d) / det };
	});
}

/** The eight corners where the outsides of three walls of a tapered box meet. Ticks. */
export function taperedCorners(walls: readonly BoxBoard[]): Point3[] {
	const plane = (key: string): { n: Point3; d: number } => {
		const { frame, solid } = walls.find((b) => b.key === key)!;
		return { n: frame.n, d: dot(frame.n, solid.outside[0]!) };
	};
	const corner = (keys: readonly string[]): Point3 => {
		const [a, b, c] = keys.map(plane) as [ReturnType<typeof plane>, ...ReturnType<typeof plane>[]];
		const [bc, ca, ab] = [cross(b!.n, c!.n), cross(c!.n, a.n), cross(a.n, b!.n)];
		const det = dot(a.n, bc);
		const at = (axis: keyof Point3): number =>
			(a.d * bc[axis] + b!.d * ca[axis] + c!.d * ab[axis]) / det;
		return { x: at('x'), y: at('y'), z: at('z') };
	};
	return ['front', 'back'].flatMap((end) =>
		['left', 'right'].flatMap((side) =>
			['bottom', 'top'].map((level) => corner([end, side, level])),
		),
	);
}

/** A hole as a body that reaches a little past both faces. */
function holeSolid(board: BoxBoard, outline: readonly { x: number; y: number }[]): Solid {
	const { u, v, n } = board.frame;
	const low = lowest(board);
	const place = (p: { x: number; y: number }, up: number): Point3 => ({
		x: low.x + u.x * p.x + v.x * p.y + n.x * up,
		y: low.y + u.y * p.x + v.y * p.y + n.y * up,
		z: low.z + u.z * p.x + v.z * p.y + n.z * up,
	});
	const over = TICKS_PER_MM;
	return {
		outside: outline.map((p) => place(p, over)),
		inside: outline.map((p) => place(p, -board.thickness - over)),
	};
}

/**
 * Where the figures of a board start: the corner of the rectangle round both its faces, on its
 * outside plane.
 */
function lowest(board: BoxBoard): Point3 {
	const { u, v } = board.frame;
	const first = board.solid.outside[0]!;
	const flat = board.outside[0]!;
	return {
		x: first.x - u.x * flat.x - v.x * flat.y,
		y: first.y - u.y * flat.x - v.y * flat.y,
		z: first.z - u.z * flat.x - v.z * flat.y,
	};
}
