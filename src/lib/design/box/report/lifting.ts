/*
 * Lifting: Waters, Putz-Anderson and Garg, NIOSH publication 94-110 (1994).
 */

/** The most one person should lift under ideal conditions, kg. */
export const LOAD_CONSTANT = 23;

/**
 * Recommended weight limit, kg. `out` hands from the ankles, `up` hands from the floor, `travel` how far it is lifted, all in
 * centimetres; `twist` degrees off straight ahead. Frequency and grip are taken as seldom and good (factor 1).
 */
export function liftingLimit(out: number, up: number, travel: number, twist: number): number {
	const horizontal = Math.min(1, 25 / Math.max(out, 25));
	const vertical = 1 - 0.003 * Math.abs(up - 75);
	const distance = Math.min(1, 0.82 + 4.5 / Math.max(travel, 25));
	const asymmetry = 1 - 0.0032 * twist;
	return LOAD_CONSTANT * horizontal * vertical * distance * asymmetry;
}

/** Load over limit: above 1 it takes two, or a cart. */
export function liftingIndex(load: number, limit: number): number {
	return load / limit;
}

export function personsFor(mass: number): 1 | 2 {
	return mass >= LOAD_CONSTANT ? 2 : 1;
}
