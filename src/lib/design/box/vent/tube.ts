import { nth } from '../../../measure';
import type { Box, RoundVent } from '../../../job';
import { reach, type Air } from '../solid';
import { placeOn, roomBehind, rowOf, type Place } from '../board';
import type { ProblemLog } from '../../problem-log';
import { radiiOf, ventName, type RoundSetup, type VentRoom } from './vent';
import type { Breath } from './vent-air';

/** Tubes, once the front has its final size. */
export function roundSetups(box: Box, inside: VentRoom, log: ProblemLog): RoundSetup[] {
	return box.vents.flatMap((vent, index) => {
		if (vent.kind !== 'round') return [];
		const path = ['vents', index];
		const pitch = vent.pitch ?? vent.diameter + 4 * vent.wall;
		const places = rowOf(vent.count, pitch).map((x) =>
			placeOn(inside.boards, vent.board, vent.at, x),
		);
		const found = places.filter((p) => p !== null);
		if (found.length < places.length) {
			log.stop(
				[...path, 'board'],
				`This form has no board '${vent.board}'.`,
				'Choose one of its own walls.',
			);
			return [];
		}
		const room = roomBehind(inside.rooms, nth(found, 0));
		if (room < 0) {
			log.stop(
				[...path, 'at'],
				`Behind ${ventName(vent, index)} there is no air but a board.`,
				'Move it off the edge, the divider or the slot.',
			);
			return [];
		}
		return roundSetup(vent, index, room, found, nth(inside.rooms, room).air);
	});
}

function roundSetup(
	vent: RoundVent,
	index: number,
	room: number,
	places: readonly Place[],
	air: Air,
): RoundSetup {
	const outer = vent.diameter / 2 + vent.wall;
	const { stack, proud } = nth(places, 0);
	const radii = radiiOf(vent);
	const deep = Math.min(...places.map((p) => reach(air, p.point, p.inward, outer)));
	const breath: Breath = {
		area: (Math.PI / 4) * vent.diameter ** 2 * vent.count,
		ends: (radii * vent.diameter) / 2,
		fixed: vent.goal.by === 'length' ? vent.goal.length : null,
		longest: proud + deep - vent.diameter,
		fit: (length) => Math.min(length, proud + deep - vent.diameter),
		takes: (length) => Math.max(0, length - stack - proud) * Math.PI * outer ** 2 * vent.count,
	};
	return {
		kind: 'round',
		index,
		name: ventName(vent, index),
		vent,
		room,
		places,
		radii,
		breath,
		clearWanted: vent.diameter,
	};
}
