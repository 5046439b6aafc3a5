import { nth, TICKS_PER_MM, snap } from '../../../measure';
import {
	leastVentArea,
	slotLegs,
	slotMeets,
	tubeMeets,
	turnsOf,
	ventSpeed,
	type VentResult,
} from '../vent';
import { add3, frameOf, p3, type Point3, scale3, type Solid, sub3, unit3 } from '../solid';
import type { VentFigures } from '../box-plan';
import { speedWord } from './chamber';
import { isJoined, joinedNote, standsBefore } from '../between';
import { boardObstacle } from '../board';
import type { Inside } from '../inside';
import { finite } from '../finite';
import type { ProblemLog } from '../../problem-log';

/** A vent as it is built, and whether its air is quiet. */
export function ventFigures(result: VentResult, inside: Inside, log: ProblemLog): VentFigures {
	const { setup, length, hertz, clear, legs } = result;
	const { breath, room } = setup;
	const area = breath.area / TICKS_PER_MM ** 2 / 100;
	const moved = isJoined(inside, room) ? 0 : movedBy(inside, room);
	const all = inside.vents
		.filter((v) => v.setup.room === room)
		.reduce((sum, v) => sum + v.setup.breath.area, 0);
	const tuned = moved > 0 ? hertz : null;
	const speed = tuned && ventSpeed(tuned, moved, all / (TICKS_PER_MM * 1000) ** 2);
	if (tuned !== null && speed !== null && speed > 34) {
		log.check(
			['vents', setup.index],
			`The air in ${setup.name} reaches ${Math.round(speed)} m/s at ${Math.round(tuned)} Hz when the driver moves all it can.`,
			`Make the opening ${Math.ceil(speed / 17)} times as large for a quiet vent; 34 m/s is the ceiling.`,
		);
	}
	if (clear < setup.clearWanted - 1) {
		log.check(
			['vents', setup.index, 'goal'],
			`Only ${log.say(Math.max(0, clear))} stay free at the inner end of ${setup.name}; ${log.say(setup.clearWanted)} are wanted.`,
			'Shorten it, bend it, or move it.',
		);
	}
	sayInTheWay(result, inside, log);
	sayInSlot(result, inside, log);
	sayTurns(result, log);
	const size =
		setup.kind === 'round'
			? [setup.vent.diameter]
			: [setup.vent.gap, snap(setup.run[1] - setup.run[0])];
	return {
		name: setup.name,
		kind: setup.kind,
		chamber: room + 1,
		joins: setup.kind === 'round' && setup.other !== null ? setup.other + 1 : null,
		count: setup.kind === 'round' ? setup.vent.count : 1,
		size,
		area,
		length: snap(length),
		acting: snap(length + breath.ends),
		correction: {
			name: setup.vent.factor === null ? setup.vent.mouths : 'own',
			radii: setup.radii,
		},
		tuning: hertz,
		bent: legs.length > 1,
		legs: legs.map(snap),
		clear: snap(finite(clear)),
		clearWanted: snap(setup.clearWanted),
		speed,
		speedWord: speed === null ? null : speedWord(speed),
		leastArea: tuned && leastVentArea(tuned, moved) * 1e4,
		notes: [
			...ventNotes(result),
			...legNotes(result, log),
			...tubeNotes(result, log),
			...joinedNote(inside, result),
		],
	};
}

/** Braces, rods, cleats, slots and other tubes in the way of a tube; drivers say it themselves. */
function sayInTheWay({ setup, length }: VentResult, inside: Inside, log: ProblemLog): void {
	if (setup.kind !== 'round') return;
	const { vent, places, paths, name, index, room } = setup;
	const boards = inside.boards.filter((b) => b.role === 'brace' || b.role === 'cleat');
	// Tubes side by side on one board are told of with their holes, any other two once.
	const told = inside.vents.filter(
		(v) =>
			v.setup.index >= index ||
			(v.setup.kind === 'round' && nth(v.setup.places, 0).wall === nth(places, 0).wall),
	);
	const known = new Set([name, ...told.map((v) => v.setup.name)]);
	const others = inside.obstacles.filter((o) => !known.has(o.name));
	const obstacles = [...boards.map(boardObstacle), ...others];
	const radius = vent.diameter / 2 + vent.wall;
	const { air } = nth(inside.rooms, room);
	const met = places.flatMap((place, i) => [
		...tubeMeets({ place, path: nth(paths, i), length, radius }, air, obstacles),
		...(setup.other === null ? [] : standsBefore(place, radius, obstacles)),
	]);
	if (met.length === 0) return;
	log.check(
		['vents', index, 'at'],
		`${name} runs into ${[...new Set(met)].join(', ')}.`,
		'Move one of them; a brace lets a tube through only where it fits its window whole.',
	);
}

