/*
 * Lifting: Waters, Putz-Anderson and Garg, NIOSH publication 94-110 (1994).
 */

/** The most one person should lift under ideal conditions, kg. */
export const LOAD_CONSTANT = 23;

/** How many carry it. */
export function personsFor(mass: number): 1 | 2 {
	return mass >= LOAD_CONSTANT ? 2 : 1;
}
