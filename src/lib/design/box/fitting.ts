import type { Box } from '../../job/box';
import { toMm } from '../../measure/length';
import { distanceTo, whereIs } from '../../geometry/inside';
import { area as areaOf } from '../../geometry/extent';
import type { Air } from './air';
import type { Board } from './board';
import { cubicTicks, type Taken } from './volume';
import { squareMetres } from './needs';
import { faceOf, placeOn, roomBehind } from './place';
import { shown } from './shown';
import { faceArea } from './solid';
import { roundHole, rectangleHole } from './trim';
import type { Trouble } from './trouble';

/** Cuts the hole for the terminal cup; what the cup takes of its chamber, or null. */
export function cutTerminal(
	box: Box,
	boards: readonly Board[],
	rooms: readonly { air: Air }[],
	trouble: Trouble,
): Taken | null {
	const { terminal } = box;
	if (!terminal) return null;
	const place = placeOn(boards, terminal.board, terminal.at);
	if (!place) {
		trouble.stop(
			['terminal', 'board'],
			`This form has no board '${terminal.board}'.`,
			'Choose one of its own walls.',
		);
		return null;
	}
	const { hole } = terminal;
	const cut =
		hole.kind === 'round'
			? roundHole(place.at, hole.diameter)
			: rectangleHole(
					place.at.x - hole.width / 2,
					place.at.y - hole.height / 2,
					hole.width,
					hole.height,
				);
	const face = faceOf(place.wall);
	const near = hole.kind === 'round' && distanceTo(place.at, face) < hole.diameter / 2;
	if (near || cut.outline.some((c) => whereIs(c, face) !== 'inside')) {
		trouble.stop(
			['terminal', 'at'],
			`The terminal hole (${cut.size.map(shown).join(' x ')} mm) does not lie within its board.`,
			'Move it inwards or take another board.',
		);
		return null;
	}
	const room = roomBehind(rooms, place);
	if (room < 0) {
		trouble.stop(
			['terminal', 'at'],
			'Behind the terminal hole there is no air but a board.',
			'Move it off the edge, the divider or the slot.',
		);
		return null;
	}
	const own = { ...cut, of: 'terminal', name: 'terminal' };
	place.wall.holes.push(own);
	for (const layer of place.layers)
		layer.holes.push({ ...own, ...shifted(own, place.wall, layer) });
	return { room, what: 'Terminal cup', volume: cubicTicks(terminal.displacement) };
}

/** The same hole in a layer behind: its frame may start at another corner, but looks the same way. */
function shifted(
	hole: Board['holes'][number],
	wall: Board,
	layer: Board,
): Pick<typeof hole, 'outline' | 'centre'> {
	const d = {
		x: wall.frame.at.x - layer.frame.at.x,
		y: wall.frame.at.y - layer.frame.at.y,
		z: wall.frame.at.z - layer.frame.at.z,
	};
	const along = (axis: Board['frame']['u']): number => d.x * axis.x + d.y * axis.y + d.z * axis.z;
	const [dx, dy] = [along(layer.frame.u), along(layer.frame.v)];
	return {
		outline: hole.outline.map((c) => ({ ...c, x: c.x + dx, y: c.y + dy })),
		centre: { x: hole.centre.x + dx, y: hole.centre.y + dy },
	};
}

export interface Lined {
	readonly taken: readonly Taken[];
	/** Square metres of lining. */
	readonly area: number;
}

/** The solid part of the lining, shared among the chambers by their size. */
export function liningTakes(
	box: Box,
	boards: readonly Board[],
	rooms: readonly { air: Air; gross: number }[],
): Lined {
	const { lining } = box;
	if (!lining) return { taken: [], area: 0 };
	const front = new Set(box.drivers.map((d) => d.board));
	const walls = boards.filter((b) => b.role === 'wall' || b.role === 'end');
	const covered = walls.filter((b) =>
		lining.boards.length > 0 ? lining.boards.includes(b.key) : !front.has(b.key),
	);
	const surface = covered.reduce(
		(sum, b) => sum + Math.abs(faceArea(b.solid.inside, b.frame)) - openings(b),
		0,
	);
	const solid = (surface * lining.thickness * lining.solid) / 100;
	const whole = rooms.reduce((sum, r) => sum + r.gross, 0);
	const taken = rooms.map(({ gross }, room) => ({
		room,
		what: `Lining, ${toMm(lining.thickness)} mm at ${lining.solid} % solid`,
		volume: (solid * gross) / whole,
	}));
	return { taken, area: squareMetres(surface) };
}

function openings(board: Board): number {
	return board.holes
		.filter((h) => h.recess === null)
		.reduce((sum, h) => sum + Math.abs(areaOf(h.outline)), 0);
}
