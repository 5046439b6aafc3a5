import { snap } from '../../../measure';
import type { Sundry } from '../../../job';
import { type Board, kg, weighBoard } from '../board';
import type { FromDatum, TieDownFigures } from '../box-plan';
import type { Tied } from '../hold';
import { type Inside, rodMass } from '../inside';
import type { Framed, Seated } from '../mounted';
import { add3, middle3, p3, type Point3, scale3 } from '../solid';
import { outsidePoints } from './fit';

/** Something heavy, and where. kg. */
interface Weight {
	readonly mass: number;
	readonly at: Point3;
}

/**
 * Where the weight of a driver is taken, as a share of its mounting depth behind the flange: the
 * magnet is most of it. Common practice, no source.
 */
const HEAVY = 2 / 3;

/** A driver or radiator, kg with all that is fixed to it. */
export interface Carried {
	readonly one: Seated<Framed>;
	readonly mass: number;
}

/** Centre of gravity of boards, rods, drivers, radiators and devices together. */
export function gravityOf(
	inside: Inside,
	mounted: readonly Carried[],
	sundries: readonly Sundry[],
): FromDatum | null {
	const weights = [
		...inside.boards.map(weightOf),
		...inside.rods.map((rod) => ({ mass: rodMass(rod, sundries), at: middle3(rod.from, rod.to) })),
		...mounted.map(mountedWeight),
		...inside.devices.map((d) => ({ mass: d.device.mass, at: d.middle })),
	];
	const mass = weights.reduce((sum, w) => sum + w.mass, 0);
	if (mass <= 0) return null;
	const moment = weights.reduce((sum, w) => add3(sum, scale3(w.at, w.mass)), p3(0, 0, 0));
	return fromDatum(scale3(moment, 1 / mass), inside.boards);
}

function weightOf(board: Board): Weight {
	const { volume, moment } = weighBoard(board);
	return {
		mass: kg(volume, board.material.density),
		at: volume > 0 ? scale3(moment, 1 / volume) : board.frame.at,
	};
}

function mountedWeight({ one: { driver, place, proud }, mass }: Carried): Weight {
	const deep = driver.depth * HEAVY - proud;
	return { mass, at: add3(place.point, scale3(place.inward, deep)) };
}

/** From the outermost left, front and bottom of the box. */
function fromDatum(p: Point3, boards: readonly Board[]): FromDatum {
	const points = outsidePoints(boards);
	const low = (axis: 'x' | 'y' | 'z'): number => Math.min(...points.map((q) => q[axis]));
	return {
		across: snap(p.x - low('x')),
		back: snap(p.y - low('y')),
		up: snap(p.z - low('z')),
	};
}

export function tieDownFigures(tied: Tied, boards: readonly Board[]): TieDownFigures {
	const { name, place, point, hole } = tied;
	return { name, board: place.wall.name, place: fromDatum(point, boards), hole };
}
