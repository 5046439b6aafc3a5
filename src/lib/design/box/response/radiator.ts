import type { Radiator } from '../../../job';
import { nth } from '../../../measure';
import type { Breather } from './circuit';
import { STIFFNESS } from './data';

/*
 * Passive radiators: R. H. Small, 'Passive-Radiator Loudspeaker Systems', part I, J. Audio Eng.
 * Soc. 22 (1974). The mass of the cone resonates on its own suspension and the air of the box side
 * by side: the tuning. On its suspension alone it resonates lower, and there nothing sounds. SI
 * units, impedances divided as in the circuit.
 */

/** One radiator without added mass. */
export interface PassiveCone {
	/** Volume of air as stiff as its suspension, m3. */
	readonly volume: number;
	/** s2/m3. */
	readonly inertia: number;
	/** Resistance of its suspension; 0 where its Q is not known. */
	readonly resistance: number;
	/** m2; null where not known. */
	readonly area: number | null;
}

/** What the data sheet says of a radiator; null where it says too little. */
export function passiveCone({ data }: Pick<Radiator, 'data'>): PassiveCone | null {
	const area = data.sd === undefined ? null : data.sd * 1e-4;
	const moving =
		data.mms === undefined || area === null ? null : (data.mms * 1e-3) / (STIFFNESS * area ** 2);
	const given = springOf(data, area);
	if (data.fs === undefined && (moving === null || given === null)) return null;
	if (moving === null && given === null) return null;
	const w = data.fs === undefined ? null : 2 * Math.PI * data.fs;
	// Of three figures the resonance and the suspension are taken: makers measure those.
	const volume = given ?? (w && moving ? 1 / (w * w * moving) : 0);
	const inertia = w ? 1 / (w * w * volume) : (moving ?? 0);
	const own = 1 / Math.sqrt(inertia * volume);
	const resistance = data.qms === undefined ? 0 : 1 / (own * volume * data.qms);
	return { volume, inertia, resistance, area };
}

function springOf({ vas, cms }: Radiator['data'], area: number | null): number | null {
	if (vas !== undefined) return vas * 1e-3;
	return cms === undefined || area === null ? null : cms * 1e-3 * STIFFNESS * area ** 2;
}

/** Hz at which a cone of this inertia resonates on so much air, m3. */
export const resonanceOn = (inertia: number, volume: number): number =>
	1 / (2 * Math.PI * Math.sqrt(inertia * volume));

/** Air of two springs side by side: each alone is softer. m3. */
const together = (a: number, b: number): number => 1 / (1 / a + 1 / b);

/** Several alike on one chamber. */
export interface TunedCones {
	readonly count: number;
	readonly cone: PassiveCone;
	/** One radiator in free air, Hz: without and with the added mass. */
	readonly own: number;
	readonly loaded: number;
	/** Of all with the air of the chamber, Hz, and what it would be with no mass added. */
	readonly hertz: number;
	readonly bare: number;
	/** Added to each, g; null where the cone area is not known. */
	readonly added: number | null;
	readonly breather: Breather;
}

/** `count` alike on a chamber of `box` m3; null where the data sheet says too little. */
export function tuneCones(radiator: Radiator, count: number, box: number): TunedCones | null {
	const cone = passiveCone(radiator);
	if (!cone || box <= 0) return null;
	const { goal } = radiator;
	// Each has its share of the air.
	const spring = together(cone.volume, box / count);
	const weigh = cone.area === null ? null : STIFFNESS * cone.area ** 2 * 1000;
	const wanted = goal.by === 'tuning' ? 1 / ((2 * Math.PI * goal.hertz) ** 2 * spring) : null;
	const more = goal.by === 'mass' && weigh !== null ? goal.grams / weigh : 0;
	const inertia = Math.max(cone.inertia, wanted ?? cone.inertia + more);
	return {
		count,
		cone,
		own: resonanceOn(cone.inertia, cone.volume),
		loaded: resonanceOn(inertia, cone.volume),
		hertz: resonanceOn(inertia, spring),
		bare: resonanceOn(cone.inertia, spring),
		added: weigh === null ? null : (inertia - cone.inertia) * weigh,
		breather: {
			inertia: inertia / count,
			spring: { volume: cone.volume * count, resistance: cone.resistance / count },
		},
	};
}

/** Those of one chamber that act as one; null where they differ or their data are missing. */
export function tunedTogether(
	own: readonly { readonly driver: Radiator }[],
	box: number,
): TunedCones | null {
	return own.length === 0 || unlike(own) ? null : tuneCones(nth(own, 0).driver, own.length, box);
}

export function unlike(own: readonly { readonly driver: Radiator }[]): boolean {
	const seen = own.map(({ driver: { data, goal } }) => JSON.stringify([data, goal]));
	return seen.some((s) => s !== seen[0]);
}
