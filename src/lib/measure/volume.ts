import type { Ruler } from './ruler';

/** Volumes are plain numbers of litres. */
export type VolumeUnit = 'L' | 'ft3' | 'in3';

/**
 * A cubic inch is 2.54 cm cubed, exact since the inch is (NIST SP 811 (2008) appendix B.8); a cubic
 * foot is 1728 of them.
 */
const LITRES: Readonly<Record<VolumeUnit, number>> = { L: 1, ft3: 28.316846592, in3: 0.016387064 };

/** Litres as a number of this unit. */
export function fromLitres(litres: number, unit: VolumeUnit): number {
	return litres / LITRES[unit];
}

/** So many of this unit, in litres. */
export function toLitres(amount: number, unit: VolumeUnit): number {
	return amount * LITRES[unit];
}

const PLACES: Readonly<Record<VolumeUnit, number>> = { L: 2, ft3: 3, in3: 0 };

const SIGNS: Readonly<Record<VolumeUnit, string>> = { L: 'L', ft3: 'ft³', in3: 'in³' };

/** `91.93 L`, `3.247 ft³`, `5610 in³`. */
export function printVolume(litres: number, unit: VolumeUnit, decimal: '.' | ',' = '.'): string {
	const number = fromLitres(litres, unit).toFixed(PLACES[unit]).replace('.', decimal);
	return `${number} ${SIGNS[unit]}`;
}

/** The unit of a box's air that goes with the ruler. */
export function volumeUnit({ unit }: Pick<Ruler, 'unit'>): 'L' | 'ft3' {
	return unit === 'in' ? 'ft3' : 'L';
}

/** As {@link printVolume}, in the unit that goes with the ruler. */
export function showVolume(litres: number, ruler: Pick<Ruler, 'unit' | 'decimal'>): string {
	return printVolume(litres, volumeUnit(ruler), ruler.decimal);
}

/** A volume in the words of a message: `91.93 L`, `12 L`, or `3.247 ft³`. */
export function sayVolume(litres: number, ruler: Pick<Ruler, 'unit' | 'decimal'>): string {
	if (volumeUnit(ruler) !== 'L') return showVolume(litres, ruler);
	return `${Math.round(litres * 100) / 100} L`.replace('.', ruler.decimal);
}
