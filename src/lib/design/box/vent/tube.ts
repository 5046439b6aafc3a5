import { nth, snap } from '../../../measure';
import { boundsOfPoints, type Point } from '../../../geometry';
import type { Box, RoundVent } from '../../../job';
import { reach, type Air } from '../solid';
import {
	faceOf,
	type Hole,
	liesOnBoard,
	noSuchBoard,
	onDivider,
	placeOn,
	roomBefore,
	roomBehind,
	rowOf,
	sayNoSide,
	type Place,
	wayOf,
} from '../board';
import { roundHole } from '../shell';
import type { ProblemLog } from '../../problem-log';
import { flaresTake, tubeEnds } from './flare';
import { lastPiece, type TubePath, tubePath } from './tube-path';
import { radiiOf, ventName, type RoundSetup, type VentRoom } from './vent';
import type { Breath } from './vent-air';

/** Tubes, once the front has its final size. */
export function roundSetups(box: Box, inside: VentRoom, log: ProblemLog): RoundSetup[] {
	return box.vents.flatMap((vent, index) => {
		if (vent.kind !== 'round') return [];
		const path = ['vents', index];
		const found = placesFor(vent, index, { ...inside, dividers: box.dividers.length }, log);
		if (!found) return [];
		const [room, other] = roomsOf(inside, nth(found, 0));
		if (found.some((p) => roomsOf(inside, p).some((r, i) => r !== [room, other][i]))) {
			log.stop(
				[...path, 'at'],
				`The openings of ${ventName(vent, index)} do not all lead into one chamber.`,
				'Move the row, or give each chamber a vent of its own.',
			);
			return [];
		}
		if (room < 0 || other === -1) {
			log.stop(
				[...path, 'at'],
				`${room < 0 ? 'Behind' : 'Before'} ${ventName(vent, index)} there is no air but a board.`,
				'Move it off the edge, the divider or the slot.',
			);
			return [];
		}
		const paths = found.map((place) => tubePath(vent, place)).filter((p) => p !== null);
		if (paths.length < found.length) {
			log.stop(
				[...path, 'elbows'],
				`An elbow of ${ventName(vent, index)} turns on or back along the way the tube runs there.`,
				'Turn it square to that way; the first runs straight in.',
			);
			return [];
		}
		sayElbows(vent, index, nth(found, 0), log);
		for (const place of found)
			if (onDivider(place)) place.wall.notes.push(howItGoes(vent, index, place));
		return roundSetup(
			{ vent, index, room, other, places: found, paths },
			nth(inside.rooms, room).air,
		);
	});
}

/** Where the tubes of a row go through their board; null, and told, where they cannot. */
function placesFor(
	vent: RoundVent,
	index: number,
	{ boards, dividers }: VentRoom & { readonly dividers: number },
	log: ProblemLog,
): Place[] | null {
	const path = ['vents', index];
	sayNoSide(vent, [...path, 'into'], log);
	const pitch = vent.pitch ?? vent.diameter + 4 * vent.wall;
	const places = rowOf(vent.count, pitch).map((x) =>
		placeOn(boards, vent.board, vent.at, x, vent.into),
	);
	const found = places.filter((p) => p !== null);
	const stop = (field: string, why: readonly [what: string, fix: string]): null => {
		log.stop([...path, field], ...why);
		return null;
	};
	if (found.length < places.length) return stop('board', noSuchBoard(boards, vent.board, dividers));
	if (onDivider(nth(found, 0)) && vent.goal.by === 'tuning')
		return stop('goal', joinsTwo(vent, index));
	const off = found.find((p) => !liesOnBoard(tubeHole(vent, p.at), p.wall));
	if (off) return stop('at', offBoard(vent, index, off, log));
	if (vent.count > 1 && pitch < vent.diameter + 2 * vent.wall) sayPitch(vent, pitch, index, log);
	return found;
}

/** The chamber a tube lies in, and the one at its other end: null outside the box. */
function roomsOf({ rooms }: VentRoom, place: Place): [room: number, other: number | null] {
	return [roomBehind(rooms, place), onDivider(place) ? roomBefore(rooms, place) : null];
}

