import type { Box } from '../../../job';
import { nth } from '../../../measure';
import type { ProblemLog } from '../../problem-log';
import { CEILING, type VentResult } from '../vent';
import type { ResponseFigures, ResponsePoint } from '../box-plan';

type Curves = Omit<ResponseFigures, 'says'>;

/** Where something is farthest or fastest. */
export interface Most {
	readonly hertz: number;
	readonly much: number;
}

/** The highest of one figure among the points on one side of the half power frequency. */
export function mostOf(
	{ points, f3 }: Pick<Curves, 'points' | 'f3'>,
	figure: 'cone' | 'air' | 'passive',
	side: 'in' | 'under',
): Most | null {
	return points.reduce<Most | null>((most, point: ResponsePoint) => {
		const much = point[figure];
		if (much === null || point.hertz >= f3 !== (side === 'in')) return most;
		return most && most.much >= much ? most : { hertz: point.hertz, much };
	}, null);
}

/** What moves in a chamber: the place of its drivers in the box, its vents and its radiators. */
interface Moving {
	readonly driver: number;
	readonly vents: readonly VentResult[];
	readonly cones: readonly { readonly index: number }[];
}

/**
 * What goes too far within the band at a power that was asked for. At a power that the plan took by
 * itself the words beside the curve say it.
 */
export function sayPast(
	box: Box,
	curves: Curves,
	{ driver, vents, cones }: Moving,
	log: ProblemLog,
): void {
	if (box.response.power === null) return;
	const cone = mostOf(curves, 'cone', 'in');
	if (cone && curves.xmax !== null && tenth(cone.much) > curves.xmax)
		log.check(
			['drivers', driver, 'data', 'xmax'],
			`At ${curves.power} W the cone goes ${tenth(cone.much)} mm at ${Math.round(cone.hertz)} Hz, within the band; its excursion is ${curves.xmax} mm one way.`,
			`Ask for ${Math.floor(curves.power * (curves.xmax / cone.much) ** 2)} W or less, or change volume or tuning.`,
		);
	const passive = mostOf(curves, 'passive', 'in');
	const { passiveXmax } = curves;
	if (passive && passiveXmax !== null && tenth(passive.much) > passiveXmax)
		log.check(
			['radiators', nth(cones, 0).index, 'data', 'xmax'],
			`At ${curves.power} W each passive radiator goes ${tenth(passive.much)} mm at ${Math.round(passive.hertz)} Hz, within the band; its excursion is ${passiveXmax} mm one way.`,
			`Ask for ${Math.floor(curves.power * (passiveXmax / passive.much) ** 2)} W or less, or take more or larger radiators.`,
		);
	const air = mostOf(curves, 'air', 'in');
	if (air && air.much > CEILING)
		log.check(
			['vents', nth(vents, 0).setup.index],
			`At ${curves.power} W the air in the vent reaches ${Math.round(air.much)} m/s at ${Math.round(air.hertz)} Hz.`,
			`Make the opening larger, or ask for less power; ${CEILING} m/s is the ceiling.`,
		);
}

export const tenth = (n: number): number => Math.round(n * 10) / 10;
