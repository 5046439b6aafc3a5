import type { BoxBoard, BoxFigures, Point3 } from '../../../design';
import { add3, dot3, framedName, length3, pointOnBoard, scale3, sub3 } from '../../../design';
import { bounds, type Outline, circle } from '../../../geometry';
import { type Box, clothOnFace, type Driver, type Radiator } from '../../../job';
import { mm, nth } from '../../../measure';
import { movedApart } from '../../../print';
import { boardBody } from './board-body';
import { type Body, chorded, inMm, planeAlong, type Raise, prism } from './body';
import { cone } from './cone';

/** Everything of a box that is seen: its boards, and what is mounted on them and in them. */
export function boxBodies(figures: BoxFigures, asked: Box): Body[] {
	const { outside } = figures;
	const reach = Math.max(outside.width, outside.height, outside.depth) * REACH;
	const centre = { x: outside.width / 2, y: outside.depth / 2, z: outside.height / 2 };
	const away = (b: BoxBoard): Point3 => movedApart(b, centre, reach);
	const called =
		(cut: 'driver' | 'radiator', list: 'drivers' | 'radiators') => (d: Framed, i: number) => ({
			...d,
			cut,
			called: framedName(list, d.name, i),
		});
	const framed = [
		...asked.drivers.map(called('driver', 'drivers')),
		...asked.radiators.map(called('radiator', 'radiators')),
	];
	const mountings = { framed, boards: figures.boards, away };
	return [
		...figures.boards.map((b) => boardBody(b, away(b), isCovered(b, asked))),
		...figures.boards.flatMap((b) => [
			...framedBodies(b, mountings),
			...ventBodies(b, figures, away(b)),
			...deviceBodies(b, away(b)),
		]),
		...rodBodies(figures),
	];
}

/** How far the walls move when all is drawn apart, of the longest measure. */
const REACH = 0.45;

function isCovered(b: BoxBoard, asked: Box): boolean {
	if (b.role !== 'wall' && b.role !== 'end' && b.role !== 'overlay') return false;
	return asked.carpet !== null && clothOnFace(asked.carpet, b.key) !== null;
}

/** A frame of the rim, as thick as most are; nothing is worked out from it. */
const RIM = mm(4);

/**
 * Drivers and radiators in their cut-outs, seen from outside: rim, basket, and the magnet as far as
 * its sizes are given. They sit on the outermost board that their cut-out goes through.
 */
function framedBodies(b: BoxBoard, all: Mountings): Body[] {
	const cuts = b.holes.filter(
		(h) => h.recess === null && (h.of === 'driver' || h.of === 'radiator'),
	);
	return cuts.flatMap((h, i) => {
		const found = all.framed.find((d) => d.board === b.key && d.cut === h.of && isOf(d, h.name));
		if (!found) return [];
		const within = bounds(chorded(h.outline));
		const plane = planeOf(b, seatOf(b, h, all.boards));
		return [
			{
				key: `${b.key}:${h.of}:${i}`,
				mark: null,
				name: h.name,
				...frameShape(found, h.centre, Math.min(within.length, within.width), plane),
				away: inMm(scale3(all.away(b), 1.6)),
			},
		];
	});
}

type BoardHole = BoxBoard['holes'][number];

/** What is mounted, and the boards it may go through. */
interface Mountings {
	readonly framed: readonly (Framed & { readonly cut: string; readonly called: string })[];
	readonly boards: readonly BoxBoard[];
	readonly away: (b: BoxBoard) => Point3;
}

type Framed = Driver | Radiator;

/** Several alike in a row share a name, each with its number after it. */
const isOf = (d: { readonly called: string }, name: string): boolean =>
	name === d.called || name.startsWith(`${d.called} `);

/** Where the frame of what goes through a hole lies, over the outside of the board, ticks. */
function seatOf(b: BoxBoard, h: BoardHole, boards: readonly BoxBoard[]): number {
	const here = pointOnBoard(b, h.centre);
	const heights = boards.flatMap((o) =>
		o.holes.flatMap((other) => {
			if (other.of !== h.of && other.of !== 'seat') return [];
			const from = sub3(pointOnBoard(o, other.centre), here);
			const height = dot3(from, b.frame.n);
			const beside = length3(sub3(from, scale3(b.frame.n, height)));
			if (beside > mm(1) || dot3(o.frame.n, b.frame.n) < 0.99) return [];
			return [{ height, sunk: other.recess ?? 0 }];
		}),
	);
	const top = Math.max(0, ...heights.map((x) => x.height));
	return top - Math.max(0, ...heights.filter((x) => x.height === top).map((x) => x.sunk));
}

