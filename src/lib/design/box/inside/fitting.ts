import type { Box } from '../../../job';
import { type Air, cubicTicks, type Taken } from '../solid';
import { type Board, faceOf, liesOn, placeOn, roomBehind } from '../board';
import { roundHole, rectangleHole } from '../shell';
import { drillScrews } from '../mounted';
import type { ProblemLog } from '../../problem-log';

/** Cuts the hole for the terminal cup; what the cup takes of its chamber, or null. */
export function cutTerminal(
	box: Box,
	boards: readonly Board[],
	rooms: readonly { air: Air }[],
	log: ProblemLog,
): Taken | null {
	const { terminal } = box;
	if (!terminal) return null;
	const place = placeOn(boards, terminal.board, terminal.at);
	if (!place) {
		log.stop(
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
	if (!liesOn(cut, faceOf(place.wall))) {
		log.stop(
			['terminal', 'at'],
			`The terminal hole (${log.say(cut.size)}) does not lie within its board.`,
			'Move it inwards or take another board.',
		);
		return null;
	}
	const room = roomBehind(rooms, place);
	if (room < 0) {
		log.stop(
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
	drillScrews(terminal, place, cut, log);
	return { room, what: 'Terminal cup', volume: cubicTicks(terminal.displacement) };
}

/**
 * The same hole in a layer behind: its frame may start at another corner, but looks the same way.
 */
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
