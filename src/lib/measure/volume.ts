import { toNumber, type Ratio } from './ratio';
import type { Reading } from './reading';
import type { Ruler } from './ruler';
import { answer, Refusal } from './scan';
import { readSum, type Units } from './sum';

/** Volumes are plain numbers of litres. */
export type VolumeUnit = 'L' | 'ft3' | 'in3';

/** Millilitres in a cubic inch: 2.54 cm cubed, exact since the inch is (NIST SP 811 (2008) appendix B.8). */
const CUBIC_INCH: Ratio = { n: 16_387_064n, d: 1_000_000_000n };
const CUBIC_FOOT: Ratio = { n: 1728n * CUBIC_INCH.n, d: CUBIC_INCH.d };
const LITRE: Ratio = { n: 1n, d: 1n };

const LITRES: Readonly<Record<VolumeUnit, Ratio>> = { L: LITRE, ft3: CUBIC_FOOT, in3: CUBIC_INCH };

const NAMED = new Map<string, Ratio>([
	...['l', 'litre', 'litres', 'liter', 'liters', 'dm3', 'dm³'].map((w) => [w, LITRE] as const),
	...['ml', 'cm3', 'cm³', 'cc'].map((w) => [w, { n: 1n, d: 1000n }] as const),
	...['ft3', 'ft³', 'cu ft', 'cu. ft', 'cu. ft.', 'cubic foot', 'cubic feet'].map(
		(w) => [w, CUBIC_FOOT] as const,
	),
	...['in3', 'in³', 'cu in', 'cu. in', 'cu. in.', 'cubic inch', 'cubic inches'].map(
		(w) => [w, CUBIC_INCH] as const,
	),
]);

/** Litres as a number of this unit. */
export function fromLitres(litres: number, unit: VolumeUnit): number {
	return litres / toNumber(LITRES[unit]);
}

/** So many of this unit, in litres. */
export function toLitres(amount: number, unit: VolumeUnit): number {
	return amount * toNumber(LITRES[unit]);
}

/** Reads `92`, `92 L`, `3.25 ft3`, `5610 in3` (a bare number is of `unit`). The value is in litres. */
export function readVolume(
	text: string,
	as: { readonly unit: VolumeUnit; readonly decimal: '.' | ',' },
): Reading<number> {
	const units: Units = {
		named: NAMED,
		bare: LITRES[as.unit],
		kind: 'volume',
		example: '92 L or 3.25 ft3'.replace('.', as.decimal),
	};
	return answer(() => {
		const litres = toNumber(readSum(text, as.decimal, units));
		if (litres >= 0 && litres <= 1e6) return litres;
		throw new Refusal(
			`"${text}" is no volume to build.`,
			`Write a volume such as ${units.example}.`,
		);
	});
}

const PLACES: Readonly<Record<VolumeUnit, number>> = { L: 2, ft3: 3, in3: 0 };

/** `91.93 L`, `3.247 ft3`, `5610 in3`. */
export function printVolume(litres: number, unit: VolumeUnit, decimal: '.' | ',' = '.'): string {
	return `${fromLitres(litres, unit).toFixed(PLACES[unit]).replace('.', decimal)} ${unit}`;
}

/** The unit of a box's air that goes with the ruler. */
export function volumeUnit({ unit }: Pick<Ruler, 'unit'>): 'L' | 'ft3' {
	return unit === 'in' ? 'ft3' : 'L';
}

/** As {@link printVolume}, in the unit that goes with the ruler. */
export function showVolume(litres: number, ruler: Pick<Ruler, 'unit' | 'decimal'>): string {
	return printVolume(litres, volumeUnit(ruler), ruler.decimal);
}
