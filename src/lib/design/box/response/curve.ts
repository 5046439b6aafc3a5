import { type Behind, motion, type Motor } from './circuit';

/** Decibels of half the power. */
export const HALF_POWER = 10 * Math.log10(0.5);

export const decibels = (ratio: number): number => 20 * Math.log10(ratio);

/** Level over the pass band, dB; the coil's inductance left out, which has no pass band. */
function levelAt(motor: Motor, behind: Behind, hertz: number): number {
	return decibels(motion({ ...motor, lag: 0 }, behind, hertz).level);
}

/** Steps of the search to an octave: no dip that is worth telling slips through. */
const FINE = 48;

/** The lowest frequency from which on the level stays over half power, Hz. */
export function halfPowerOf(motor: Motor, behind: Behind): number {
	const high = 100 * Math.max(motor.fs, behind.losses?.hertz ?? 0, sealedOver(motor, behind));
	const step = 2 ** (1 / FINE);
	let above = high;
	while (above > 0.5 && levelAt(motor, behind, above / step) >= HALF_POWER) above /= step;
	return halved(motor, behind, above / step, above);
}

/** Resonance of the driver as if the chamber were sealed: never under what the search must pass. */
const sealedOver = (motor: Motor, behind: Behind): number =>
	motor.fs * Math.sqrt(1 + motor.vas / behind.volume);

function halved(motor: Motor, behind: Behind, low: number, high: number): number {
	let [below, above] = [low, high];
	for (let i = 0; i < 40; i++) {
		const middle = Math.sqrt(below * above);
		if (levelAt(motor, behind, middle) < HALF_POWER) below = middle;
		else above = middle;
	}
	return Math.sqrt(below * above);
}

/** Lowest and highest frequency that are worth a drawing, by the half power frequency, Hz. */
export function bandOf(f3: number): readonly [low: number, high: number] {
	return f3 <= 100 ? [10, 200] : f3 <= 250 ? [20, 500] : [50, 2000];
}

/** Points to an octave: enough for a smooth line on paper. */
const POINTS = 16;

/** Frequencies of a band in equal steps of pitch, both ends among them, Hz. */
export function frequencies([low, high]: readonly [number, number]): number[] {
	const steps = Math.ceil(Math.log2(high / low) * POINTS);
	return Array.from({ length: steps + 1 }, (_, i) => low * (high / low) ** (i / steps));
}

/** Preferred frequencies, thirds of an octave: ISO 266. */
const THIRDS = [10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80];

/** Those of a band, Hz: what a table shows. */
export function preferred([low, high]: readonly [number, number]): number[] {
	return [1, 10, 100]
		.flatMap((decade) => THIRDS.map((n) => n * decade))
		.filter((n) => n >= low && n <= high);
}
