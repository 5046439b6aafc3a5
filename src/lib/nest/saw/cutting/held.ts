import { beside, deflate, type Actual, type Inflated } from '../../inflated';
import type { SawRegion } from './regions';
import type { SawProblem } from '../../types';

/*
 * What a cut needs: one of its sides wide enough to be held and near enough for the fence.
 */

export type FenceLimits = Pick<SawProblem, 'fenceLimit' | 'narrowestRip' | 'kerf'>;

/** One part comes off the low (left, bottom) or the high end of what is left. */
export interface FenceStep {
	readonly part: SawRegion;
	readonly end: 'low' | 'high';
	readonly fence: Actual;
	readonly fenceEnd: 'low' | 'high';
}

/** All parts but the last come off in turn; the last one is what remains. */
export interface Sequence {
	readonly steps: readonly FenceStep[];
	readonly last: SawRegion;
}

/** Can the saw hold a part of this size against the fence? */
export function fenceHolds(actual: Actual, { narrowestRip, fenceLimit }: FenceLimits): boolean {
	return (
		actual > 0 &&
		(narrowestRip === null || actual >= narrowestRip) &&
		(fenceLimit === null || actual <= fenceLimit)
	);
}

/**
 * Fence setting for a part coming off while `left`, the part included, is there; null when no side
 * can be held.
 */
export function setting(
	size: Inflated,
	left: Inflated,
	limits: FenceLimits,
): { fence: Actual; own: boolean } | null {
	const own = deflate(size, limits.kerf);
	if (fenceHolds(own, limits)) return { fence: own, own: true };
	const other = deflate(beside(left, size), limits.kerf);
	return fenceHolds(other, limits) ? { fence: other, own: false } : null;
}
