import { nth, TICKS_PER_MM } from '../../../measure';
import { actingLength, resonance } from './acoustics';

/** One vent or row of equal vents that a chamber breathes through. Ticks. */
export interface Breath {
	/** Open area of all of them together, square ticks. */
	readonly area: number;
	/** Both end corrections of one of them, ticks. */
	readonly ends: number;
	/** The length it is held to, or null where the tuning decides. */
	readonly fixed: number | null;
	/** The shortest it can be: the boards it goes through make a vent as long as they are thick. */
	readonly least: number;
	/** The longest it can be built. */
	readonly longest: number;
	/**
	 * The nearest length that can be built: no longer than the box allows, and no L that ends in
	 * its own elbow.
	 */
	fit(length: number): number;
	/** Cubic ticks it takes of the chamber at a length. */
	takes(length: number): number;
}

export interface Tuned {
	readonly lengths: readonly number[];
	/** What each would have to be, where the box is too short for it. */
	readonly wanted: readonly number[];
	readonly hertz: number;
	/** Air left with the vents in, cubic ticks. */
	readonly left: number;
}

const M = TICKS_PER_MM * 1000;

/**
 * Lengths that tune a chamber, given the air in it before the vents. Vents that share a chamber act
 * side by side: those whose length is open act equally long. The vents take air themselves, so
 * length and volume are found together; a slot that turns once more takes more of it, so that where
 * short ones fall short of the tuning long ones may still reach it.
 */
export function tune(free: number, vents: readonly Breath[], hertz: number | null): Tuned {
	const usual = vents.map((v) => Math.min(v.longest, Math.max(v.least, 100 * TICKS_PER_MM)));
	const short = settle(free, vents, hertz, usual);
	if (isMet(short)) return short;
	const long = settle(
		free,
		vents,
		hertz,
		vents.map((v) => Math.max(v.least, v.longest)),
	);
	return isMet(long) ? long : short;
}

/** Is every vent as long as it would have to be? */
const isMet = ({ lengths, wanted, left }: Tuned): boolean =>
	left > 0 && wanted.every((l, i) => l <= nth(lengths, i) + 1);

function settle(
	free: number,
	vents: readonly Breath[],
	hertz: number | null,
	start: readonly number[],
): Tuned {
	let lengths = vents.map((v, i) => v.fixed ?? nth(start, i));
	let wanted = lengths;
	for (let round = 0; round < 60; round++) {
		const left = airLeft(free, vents, lengths);
		const acting = hertz === null || left <= 0 ? null : openLength(left, vents, hertz);
		wanted = vents.map((v) => v.fixed ?? (acting === null ? Infinity : acting - v.ends));
		const next = wanted.map((l, i) => nth(vents, i).fit(Math.max(l, nth(vents, i).least)));
		const moved = Math.max(0, ...next.map((l, i) => Math.abs(l - nth(lengths, i))));
		// Half steps after a while: a long vent in a small chamber may overshoot to and fro.
		lengths = moved < 0.2 || round < 12 ? next : next.map((l, i) => (l + nth(lengths, i)) / 2);
		if (moved < 0.2) break;
	}
	const left = airLeft(free, vents, lengths);
	return { lengths, wanted, left, hertz: left > 0 ? tuning(left, vents, lengths) : 0 };
}

function airLeft(free: number, vents: readonly Breath[], lengths: readonly number[]): number {
	return vents.reduce((left, v, i) => left - v.takes(nth(lengths, i)), free);
}

/**
 * How long the open vents must act so that all together give the tuning; Infinity when the fixed
 * ones already exceed it.
 */
function openLength(left: number, vents: readonly Breath[], hertz: number): number {
	const open = vents.filter((v) => v.fixed === null).reduce((sum, v) => sum + v.area, 0);
	// Area over length, summed: what the chamber needs, less what the fixed vents give.
	const needed = M / actingLength(left / M ** 3, 1, hertz);
	const given = vents.reduce(
		(sum, v) => sum + (v.fixed === null ? 0 : v.area / (v.fixed + v.ends)),
		0,
	);
	const rest = needed - given;
	return rest > 0 ? open / rest : Infinity;
}

/** Tuning of several vents side by side. */
export function tuning(left: number, vents: readonly Breath[], lengths: readonly number[]): number {
	const conductance = vents.reduce((sum, v, i) => sum + v.area / (nth(lengths, i) + v.ends), 0);
	return resonance(left / M ** 3, conductance / M, 1);
}
