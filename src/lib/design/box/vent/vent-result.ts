import { nth, TICKS_PER_MM } from '../../../measure';
import { add3, type Air, litres, reach, scale3, type Taken } from '../solid';
import { type Board, rodObstacle, type Obstacle, type Place, through, type Seam } from '../board';
import { roundHole } from '../shell';
import type { ProblemLog } from '../../problem-log';
import { slotPieces, type VentPieces } from './slot-pieces';
import { tooLong, tooShort, type RoundSetup, type VentSetup } from './vent';
import { reachOf } from './tube';
import { alongPath, type TubePath } from './tube-path';
import { tune, type Tuned } from './vent-air';

export interface VentResult {
	readonly setup: VentSetup;
	readonly length: number;
	/**
	 * All vents of the chamber together; null where it breathes through another chamber too, so
	 * that no one frequency is its own.
	 */
	readonly hertz: number | null;
	/** Free at the inner mouth. */
	readonly clear: number;
	/** Legs of a slot along its middle, the first from the outer face; none of a tube. */
	readonly legs: readonly number[];
}

export interface TunedRooms extends Omit<VentPieces, 'clear' | 'legs'> {
	readonly vents: readonly VentResult[];
}

/** Tunes each chamber and turns its vents into boards, tubes and holes. */
export function tuneRooms(
	rooms: readonly { air: Air; gross: number }[],
	taken: readonly Taken[],
	setups: readonly VentSetup[],
	log: ProblemLog,
): TunedRooms {
	const vents: VentResult[] = [];
	const boards: Board[] = [];
	const seams: Seam[] = [];
	const all: Taken[] = [];
	const obstacles: Obstacle[] = [];
	rooms.forEach(({ air, gross }, room) => {
		const own = setups.filter((s) => s.room === room);
		if (own.length === 0) return;
		const alone = !setups.some((s) => joins(s) && (s.room === room || s.other === room));
		const before = taken.filter((t) => t.room === room).reduce((left, t) => left - t.volume, gross);
		const tuned = tuneOne(before, own, log);
		const hertz = alone ? tuned.hertz : null;
		if (tuned.left <= 0) {
			log.stop(
				['vents', nth(own, 0).index],
				`The vents and fittings take more than the ${log.volume(Math.round(litres(gross) * 10) / 10)} of the chamber.`,
				'Make the box larger or the vent smaller.',
			);
			return;
		}
		own.forEach((setup, i) => {
			const length = nth(tuned.lengths, i);
			tooLong(setup, nth(tuned.wanted, i), length, hertz, log);
			tooShort(setup, nth(tuned.wanted, i), length, hertz, log);
			if (!alone) sayNotAlone(setup, room, log);
			const made =
				setup.kind === 'slot'
					? slotPieces(setup, length, boards.length + 1)
					: tubePieces(setup, length, air, rooms);
			vents.push({ setup, length, hertz, clear: made.clear, legs: made.legs });
			boards.push(...made.boards);
			seams.push(...made.seams);
			all.push(...made.taken);
			obstacles.push(...made.obstacles);
		});
	});
	return { vents, boards, seams, taken: all, obstacles };
}

/** Does a tube join two chambers? */
const joins = (s: VentSetup): s is RoundSetup & { readonly other: number } =>
	s.kind === 'round' && s.other !== null;

/**
 * The vents that lead out tuned with the air of this chamber alone, in the order they stand; a tube
 * that leads to another chamber is as long as it is asked and takes its share of the air.
 */
function tuneOne(before: number, own: readonly VentSetup[], log: ProblemLog): Tuned {
	const lengthOf = ({ breath }: VentSetup): number => breath.fit(breath.fixed ?? breath.least);
	const out = own.filter((s) => !joins(s));
	const free = own.filter(joins).reduce((left, s) => left - s.breath.takes(lengthOf(s)), before);
	const tuned = tune(
		free,
		out.map((s) => s.breath),
		wantedTuning(out, log),
	);
	const merge = (of: readonly number[], held: (s: VentSetup) => number): number[] =>
		own.map((s) => (joins(s) ? held(s) : nth(of, out.indexOf(s))));
	const lengths = merge(tuned.lengths, lengthOf);
	return { ...tuned, lengths, wanted: merge(tuned.wanted, (s) => s.breath.fixed ?? 0) };
}

