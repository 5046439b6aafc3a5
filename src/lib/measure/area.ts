import { TICKS_PER_INCH, TICKS_PER_MM } from './length';

/** Areas are plain numbers of square ticks: exact for any sheet (a 3 m by 3 m one is 2.3e13, far below 2^53). */
export type AreaUnit = 'mm2' | 'm2' | 'in2' | 'ft2' | 'yd2';

const SQUARE_TICKS: Readonly<Record<AreaUnit, number>> = {
	mm2: TICKS_PER_MM ** 2,
	m2: (1000 * TICKS_PER_MM) ** 2,
	in2: TICKS_PER_INCH ** 2,
	ft2: (12 * TICKS_PER_INCH) ** 2,
	yd2: (36 * TICKS_PER_INCH) ** 2,
};

/** Square ticks as a number of this unit. */
export function areaIn(squareTicks: number, unit: AreaUnit): number {
	return squareTicks / SQUARE_TICKS[unit];
}

const PLACES: Readonly<Record<AreaUnit, number>> = { mm2: 0, m2: 2, in2: 0, ft2: 1, yd2: 2 };

/** `2.98 m2`, `32.0 ft2`. */
export function printArea(squareTicks: number, unit: AreaUnit, decimal: '.' | ',' = '.'): string {
	return `${areaIn(squareTicks, unit).toFixed(PLACES[unit]).replace('.', decimal)} ${unit}`;
}
