import { nth, snap, theOne } from '../../../measure';
import { distanceTo } from '../../../geometry';
import type { Radiator } from '../../../job';
import type { Chamber, DriverFigures, RadiatorFigures } from '../box-plan';
import { tunedTogether } from '../response';
import { clashes, framedOf, roomFor, type Inside } from '../inside';
import { cutFor, type Framed, type Seated, sayBehindBolts } from '../mounted';
import { finite } from '../finite';
import { standsBefore } from '../between';
import {
	boardObstacle,
	type Hole,
	edgeOfHole,
	rodObstacle,
	type Obstacle,
	facesToFill,
} from '../board';
import { LEAST_EDGE } from '../shell';
import type { ProblemLog } from '../../problem-log';
import { p3 } from '../solid';

/** A driver or radiator as it sits, and whatever is in its way. */
export function driverFigures(one: Seated<Framed>, inside: Inside, log: ProblemLog): DriverFigures {
	const { driver, index, name, place } = one;
	const path = [one.list, index];
	const faces = facesToFill(place.wall);
	const { x, y } = place.at;
	const here = (h: Hole): boolean => h.centre.x === x && h.centre.y === y;
	const hole = theOne(place.wall.holes, (h) => h.name === name && h.of === cutFor(one) && here(h));
	const edge = Math.min(...faces.map((face) => edgeOfHole(hole, face)));
	if (edge < LEAST_EDGE) {
		log.check(
			[...path, 'at'],
			`The cut-out of ${name} comes within ${log.say(edge)} of the edge of its board.`,
			`Keep ${log.least(LEAST_EDGE)} or more, or the edge breaks out.`,
		);
	}
	if (distanceTo(place.at, nth(faces, place.reversed ? 1 : 0)) < driver.frame / 2) {
		log.check(
			[...path, 'frame'],
			`The frame of ${name} (${log.say(driver.frame)}) stands over the edge of its board.`,
			'Move it inwards or take a larger board.',
		);
	}
	const air = inside.rooms[one.room]?.air ?? null;
	const room = air ? roomFor(one, air) : { axis: 0, rim: 0 };
	const behind = room.rim - driver.depth;
	if (air && behind < driver.behind) tooDeep(one, room, log);
	if (!air)
		log.check(
			[...path, 'at'],
			`Behind ${name} there is no air but a board.`,
			'Move it off the divider or the slot.',
		);
	const inTheWay = ['brace', 'cleat', 'divider', 'slot'];
	sayBehindBolts(
		one,
		inside.boards.filter((b) => inTheWay.includes(b.role) && b !== place.wall),
		log,
	);
	sayBeforeFrame(one, inside, log);
	const meets = clashes(one, behind < 0 ? null : air, obstaclesFor(one, inside));
	const told = besideOn(one, inside);
	const untold = meets.filter((other) => !told.has(other));
	if (untold.length > 0)
		log.check(
			[...path, 'at'],
			`${name} runs into ${untold.join(', ')}.`,
			`Move one of them, or take a shallower ${cutFor(one)}.`,
		);
	return {
		name,
		board: place.wall.name,
		chamber: air ? one.room + 1 : null,
		front: one.front === null || one.front < 0 ? null : one.front + 1,
		edge: snap(edge),
		room: snap(finite(room.axis)),
		roomAtRim: snap(finite(room.rim)),
		depth: driver.depth,
		behind: snap(finite(behind)),
		meets,
	};
}

/** Says what stands where the frame of a driver on a divider has to lie. */
function sayBeforeFrame(one: Seated<Framed>, inside: Inside, log: ProblemLog): void {
	const { driver, front, index, name, place } = one;
	if (front === null) return;
	const told = besideOn(one, inside);
	const dividers = inside.boards.filter((b) => b.role === 'divider' && b !== place.wall);
	const obstacles = [...obstaclesFor(one, inside), ...dividers.map(boardObstacle)];
	const met = standsBefore(place, driver.frame / 2, obstacles).filter((other) => !told.has(other));
	if (front >= 0 && met.length === 0) return;
	log.check(
		[one.list, index, 'frame'],
		met.length > 0
			? `Where the frame of ${name} lies on ${place.wall.name} stands ${met.join(', ')}.`
			: `Before the cone of ${name} there is no air but a board.`,
		'Move one of them.',
	);
}

/** A passive radiator as it sits, and what it is tuned to with the others of its chamber. */
export function radiatorFigures(
	one: Seated<Radiator>,
	inside: Inside,
	chambers: readonly Chamber[],
	log: ProblemLog,
): RadiatorFigures {
	const alike = inside.radiators.filter((s) => s.room === one.room);
	const net = chambers[one.room]?.net ?? 0;
	const tuned = one.room < 0 ? null : tunedTogether(alike, net * 1e-3);
	return {
		...driverFigures(one, inside, log),
		own: tuned?.own ?? null,
		loaded: tuned?.loaded ?? null,
		added: tuned?.added ?? null,
		tuning: tuned?.hertz ?? null,
	};
}

/**
 * Drivers and tubes on the same board: they run straight in beside this one, so that they meet it
 * only where their holes or frames overlap, which has been told of the board.
 */
function besideOn(one: Seated<Framed>, inside: Inside): ReadonlySet<string> {
	const { wall } = one.place;
	const framed = framedOf(inside).filter((s) => s !== one && s.place.wall === wall);
	const tubes = inside.vents.flatMap(({ setup }) =>
		setup.kind === 'round' && setup.places.some((p) => p.wall === wall) ? [setup] : [],
	);
	return new Set([...framed, ...tubes].map((other) => other.name));
}

function tooDeep(one: Seated<Framed>, room: { axis: number; rim: number }, log: ProblemLog): void {
	const { driver, name, index } = one;
	const where =
		room.rim < room.axis - 1
			? `at the rim of its ${one.list === 'drivers' ? 'magnet' : 'rear'} (${log.say(room.axis)} on its axis)`
			: 'on its axis';
	log.check(
		[one.list, index, 'depth'],
		`${name} is ${log.say(driver.depth)} deep; the box gives ${log.say(room.rim)} ${where} and ${log.say(driver.behind)} should stay free behind it.`,
		`Make the box ${log.least(driver.depth + driver.behind - room.rim)} deeper there, move the ${cutFor(one)} to where it is deeper, or raise it on a ring.`,
	);
}

/** Everything that stands in the air but the driver itself and the walls. */
function obstaclesFor(one: Seated<Framed>, inside: Inside): Obstacle[] {
	const boards = inside.boards
		.filter((b) => b.role === 'brace' || b.role === 'cleat')
		.map(boardObstacle);
	const others = framedOf(inside)
		.filter((s) => s !== one)
		.map((s) => {
			const magnet = (s.driver.magnet ?? 2 * s.cutRadius) / 2;
			const end = { ...s.place.point };
			const d = s.driver.depth - s.proud;
			const to = p3(
				end.x + s.place.inward.x * d,
				end.y + s.place.inward.y * d,
				end.z + s.place.inward.z * d,
			);
			return rodObstacle(s.name, s.place.point, to, magnet);
		});
	return [...boards, ...others, ...inside.obstacles];
}
