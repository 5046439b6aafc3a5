import type { Motor } from './circuit';
import { type DriverData, qsOf, STIFFNESS } from './data';

/** Density of air times the speed of sound, and that speed: Small 1972, 1.18 kg/m3 and 345 m/s. */
const SPEED = 345;
const RESISTANCE = STIFFNESS / SPEED;
/** Pa that 0 dB stands for. */
const FAINTEST = 20e-6;

/** Several alike as one motor; null where resonance, Q or Vas is missing. */
export function motorOf(data: DriverData, count: number): Motor | null {
	const { qts, qes, qms } = qsOf(data);
	if (data.fs === undefined || data.vas === undefined || qts === null) return null;
	const vas = data.vas * 1e-3 * count;
	if (qes === null || qms === null)
		return { fs: data.fs, vas, lag: 0, damping: { electrical: 1 / qts, mechanical: 0 } };
	const lag = data.re === undefined ? 0 : ((data.le ?? 0) * 1e-3) / data.re;
	return { fs: data.fs, vas, lag, damping: { electrical: 1 / qes, mechanical: 1 / qms } };
}

/**
 * Small 1972: the share of electrical power that becomes sound in half space, 4 pi2 / c3 fs3 Vas /
 * Qes; of several drivers together, for power that they share.
 */
export function efficiency(fs: number, qes: number, vas: number): number {
	return ((4 * Math.PI ** 2) / SPEED ** 3) * ((fs ** 3 * vas) / qes);
}

/** dB at 1 m in half space of a source that gives so many W of sound. */
export function soundLevel(acoustic: number): number {
	const pressure = Math.sqrt((RESISTANCE * acoustic) / (2 * Math.PI));
	return 20 * Math.log10(pressure / FAINTEST);
}

/**
 * How far the amplitude of a voltage that gives `watts` into Re would push a cone if it were
 * steady and the driver in free air, m. Of one driver: Vas and watts are its own.
 */
export function steadyPush(
	data: { fs: number; qes: number; vas: number; sd: number },
	watts: number,
): number {
	const compliance = data.vas / (STIFFNESS * data.sd ** 2);
	return Math.sqrt((2 * compliance * watts) / (2 * Math.PI * data.fs * data.qes));
}
