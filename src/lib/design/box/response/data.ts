import type { Driver } from '../../../job';

export type DriverData = Driver['data'];

/**
 * The three Q of a driver: the third follows from two, 1 / Qts = 1 / Qes + 1 / Qms. Where all three
 * are given Qts is the one that follows: the curve needs the other two, and every figure of a box
 * goes by one Q.
 */
export interface Qs {
	readonly qts: number | null;
	readonly qes: number | null;
	readonly qms: number | null;
}

export function qsOf({ qts, qes, qms }: DriverData): Qs {
	const rest = (whole?: number, part?: number): number | null =>
		whole === undefined || part === undefined || part <= whole ? null : 1 / (1 / whole - 1 / part);
	const both = qes !== undefined && qms !== undefined ? 1 / (1 / qes + 1 / qms) : null;
	return { qts: both ?? qts ?? null, qes: qes ?? rest(qts, qms), qms: qms ?? rest(qts, qes) };
}

/** How far two figures of one sheet may lie apart, as a share: makers round, and measure anew. */
export const APART = 0.15;

/** What of a data sheet contradicts itself, and what to look at; nothing where it agrees. */
export function contradictions(data: DriverData): { what: string; fix: string }[] {
	return [...qTrouble(data), ...massTrouble(data)];
}

function qTrouble({ qts, qes, qms }: DriverData): { what: string; fix: string }[] {
	if (qts === undefined) return [];
	const part = [qes, qms].find((q) => q !== undefined && q <= qts);
	const fix = 'Read the three again: 1 / Qts is 1 / Qes and 1 / Qms together.';
	if (part !== undefined)
		return [{ what: `Qts ${qts} is not under the ${part} of one of its parts.`, fix }];
	if (qes === undefined || qms === undefined) return [];
	const both = 1 / (1 / qes + 1 / qms);
	if (Math.abs(both / qts - 1) <= APART) return [];
	return [{ what: `Qes ${qes} and Qms ${qms} make a Qts of ${two(both)}, not ${qts}.`, fix }];
}

/** Makers give a Q to two decimals, and a nought at the end of a number is not seen. */
const LEAST_DECIMALS = 2;

/** Half a unit of the last decimal a figure is given to. */
function rounded(n: number): number {
	const decimals = (/\.(\d+)$/.exec(String(n))?.[1] ?? '').length;
	return 0.5 * 10 ** -Math.max(LEAST_DECIMALS, decimals);
}

/**
 * A Qts that differs from its parts by more than they are rounded, yet not so far as to be wrong.
 */
export function otherQts({ qts, qes, qms }: DriverData): { what: string; fix: string } | null {
	if (qts === undefined || qes === undefined || qms === undefined) return null;
	const [half, e, m] = [qts, qes, qms].map(rounded) as [number, number, number];
	const of = (a: number, c: number): number => 1 / (1 / a + 1 / c);
	const both = of(qes, qms);
	const near = qts + half >= of(qes - e, qms - m) && qts - half <= of(qes + e, qms + m);
	if (near || Math.abs(both / qts - 1) > APART || qTrouble({ qts, qes, qms }).length > 0)
		return null;
	return {
		what: `Qts ${qts} is given, and Qes ${qes} and Qms ${qms} make ${three(both)}: the figures go by those two.`,
		fix: `Give a Qts of ${three(both)}, or read the three again.`,
	};
}

/** Density times the speed of sound squared as data sheets take it: 1.18 kg/m3, 345 m/s (Small). */
export const STIFFNESS = 1.18 * 345 ** 2;

function massTrouble({ fs, vas, sd, mms }: DriverData): { what: string; fix: string }[] {
	if (fs === undefined || vas === undefined || sd === undefined || mms === undefined) return [];
	const compliance = (vas * 1e-3) / (STIFFNESS * (sd * 1e-4) ** 2);
	const own = 1 / (2 * Math.PI * Math.sqrt(compliance * mms * 1e-3));
	if (Math.abs(own / fs - 1) <= APART) return [];
	return [
		{
			what: `A moving mass of ${mms} g on the suspension that Vas and the cone area give resonates at ${two(own)} Hz, not ${fs} Hz.`,
			fix: 'Read mass, Vas, cone area and resonance again; one is off, or in another unit.',
		},
	];
}

export const two = (n: number): number => Math.round(n * 100) / 100;
const three = (n: number): number => Math.round(n * 1000) / 1000;
