import { toInches, toMm, type Length, type Ruler } from '../../measure';

/**
 * Length of cloth as a roll is sold: metres, or yards beside an inch ruler. Rounded up: too short
 * cannot be mended.
 */
export function showPull(pull: Length, ruler: Ruler): string {
	const amount = ruler.unit === 'in' ? toInches(pull) / 36 : toMm(pull) / 1000;
	const up = (Math.ceil(amount * 100 - 1e-9) / 100).toFixed(2).replace('.', ruler.decimal);
	return `${up} ${ruler.unit === 'in' ? 'yd' : 'm'}`;
}
