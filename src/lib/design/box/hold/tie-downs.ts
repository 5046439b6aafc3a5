import type { Box, TieDown } from '../../../job';
import { faceOf, liesOn, type Place, placeOn, through } from '../board';
import { roundHole } from '../shell';
import type { Point3 } from '../solid';
import type { ProblemLog } from '../../problem-log';

/** A tie-down point in its place. */
export interface Tied {
	readonly index: number;
	readonly name: string;
	readonly place: Place;
	/** On the outside of its wall. */
	readonly point: Point3;
	readonly hole: TieDown['hole'];
}

export const tieDownName = (one: TieDown, i: number): string => one.name ?? `Tie-down ${i + 1}`;

/** Places the tie-down points and bores those that are asked a hole. */
export function placeTieDowns(
	box: Box,
	boards: Parameters<typeof placeOn>[0],
	log: ProblemLog,
): Tied[] {
	return box.tieDowns.flatMap((one, index) => {
		const path = ['tieDowns', index];
		const name = tieDownName(one, index);
		const place = placeOn(boards, one.board, one.at);
		if (!place) {
			const what = `This form has no board '${one.board}'.`;
			log.stop([...path, 'board'], what, 'Choose one of its own walls.');
			return [];
		}
		const hole = roundHole(place.at, one.hole ?? 2);
		if (!liesOn(hole, faceOf(place.wall))) {
			const with_ = one.hole === null ? '' : ` with its hole of ${log.say(one.hole)}`;
			log.stop(
				[...path, 'at'],
				`${name}${with_} does not lie within its board.`,
				'Move it inwards or take another board.',
			);
			return [];
		}
		if (one.hole !== null) bore(place, one.hole, name);
		return [{ index, name, place, point: place.point, hole: one.hole }];
	});
}

/** Through the wall and every layer on it. */
function bore({ wall, at, layers }: Place, diameter: number, name: string): void {
	const of = { of: 'tie-down', name };
	wall.holes.push({ ...roundHole(at, diameter), ...of });
	for (const layer of layers)
		layer.holes.push({ ...roundHole(through(at, wall.frame, layer.frame), diameter), ...of });
}
