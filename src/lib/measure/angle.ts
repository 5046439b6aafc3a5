import { toNumber } from './ratio';
import type { Reading } from './reading';
import { answer, Refusal } from './scan';
import { readSum, type Units } from './sum';

/** Angles are plain numbers of degrees. */

const ONE = { n: 1n, d: 1n };
const NAMED = new Map(['°', 'deg', 'degree', 'degrees'].map((word) => [word, ONE] as const));

/** Reads `21.8`, `21.8°`, `22 1/2 deg`, `90 - 68.2`. A turn and a half either way is the farthest it takes. */
export function readAngle(text: string, decimal: '.' | ','): Reading<number> {
	const example = '22.5 or 21.8°'.replaceAll('.', decimal);
	const units: Units = { named: NAMED, bare: ONE, kind: 'angle', example };
	return answer(() => {
		const degrees = toNumber(readSum(text, decimal, units));
		if (Math.abs(degrees) <= 540) return degrees;
		throw new Refusal(`"${text}" turns too far.`, `Write an angle such as ${example}.`);
	});
}

/** To a tenth of a degree, finer than any saw's scale: `21.8°`, `45°`. */
export function printAngle(degrees: number, decimal: '.' | ',' = '.'): string {
	const tenths = Math.round(degrees * 10) / 10;
	return `${String(tenths === 0 ? 0 : tenths).replace('.', decimal)}°`;
}

export function radians(degrees: number): number {
	return (degrees * Math.PI) / 180;
}

export function degrees(angle: number): number {
	return (angle * 180) / Math.PI;
}