function ventNotes({ setup: { kind }, hertz }: VentResult): string[] {
	if (hertz === null) return [];
	const trim = 'Cut long and tune by trimming: every 10 % of acting length is about 5 % of tuning.';
	const walls =
		'A slot that shares walls with the box acts longer than its boards; published corrections differ by about 5 % in tuning.';
	return kind === 'slot' ? [trim, walls] : [trim];
}

/** Air the drivers of a chamber move one way, m3. */
function movedBy(inside: Inside, room: number): number {
	return inside.seated
		.filter((s) => s.room === room)
		.reduce(
			(sum, { driver: { data } }) => sum + (data.sd ?? 0) * 1e-4 * (data.xmax ?? 0) * 1e-3,
			0,
		);
}

/**
 * Braces, rods, cleats and other slots that stand in a slot. Those beside a slot from wall to wall
 * stop at its boards; beside one with a cheek they do not.
 */
function sayInSlot({ setup, length }: VentResult, inside: Inside, log: ProblemLog): void {
	if (setup.kind !== 'slot') return;
	const boards = inside.boards.filter((b) => b.role === 'brace' || b.role === 'cleat');
	const rods = inside.rods.map(({ name, from, to, diameter }) => ({
		name,
		solid: squareRod(from, to, diameter),
	}));
	const slots = inside.vents.flatMap(({ setup: other, length: long }) =>
		other.kind === 'slot' && other.index < setup.index
			? slotLegs(other, long).map((solid) => ({ name: other.name, solid }))
			: [],
	);
	const met = slotMeets(slotLegs(setup, length), [...boards, ...rods, ...slots]);
	if (met.length > 0)
		log.check(
			['vents', setup.index],
			`${setup.name} and ${met.join(', ')} stand in one place.`,
			'Move one of them, or let the slot run from wall to wall: braces and cleats stop at its boards then.',
		);
}

/** A rod as the square bar within it. */
function squareRod(from: Point3, to: Point3, diameter: number): Solid {
	const axis = unit3(sub3(to, from));
	const { u, v } = frameOf(from, axis, Math.abs(axis.z) > 0.9 ? p3(0, 1, 0) : p3(0, 0, 1));
	const half = diameter / 2 / Math.SQRT2;
	const corners = [
		[-half, -half],
		[half, -half],
		[half, half],
		[-half, half],
	] as const;
	const ring = (at: Point3): Point3[] =>
		corners.map(([x, y]) => add3(at, add3(scale3(u, x), scale3(v, y))));
	return { outside: ring(to), inside: ring(from) };
}

/**
 * A slot that is built with fewer turns than it was asked, and one with a leg so short that its air
 * has hardly turned when it turns again.
 */
function sayTurns({ setup, length, legs }: VentResult, log: ProblemLog): void {
	if (setup.kind !== 'slot') return;
	const { name, index, vent } = setup;
	const asked = turnsOf(vent);
	const turns = legs.length - 1;
	const times = ['straight', 'turned once', 'turned twice'];
	if (turns < asked)
		log.note(
			['vents', index, 'bend'],
			`${name} is asked ${times[asked]}; at ${log.say(length)} it would end in a turn, so it is built ${times[turns]}.`,
			`Ask for it ${times[turns]}, or make it longer: a lower tuning or a larger opening.`,
		);
	const short = turns === 0 ? -1 : legs.findIndex((leg) => leg < vent.gap);
	if (short >= 0)
		log.check(
			['vents', index, 'bend'],
			`Leg ${short + 1} of ${name} is ${log.say(nth(legs, short))} long, shorter than the slot is high (${log.say(vent.gap)}): how its air turns there nobody can tell.`,
			'Make the slot lower, the box larger there, or turn the slot less often.',
		);
}

/** Where a turned slot turns, for whoever checks its length. */
function legNotes({ legs }: VentResult, log: ProblemLog): string[] {
	if (legs.length < 2) return [];
	const all = log.say(legs, ' + ');
	return [`Along its middle, corner to corner, from the outer face: ${all}.`];
}

/** What the pieces of a bent tube are cut to, and what a flare means for the length. */
function tubeNotes({ setup, length }: VentResult, log: ProblemLog): string[] {
	if (setup.kind !== 'round') return [];
	const { elbows, flare } = setup.vent;
	const rest = length - nth(setup.paths, 0).fixed;
	const bends = elbows.map(
		({ after, radius, turn }) =>
			`${log.say(after)} straight, an elbow ${turn} of ${log.say(radius)} radius (${log.say((Math.PI / 2) * radius)} along its middle)`,
	);
	const bent =
		elbows.length === 0
			? []
			: [`From the outer face: ${bends.join(', ')}, ${log.say(rest)} straight.`];
	const flared = flare
		? [
				`The length is from mouth to mouth with its flares of ${log.say(flare.radius)}, reckoned as a tube that widens (no source); cut the hole of a flange to its own sheet.`,
			]
		: [];
	return [...bent, ...flared];
}
