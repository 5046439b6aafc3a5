import type { Need } from '../design';
import type { Blank } from './blank';

/**
 * Contact adhesive goes on both faces, board and cloth: the area to coat is twice the area that is bonded. The need is counted
 * in square metres of coated face.
 */
export function glueNeed(blanks: readonly Pick<Blank, 'bonded' | 'count'>[], what: string): Need {
	const bonded = blanks.reduce((sum, b) => sum + b.bonded * b.count, 0);
	return {
		kind: 'contact-adhesive',
		amount: (2 * bonded) / 1e6,
		for: `both faces of ${what}`,
	};
}

/**
 * Dry adhesive per square metre of face, grams: 2 g/ft2 sprayed (80 % coverage, nearly all of it at the edges), 3 g/ft2 brushed or
 * rolled. Trade article on contact adhesives; recomputed to metric.
 */
export const DRY_GRAMS = { sprayed: 2 / 0.09290304, brushed: 3 / 0.09290304 } as const;

/** Grams of dry adhesive for a bonded area in mm2, both faces coated. */
export function dryGrams(bonded: number, how: keyof typeof DRY_GRAMS): number {
	return (2 * bonded * DRY_GRAMS[how]) / 1e6;
}
