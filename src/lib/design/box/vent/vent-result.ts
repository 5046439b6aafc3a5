import { nth, TICKS_PER_MM } from '../../../measure';
import { type Air, litres, type Taken } from '../solid';
import { type Board, rodObstacle, type Obstacle, through, type Seam } from '../board';
import { roundHole } from '../shell';
import type { ProblemLog } from '../../problem-log';
import { slotPieces, type VentPieces } from './slot-pieces';
import { tooLong, tooShort, type RoundSetup, type VentSetup } from './vent';
import { reachOf } from './tube';
import { alongPath, type TubePath } from './tube-path';
import { tune } from './vent-air';

export interface VentResult {
	readonly setup: VentSetup;
	readonly length: number;
	/** All vents of the chamber together. */
	readonly hertz: number;
	/** Free at the inner mouth. */
	readonly clear: number;
	readonly bent: boolean;
}

export interface TunedRooms extends Omit<VentPieces, 'clear' | 'bent'> {
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
		const free = taken.filter((t) => t.room === room).reduce((left, t) => left - t.volume, gross);
		const tuned = tune(
			free,
			own.map((s) => s.breath),
			wantedTuning(own, log),
		);
		if (tuned.left <= 0) {
			log.stop(
				['vents', nth(own, 0).index],
				`The vents and fittings take more than the ${Math.round(litres(gross) * 10) / 10} L of the chamber.`,
				'Make the box larger or the vent smaller.',
			);
			return;
		}
		own.forEach((setup, i) => {
			const length = nth(tuned.lengths, i);
			tooLong(setup, nth(tuned.wanted, i), length, tuned.hertz, log);
			tooShort(setup, nth(tuned.wanted, i), length, tuned.hertz, log);
			const made =
				setup.kind === 'slot'
					? slotPieces(setup, length, boards.length + 1)
					: tubePieces(setup, length, air);
			vents.push({ setup, length, hertz: tuned.hertz, clear: made.clear, bent: made.bent });
			boards.push(...made.boards);
			seams.push(...made.seams);
			all.push(...made.taken);
			obstacles.push(...made.obstacles);
		});
	});
	return { vents, boards, seams, taken: all, obstacles };
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

function tubePieces(setup: RoundSetup, length: number, air: Air): VentPieces {
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
	const clear = Math.min(...paths.map((p) => reachOf(p, air, outer / 2))) - length;
	return {
		boards: [],
		seams: [],
		obstacles,
		clear,
		bent: false,
		taken: [
			{ room, what: `${name}: tube`, volume: (circle(outer) - circle(vent.diameter)) * inside },
			{ room, what: `${name}: air in it`, volume: circle(vent.diameter) * inside },
		],
	};
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
