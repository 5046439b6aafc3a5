import type { Cloth, Roll } from '../../job';
import { type Length, ticks } from '../../measure';
import type { PatternCut } from '../layouts';

type Pattern = Pick<Cloth, 'repeat'>;
type OffRoll = Pick<Roll, 'cuts' | 'begins' | 'left' | 'step'>;

/**
 * What goes by before the pattern starts: a roll that was last cut off anywhere in its pattern
 * loses up to a repeat.
 */
export function leadOf(roll: OffRoll, { repeat }: Pattern): Length {
	return roll.begins === 'anywhere' ? repeat : ticks(0);
}

/** Length to pull for a layout of this length, in the steps the roll is sold in. */
export function pullOf(roll: OffRoll, cloth: Pattern, length: Length): Length {
	if (length === 0) return length;
	const used = inRepeats(roll, cloth, length, Math.ceil) + leadOf(roll, cloth);
	return ticks(roll.left === null ? Math.ceil(used / roll.step) * roll.step : used);
}

/** Longest layout that what is left of an owned roll gives; null for one sold by the length. */
export function roomOn(roll: OffRoll, cloth: Pattern): Length | null {
	if (roll.left === null) return null;
	const left = Math.max(0, roll.left - leadOf(roll, cloth));
	return ticks(inRepeats(roll, cloth, left, Math.floor));
}

/**
 * Every blank starts where the pattern does, so only what is cut off last can end within a repeat.
 */
function inRepeats(
	{ cuts }: OffRoll,
	{ repeat }: Pattern,
	length: number,
	round: (n: number) => number,
): number {
	return cuts === 'counted' || repeat === 0 ? length : round(length / repeat) * repeat;
}

/** Nothing for a cloth without a pattern along it. */
export function patternCut(roll: OffRoll, cloth: Pattern, length: Length): PatternCut | null {
	if (cloth.repeat === 0 || length === 0) return null;
	const { cuts, begins } = roll;
	const other = { ...roll, cuts: cuts === 'counted' ? 'whole' : 'counted' } as const;
	return { cuts, begins, other: pullOf(other, cloth, length) };
}
