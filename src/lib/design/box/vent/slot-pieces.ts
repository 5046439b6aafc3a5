import { nth } from '../../../measure';
import {
	type Taken,
	type Quad,
	type SlotPlane,
	frameOf,
	planeArea,
	type Frame,
	type Solid,
	add3,
	p3,
	scale3,
	sub3,
	unit3,
} from '../solid';
import { boardOf, type Board, boardObstacle, type Obstacle, type Seam } from '../board';
import { type SlotBody, slotAreas } from './slot';
import { bodyAt } from './slot-setup';
import type { SlotSetup } from './vent';

/** What a vent of a certain length is made of, and what it takes. */
export interface VentPieces {
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
	readonly taken: readonly Taken[];
	readonly obstacles: readonly Obstacle[];
	/** Free at the inner mouth. */
	readonly clear: number;
	/** Legs of a slot along its middle, the first from the outer face; none of a tube. */
	readonly legs: readonly number[];
}

/** A slot of this length in boards; `first`: the number of its first board in the box. */
export function slotPieces(setup: SlotSetup, length: number, first: number): VentPieces {
	const { run, room, name, size } = setup;
	const body = bodyAt(setup, length);
	const wide = run[1] - run[0];
	const { air, boards: section } = slotAreas(body);
	const boards = body.quads.map((_, i) => slotBoard(setup, body, i, first + i));
	if (setup.cheek) boards.push(cheekBoard(setup, body, first + boards.length));
	const cheek = setup.cheek ? Math.abs(planeArea(body.cheek)) * size.board : 0;
	return {
		boards,
		seams: slotSeams(setup, body, boards),
		obstacles: [...boards.map(boardObstacle), airObstacle(setup, body)],
		clear: body.clear,
		legs: body.legs,
		taken: [
			{ room, what: `${name}: boards`, volume: section * wide + cheek },
			{ room, what: `${name}: air in it`, volume: air * wide },
		],
	};
}

/** A section in the plane of the slot, carried along its width. */
function slotSolid(plane: SlotPlane, q: Quad, run: readonly [number, number]): Solid {
	const face = ([a, b]: Quad['outside']): Solid['outside'] => [
		plane.to3(a, run[0]),
		plane.to3(a, run[1]),
		plane.to3(b, run[1]),
		plane.to3(b, run[0]),
	];
	return { outside: face(q.outside), inside: face(q.inside) };
}

function facing(from: Solid): Frame {
	const n = unit3(sub3(nth(from.outside, 0), footOn(from)));
	const level = Math.abs(n.z) > 0.95;
	return frameOf(p3(0, 0, 0), n, level ? p3(0, n.z > 0 ? 1 : -1, 0) : p3(0, 0, 1));
}

/** Foot of the first outside corner on the inside face. */
function footOn({ outside, inside }: Solid): ReturnType<typeof p3> {
	const u = unit3(sub3(nth(inside, 1), nth(inside, 0)));
	const v = unit3(sub3(nth(inside, 3), nth(inside, 0)));
	const d = sub3(nth(outside, 0), nth(inside, 0));
	const on = (axis: typeof u): number => d.x * axis.x + d.y * axis.y + d.z * axis.z;
	return add3(nth(inside, 0), add3(scale3(u, on(u)), scale3(v, on(v))));
}

function slotBoard(setup: SlotSetup, { quads }: SlotBody, i: number, n: number): Board {
	const solid = slotSolid(setup.plane, nth(quads, i), setup.run);
	const { material, name } = setup;
	const own = { wall: null, role: 'slot' as const, material, grain: 'along' as const };
	const notes =
		i === quads.length - 1
			? ['Leave it long until the box is tuned: cut long, tune by trimming.']
			: [];
	return boardOf({
		...own,
		key: `slot-${n}`,
		name: `${name} board ${i + 1}`,
		solid,
		frame: facing(solid),
		notes,
	});
}

function cheekBoard(setup: SlotSetup, body: SlotBody, n: number): Board {
	const { plane, run, material, name, size } = setup;
	const outside = body.cheek.map((p) => plane.to3(p, run[1]));
	const inside = body.cheek.map((p) => plane.to3(p, run[1] + size.board));
	const normal = unit3(sub3(nth(outside, 0), nth(inside, 0)));
	const frame = frameOf(p3(0, 0, 0), normal, Math.abs(normal.z) > 0.95 ? p3(0, 1, 0) : p3(0, 0, 1));
	const own = { wall: null, role: 'slot' as const, material, grain: 'along' as const };
	return boardOf({
		...own,
		key: `slot-${n}`,
		name: `${name} cheek`,
		solid: { outside, inside },
		frame,
	});
}

/** A slot board is glued to the walls beside it, to the front, and at the elbow. */
function slotSeams(setup: SlotSetup, body: SlotBody, boards: readonly Board[]): Seam[] {
	const { plane, run, size } = setup;
	const t = size.board;
	const second = setup.cheek ? (boards.at(-1)?.key ?? '') : plane.beside[1];
	const wide = run[1] - run[0];
	return body.quads.flatMap((q, i): Seam[] => {
		const key = nth(boards, i).key;
		const long = Math.hypot(q.outside[1].x - q.outside[0].x, q.outside[1].y - q.outside[0].y);
		const half = {
			x: (q.outside[0].x + q.outside[1].x) / 2,
			y: (q.outside[0].y + q.outside[1].y) / 2,
		};
		const seam = (other: string, length: number, at: ReturnType<typeof p3>): Seam => ({
			letter: '',
			between: [key, other],
			kind: 'butt',
			length,
			area: length * t,
			at,
			seals: true,
		});
		return [
			seam(
				i === 0 ? 'front' : nth(boards, i - 1).key,
				wide,
				plane.to3(q.outside[0], (run[0] + run[1]) / 2),
			),
			seam(plane.beside[0], long, plane.to3(half, run[0])),
			seam(second, long, plane.to3(half, run[1])),
		];
	});
}

/** Nothing may reach into the air of the slot either. */
function airObstacle(setup: SlotSetup, body: SlotBody): Obstacle {
	const { plane, run, name } = setup;
	const solid = {
		outside: body.air.map((p) => plane.to3(p, run[0])),
		inside: body.air.map((p) => plane.to3(p, run[1])),
	};
	const n = unit3(sub3(nth(solid.outside, 0), nth(solid.inside, 0)));
	const material = {
		...setup.material,
		measured: (run[1] - run[0]) as typeof setup.material.measured,
	};
	const frame = frameOf(p3(0, 0, 0), n, Math.abs(n.z) > 0.95 ? p3(0, 1, 0) : p3(0, 0, 1));
	return boardObstacle(
		boardOf({
			key: 'slot-air',
			wall: null,
			name: `the air of ${name}`,
			role: 'slot',
			material,
			frame,
			solid,
			grain: 'any',
		}),
	);
}