function sayNotAlone(setup: VentSetup, room: number, log: ProblemLog): void {
	const { goal } = setup.vent;
	if (goal.by !== 'tuning') return;
	log.check(
		['vents', setup.index, 'goal'],
		`${setup.name} is asked for ${goal.hertz} Hz, but chamber ${room + 1} breathes through another chamber too: no tuning is worked out for it. Its length is the one for chamber ${room + 1} alone.`,
		'Give its length instead, and measure the real box.',
	);
}

/** The tuning asked for; the first when several vents of a chamber ask for different ones. */
function wantedTuning(own: readonly VentSetup[], log: ProblemLog): number | null {
	const wishes = own.flatMap((s) => (s.vent.goal.by === 'tuning' ? [s.vent.goal.hertz] : []));
	const first = wishes[0] ?? null;
	if (wishes.some((w) => w !== first)) {
		log.check(
			['vents'],
			`The vents of one chamber ask for ${wishes.join(', ')} Hz; a chamber has one tuning.`,
			`Ask for the same of all; the plan goes by ${first} Hz.`,
		);
	}
	return first;
}

function tubePieces(
	setup: RoundSetup,
	length: number,
	air: Air,
	rooms: readonly { air: Air }[],
): VentPieces {
	const { vent, places, paths, room, name } = setup;
	const outer = vent.diameter + 2 * vent.wall;
	const obstacles: Obstacle[] = [];
	places.forEach((place, i) => {
		const hole = { of: 'vent', name };
		place.wall.holes.push({ ...roundHole(place.at, outer), ...hole });
		for (const layer of place.layers) {
			layer.holes.push({
				...roundHole(through(place.at, place.wall.frame, layer.frame), outer),
				...hole,
			});
		}
		obstacles.push(...bodyOf(nth(paths, i), length, name, outer / 2));
	});
	const inside = Math.max(0, length - nth(places, 0).stack - nth(places, 0).proud) * vent.count;
	const circle = (d: number): number => (Math.PI / 4) * d * d;
	const inner = Math.min(...paths.map((p) => reachOf(p, air, outer / 2))) - length;
	const clear = Math.min(inner, ...places.map((p) => clearBefore(p, setup, rooms)));
	return {
		boards: [],
		seams: [],
		obstacles,
		clear,
		legs: [],
		taken: [
			{ room, what: `${name}: tube`, volume: (circle(outer) - circle(vent.diameter)) * inside },
			{ room, what: `${name}: air in it`, volume: circle(vent.diameter) * inside },
		],
	};
}

/** Free before the near end of a tube that leads to another chamber. */
function clearBefore(
	{ point, inward, stack }: Place,
	{ other, vent }: RoundSetup,
	rooms: readonly { air: Air }[],
): number {
	if (other === null) return Infinity;
	const far = add3(point, scale3(inward, stack));
	const radius = vent.diameter / 2 + vent.wall;
	return reach(nth(rooms, other).air, far, scale3(inward, -1), radius) - stack;
}

/** How finely a bend is followed by straight rods, radians. */
const FINE = Math.PI / 16;

/** A tube as rods along its middle, for whatever may stand in its way. */
function bodyOf(path: TubePath, length: number, name: string, radius: number): Obstacle[] {
	let far = 0;
	return path.pieces.flatMap((piece) => {
		const [start, end] = [far, Math.min(length, far + piece.length)];
		far += piece.length;
		const count = piece.bend ? Math.ceil((end - start) / (piece.bend.radius * FINE)) : 1;
		const at = (i: number) =>
			alongPath(path, start + (Math.max(TICKS_PER_MM, end - start) * i) / count).point;
		if (end <= start && start > 0) return [];
		return Array.from({ length: count }, (_, i) => rodObstacle(name, at(i), at(i + 1), radius));
	});
}