/** Told on the drawing of a divider. */
const howItGoes = (vent: RoundVent, index: number, { reversed, inward }: Place): string =>
	`${ventName(vent, index)}: flush with the ${reversed ? 'inside' : 'outside'} face, the tube goes ${wayOf(inward)}.`;

/** Neither chamber alone tunes a tube that joins two. */
const joinsTwo = (vent: RoundVent, index: number): [what: string, fix: string] => [
	`${ventName(vent, index)} joins two chambers through a divider: no tuning is worked out for it.`,
	'Give the length of the tube instead.',
];

/** The hole a tube goes through, at a place in the frame of its board. */
export const tubeHole = (vent: RoundVent, at: Point): Hole =>
	roundHole(at, vent.diameter + 2 * vent.wall);

/** What is wrong with a tube that leaves its board, and what would be right. */
function offBoard(
	vent: RoundVent,
	index: number,
	{ wall }: Place,
	log: ProblemLog,
): [what: string, fix: string] {
	const of = vent.count > 1 ? `One of the ${vent.count} holes` : 'The hole';
	const { length, width } = boundsOfPoints(faceOf(wall));
	const size = log.say([snap(length), snap(width)]);
	return [
		`${of} of ${ventName(vent, index)} (${log.say(vent.diameter + 2 * vent.wall)} with its wall) does not lie within its board, ${size}.`,
		'Move it inwards, take a smaller tube or a larger board.',
	];
}

function sayPitch(vent: RoundVent, pitch: number, index: number, log: ProblemLog): void {
	const outside = vent.diameter + 2 * vent.wall;
	log.check(
		['vents', index, 'pitch'],
		`The tubes of ${ventName(vent, index)} ${log.say(pitch)} apart run into each other: each is ${log.say(outside)} outside.`,
		`Give at least ${log.least(outside)}.`,
	);
}

/** Says which elbow cannot be bought or built as it is asked. */
function sayElbows(vent: RoundVent, index: number, { stack, proud }: Place, log: ProblemLog): void {
	const outer = vent.diameter / 2 + vent.wall;
	vent.elbows.forEach(({ after, radius }, i) => {
		const path = ['vents', index, 'elbows', i];
		if (i === 0 && after < stack + proud)
			log.check(
				[...path, 'after'],
				`The first elbow of ${ventName(vent, index)} begins ${log.say(after)} in, inside its board of ${log.say(stack + proud)}.`,
				`Give at least ${log.least(stack + proud)} of straight tube before it.`,
			);
		if (radius < outer)
			log.check(
				[...path, 'radius'],
				`An elbow of ${log.say(radius)} radius folds a tube of ${log.say(2 * outer)} into itself.`,
				`Give at least ${log.least(outer)}, half the outside of the tube.`,
			);
	});
}

type Laid = Pick<RoundSetup, 'vent' | 'index' | 'room' | 'other' | 'places' | 'paths'>;

function roundSetup(laid: Laid, air: Air): RoundSetup {
	const { vent, index, places, paths } = laid;
	const outer = vent.diameter / 2 + vent.wall;
	const { stack, proud } = nth(places, 0);
	const boards = stack + proud;
	// The board is passed before the first bend, and each flare is as long as it is round.
	const least = Math.max(boards, nth(paths, 0).fixed + flaresTake(vent));
	const longest = Math.min(...paths.map((p) => reachOf(p, air, outer))) - vent.diameter;
	const breath: Breath = {
		area: (Math.PI / 4) * vent.diameter ** 2 * vent.count,
		ends: tubeEnds(vent, vent.diameter / 2),
		fixed: vent.goal.by === 'length' ? Math.max(vent.goal.length, least) : null,
		least,
		longest,
		fit: (length) => Math.min(length, longest),
		takes: (length) => Math.max(0, length - boards) * Math.PI * outer ** 2 * vent.count,
	};
	return {
		...laid,
		kind: 'round',
		name: ventName(vent, index),
		radii: radiiOf(vent),
		breath,
		clearWanted: vent.diameter,
	};
}

/** Length along the middle of a tube up to the wall that faces its inner end. */
export function reachOf(path: TubePath, air: Air, outer: number): number {
	const { from, heading } = lastPiece(path);
	return path.fixed + reach(air, from, heading, outer);
}