/** Rim, basket and magnet of one, `cut` wide in its cut-out. */
function frameShape(
	d: Driver | Radiator,
	at: { readonly x: number; readonly y: number },
	cut: number,
	plane: Raise,
): Pick<Body, 'facets' | 'lines'> {
	const magnet = 'magnet' in d && d.magnet !== undefined ? Math.min(d.magnet, cut) : cut * 0.55;
	const high =
		'magnetHeight' in d && d.magnetHeight !== undefined ? d.magnetHeight : d.depth * 0.35;
	const ring = (r: number, height: number) => ({ r, height });
	return cone(
		[
			ring(magnet / 2, -d.depth),
			ring(magnet / 2, high - d.depth),
			ring(cut / 2, -RIM),
			ring(cut / 2, 0),
			ring(d.frame / 2, 0),
			ring(d.frame / 2, RIM),
			ring(d.frame * 0.42, RIM),
			ring(d.frame * 0.3, -RIM),
			ring(d.frame * 0.14, -RIM),
		],
		(p, h) => plane({ x: at.x + p.x, y: at.y + p.y }, h),
	);
}

/** Straight round tubes from the outer face inward; the legs of a slot are boards. */
function ventBodies(b: BoxBoard, figures: BoxFigures, away: Point3): Body[] {
	return b.holes.flatMap((h, i) => {
		const vent = figures.vents.find(
			(v) => v.kind === 'round' && h.of === 'vent' && h.name.startsWith(v.name),
		);
		if (!vent || vent.bent) return [];
		const bore = Math.min(nth(h.size, 0), nth(vent.size, 0));
		const at = (r: number): Outline => chorded(circle(h.centre.x, h.centre.y, r));
		const shape = prism(
			{
				outline: at(nth(h.size, 0) / 2),
				holes: [at(bore / 2 - mm(1))],
				low: -vent.length,
				high: 0,
				tone: 'metal',
				side: 'metal',
			},
			planeOf(b, 0),
		);
		return [
			{
				key: `${b.key}:vent:${i}`,
				mark: null,
				name: vent.name,
				...shape,
				away: inMm(scale3(away, 1.6)),
			},
		];
	});
}

function deviceBodies(b: BoxBoard, away: Point3): Body[] {
	return b.devices.map((d, i) => {
		const outside = d.side === 'outside';
		const [low, high] = outside ? [0, d.height] : [-b.thickness - d.height, -b.thickness];
		const shape = prism(
			{ outline: chorded(d.body), holes: [], low, high, tone: 'metal', side: 'metal' },
			planeOf(b, 0),
		);
		return {
			key: `${b.key}:device:${i}`,
			mark: null,
			name: d.name,
			...shape,
			away: inMm(scale3(away, outside ? 1.3 : 0.7)),
		};
	});
}

/** Rods along the line from one end of their spans to the other. */
function rodBodies(figures: BoxFigures): Body[] {
	const low = insideLow(figures);
	return figures.rods.map((rod, i) => {
		const spans = [rod.place.fromLeft, rod.place.fromFront, rod.place.fromBottom];
		const size = spans.map(([a, z]) => z - a);
		const axis = size.indexOf(Math.max(...size));
		const [u, v, n] = AXES[axis] ?? AXES[0];
		const mid = spans.map(([a, z], k) => (k === axis ? a : (a + z) / 2));
		const at = add3(low, { x: nth(mid, 0), y: nth(mid, 1), z: nth(mid, 2) });
		const shape = prism(
			{
				outline: chorded(circle(0, 0, rod.diameter / 2)),
				holes: [],
				low: 0,
				high: nth(size, axis),
			},
			planeAlong(at, u, v, n),
		);
		return { key: `rod:${i}`, mark: null, name: rod.name, ...shape, away: { x: 0, y: 0, z: 0 } };
	});
}

const X = { x: 1, y: 0, z: 0 };
const Y = { x: 0, y: 1, z: 0 };
const Z = { x: 0, y: 0, z: 1 };
const AXES = [
	[Y, Z, X],
	[Z, X, Y],
	[X, Y, Z],
] as const;

/**
 * The datum places inside are counted from: the inside of the left end, the front and the bottom.
 */
function insideLow(figures: BoxFigures): Point3 {
	const least = (key: string, axis: 'x' | 'y' | 'z'): number => {
		const board = figures.boards.find((b) => b.key === key);
		return board ? Math.min(...board.solid.inside.map((p) => p[axis])) : 0;
	};
	return { x: least('left', 'x'), y: least('front', 'y'), z: least('bottom', 'z') };
}

/** The plane of a board's outside face, moved out by so much. */
const planeOf =
	(b: BoxBoard, out: number): Raise =>
	(p, height) =>
		inMm(add3(pointOnBoard(b, p), scale3(b.frame.n, height + out)));
