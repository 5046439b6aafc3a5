import type { RoundVent } from '../../../job';
import { END_CORRECTION, FLANGED_END, FREE_END } from './acoustics';

/**
 * A mouth rounded in a quarter circle is reckoned as a tube that widens: each slice of it has the
 * inertia of its own area, and what moves before the mouth is that of its wider rim. Reckoned, no
 * source: the vent is cut long and tuned by trimming.
 * @param bore radius of the tube, `flare` of the rounding; any one unit
 * @returns the length of tube that the rounding acts like, in that unit: less than `flare`
 */
export function flareActs(bore: number, flare: number): number {
	const slices = 400;
	const at = (share: number): number => {
		const wide = bore + flare * (1 - Math.sqrt(1 - share * share));
		return (bore / wide) ** 2;
	};
	const sum = Array.from({ length: slices }, (_, i) => at((i + 0.5) / slices));
	return (flare / slices) * sum.reduce((a, b) => a + b, 0);
}

/** What the two ends add to the length of a tube, less what flares take; the unit of `bore`. */
export function tubeEnds({ mouths, factor, flare }: RoundVent, bore: number): number {
	const [outer, inner] = endsOf(mouths, factor);
	const one = (radii: number, flared: boolean): number => {
		if (!flare || !flared) return radii * bore;
		const wide = bore + flare.radius;
		return (radii * bore * bore) / wide - (flare.radius - flareActs(bore, flare.radius));
	};
	return one(outer, flare?.ends !== 'inner') + one(inner, flare?.ends !== 'outer');
}

/** End correction of the outer and the inner mouth, in radii; an own one is shared by halves. */
function endsOf(mouths: RoundVent['mouths'], factor: number | null): readonly [number, number] {
	if (factor !== null) return [factor / 2, factor / 2];
	if (mouths === 'one-flanged') return [FLANGED_END, FREE_END];
	return [END_CORRECTION[mouths] / 2, END_CORRECTION[mouths] / 2];
}

/** Length that flares take of a tube at the least. */
export function flaresTake({ flare }: RoundVent): number {
	return flare ? flare.radius * (flare.ends === 'both' ? 2 : 1) : 0;
}
