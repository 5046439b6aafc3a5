import type { Need } from '../design';
import type { Blank } from './blank';

/**
 * Contact adhesive goes on both faces, board and cloth: the area to coat is twice the area that is
 * bonded. The need is counted in square metres of coated face.
 */
export function glueNeed(blanks: readonly Pick<Blank, 'bonded' | 'count'>[], what: string): Need {
	const bonded = blanks.reduce((sum, b) => sum + b.bonded * b.count, 0);
	return {
		kind: 'contact-adhesive',
		amount: (2 * bonded) / 1e6,
		for: `both faces of ${what}`,
	};
}
