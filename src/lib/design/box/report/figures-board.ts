import { nth, type Length, snap } from '../../../measure';
import { snapOutline, type Outline, type Point, distanceTo } from '../../../geometry';
import type { FaceShift, FaceSize, Part } from '../../part';
import { type Board, partRectOf, massOf, faceOf, through } from '../board';
import type { Mounted } from '../devices';
import type { BoardDevice, BoardHole, BoardShift, BoxBoard, Placing } from '../box-plan';
import { flat } from '../solid';

/** A board as it is drawn: from the lower left corner of the rectangle round both faces. */
export function boardFigures(
	board: Board,
	part: Part,
	placing: readonly Placing[],
	devices: readonly Mounted[],
): BoxBoard {
	const rect = partRectOf({ ...board, grain: 'along' });
	const home = (p: Point): Point => ({ x: p.x - rect.low.x, y: p.y - rect.low.y });
	const faces = [board.solid.outside, board.solid.inside].map((f) =>
		f.map((p) => home(flat(p, board.frame))),
	);
	const spread = (f: readonly Point[], axis: 'x' | 'y'): number =>
		Math.max(...f.map((p) => p[axis])) - Math.min(...f.map((p) => p[axis]));
	const short = (axis: 'x' | 'y'): Length => snap(Math.min(...faces.map((f) => spread(f, axis))));
	return {
		key: board.key,
		part: part.id,
		label: part.label,
		name: board.name,
		role: board.role,
		solid: board.solid,
		frame: board.frame,
		...(part.face === 'inside' ? { view: 'inside' as const } : {}),
		outside: snapOutline(nth(faces, 0)),
		inside: snapOutline(nth(faces, 1)),
		edges: board.edges,
		holes: board.holes.map((h) => holeFigures(h, board, home)),
		rabbets: board.cuts,
		placing,
		devices: devices
			.filter((d) => d.on.key === board.key)
			.map((d) => deviceFigures(d, board, home)),
		thickness: board.material.measured,
		long: { across: rect.length, up: rect.width },
		short: { across: short('x'), up: short('y') },
		...(part.shift ? { shift: inDrawing(part.shift, board.grain === 'across') } : {}),
		grain: part.grain === 'any' ? 'any' : board.grain === 'across' ? 'up' : 'across',
		mass: massOf(board),
		notes: board.notes,
	};
}

function deviceFigures(one: Mounted, board: Board, home: (p: Point) => Point): BoardDevice {
	const { wall } = one.place;
	const here = (o: Outline): Outline =>
		snapOutline(o.map((p) => home(through(p, wall.frame, board.frame))));
	return {
		name: one.name,
		side: one.device.side,
		body: here(one.body),
		space: here(one.space),
		height: one.device.height,
		chamber: one.room === null ? null : one.room + 1,
		mass: one.device.mass,
		note: one.device.note,
	};
}

/**
 * A shift in the directions of the drawing; a part is turned a quarter where the grain runs up.
 */
function inDrawing({ outside, inside, offset }: FaceShift, turned: boolean): BoardShift {
	const lie = ({ length, width }: FaceSize): BoardShift['offset'] =>
		turned ? { across: width, up: length } : { across: length, up: width };
	return { outside: lie(outside), inside: lie(inside), offset: lie(offset) };
}

function holeFigures(
	hole: Board['holes'][number],
	board: Board,
	home: (p: Point) => Point,
): BoardHole {
	const face = faceOf(board);
	const edge = Math.min(...hole.outline.map((c) => distanceTo(c, face)), edgeOfRound(hole, face));
	return {
		of: hole.of,
		name: hole.name,
		outline: hole.outline
			.map((c) => ({ ...home(c), ...(c.bulge ? { bulge: c.bulge } : {}) }))
			.map((c) => ({ ...c, x: Math.round(c.x), y: Math.round(c.y) })),
		centre: home(hole.centre),
		size: hole.size.map(snap),
		...(hole.pattern ? { pattern: { ...hole.pattern, middle: home(hole.pattern.middle) } } : {}),
		recess: hole.recess === null ? null : snap(hole.recess),
		...(hole.face ? { face: hole.face } : {}),
		edge: snap(Math.max(0, edge)),
	};
}

/** From a round hole to the nearest edge; nothing for any other hole, whose corners tell. */
export function edgeOfRound(hole: Board['holes'][number], face: Outline): number {
	return hole.size.length === 1 ? distanceTo(hole.centre, face) - nth(hole.size, 0) / 2 : Infinity;
}
