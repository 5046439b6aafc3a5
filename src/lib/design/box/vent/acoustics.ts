/*
 * The air in a box, in SI units. Small signal figures: they say where a design starts, and the vent
 * is cut long and tuned by trimming.
 */

/** Speed of sound in dry air at 20 degrees, m/s: ISO 9613-1. */
export const SOUND = 343.2;

/** End of a tube standing free, in radii: Levine and Schwinger, Phys. Rev. 73 (1948) 383. */
export const FREE_END = 0.6133;
/** End of a tube in a wide wall, in radii, 8 / (3 pi): Rayleigh; Beranek 1954. */
export const FLANGED_END = 8 / (3 * Math.PI);

/** Both ends of a vent together, in radii. */
export const END_CORRECTION = {
	'one-flanged': FLANGED_END + FREE_END,
	'both-flanged': 2 * FLANGED_END,
	'both-free': 2 * FREE_END,
} as const;

/** Radius of the circle with the same area: what the end correction of a slot goes by. */
export function equalRadius(area: number): number {
	return Math.sqrt(area / Math.PI);
}

/**
 * Resonance in Hz of a volume (m3) behind a neck of `area` (m2) that acts `length` (m) long:
 * Helmholtz.
 */
export function resonance(volume: number, area: number, length: number, sound = SOUND): number {
	return (sound / (2 * Math.PI)) * Math.sqrt(area / (length * volume));
}

/**
 * How long a neck of `area` (m2) must act, m, for a volume (m3) to resonate at `hertz`. Subtract
 * the end correction for its length.
 */
export function actingLength(volume: number, area: number, hertz: number, sound = SOUND): number {
	return (sound * sound * area) / (4 * Math.PI ** 2 * hertz ** 2 * volume);
}

/**
 * Least vent area (m2) for the volume a driver moves (m3, one way): Small, JAES 21 (1973), S >= 0.8
 * f V. From memory.
 */
export function leastVentArea(hertz: number, moved: number): number {
	return 0.8 * hertz * moved;
}

/** Peak speed of the air, m/s, if the vent has to move all the driver moves at the tuning. */
export function ventSpeed(hertz: number, moved: number, area: number): number {
	return (2 * Math.PI * hertz * moved) / area;
}

/**
 * About a twentieth and a tenth of the speed of sound: quiet, and the ceiling. Salvatti, Devantier
 * and Button, JAES 50 (2002).
 */
export const QUIET = 17;
export const CEILING = 34;

/** A closed box as a second-order high-pass: Small, JAES 20 (1972) and 21 (1973). */
export interface Sealed {
	readonly qtc: number;
	readonly fc: number;
	/** Half power frequency, Hz. */
	readonly f3: number;
	/** Highest point of the response over the level far above, dB; 0 where it has none. */
	readonly peak: number;
}

/** What a driver becomes in a volume it feels as `volume` (same unit as `vas`). */
export function sealed(fs: number, qts: number, vas: number, volume: number): Sealed {
	const up = Math.sqrt(1 + vas / volume);
	const qtc = qts * up;
	const fc = fs * up;
	return { qtc, fc, f3: fc * halfPower(qtc), peak: peakOf(qtc) };
}

/** f3 / fc of a second-order high-pass. */
export function halfPower(q: number): number {
	const a = 1 / (q * q) - 2;
	return Math.sqrt((a + Math.sqrt(a * a + 4)) / 2);
}

export function peakOf(q: number): number {
	return q * q <= 0.5 ? 0 : 20 * Math.log10((q * q) / Math.sqrt(q * q - 0.25));
}

/**
 * The volume (unit of `vas`) that gives a Qtc; null when it lies at or below the driver's own Q: no
 * box can lower it.
 */
export function volumeForQtc(qts: number, vas: number, qtc: number): number | null {
	return qtc <= qts ? null : vas / ((qtc / qts) ** 2 - 1);
}

/**
 * Loose stuffing makes a sealed box act larger: common practice 15 to 25 per cent; more is never
 * counted, and none with a vent.
 */
const MOST_CREDIT = 25;

export function stuffingCredit(asked: number, vented: boolean): number {
	return vented ? 0 : Math.min(asked, MOST_CREDIT);
}
