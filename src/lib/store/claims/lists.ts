import { TICKS_PER_MM } from '../../measure';

/** A millionth of a pack. */
const PER_PACK = 1e6;

/**
 * Which lists are counted, in which field, what none said comes to, and into how many grains one is
 * divided: sheets and offcuts are whole, a roll's length lies on the grid of lengths. Whole numbers
 * of grains add up the same in whatever order bookings come.
 */
export const LISTS = {
	sheets: { kind: 'owned', field: 'owned', none: 0, grains: 1 },
	offcuts: { kind: 'offcut', field: 'count', none: 1, grains: 1 },
	rolls: { kind: 'roll', field: 'left', none: null, grains: TICKS_PER_MM },
	sundries: { kind: 'sundry', field: 'owned', none: 0, grains: PER_PACK },
} as const;
export type ListName = keyof typeof LISTS;
export const LIST_NAMES = Object.keys(LISTS) as ListName[];
