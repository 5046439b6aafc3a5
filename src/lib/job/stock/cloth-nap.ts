import type { Cloth } from './stock';

/** Does the cloth show a pattern that parts of it have to match? */
export function isPatterned(cloth: Pick<Cloth, 'repeat' | 'repeatAcross'>): boolean {
	return cloth.repeat > 0 || cloth.repeatAcross > 0;
}

/**
 * The nap that counts when the cloth is laid: a pattern turned a quarter is another pattern, half a
 * turn is not.
 */
export function napOnRoll(cloth: Pick<Cloth, 'nap' | 'repeat' | 'repeatAcross'>): Cloth['nap'] {
	return isPatterned(cloth) && cloth.nap === 'none' ? 'two-way' : cloth.nap;
}
