import type { Need } from '../design';
import type { Blank } from './blank';

type Glued = Pick<Blank, 'bonded' | 'foam' | 'count'>;

/**
 * Contact adhesive goes on both faces, board and cloth: the area to coat is twice the area that is
 * bonded. The need is counted in square metres of coated face.
 */
export function glueNeed(blanks: readonly Glued[], what: string): Need {
	const bonded = blanks.reduce((sum, b) => sum + b.bonded * b.count, 0);
	return coated(bonded, what);
}

/** The foam beneath is glued first, to the board: two more faces. Nothing without foam. */
export function foamGlueNeed(blanks: readonly Glued[], what: string): Need[] {
	const foam = blanks.reduce((sum, b) => sum + (b.foam ?? 0) * b.count, 0);
	return foam > 0 ? [coated(foam, `the foam under ${what}`)] : [];
}

function coated(bonded: number, what: string): Need {
	return {
		kind: 'contact-adhesive',
		amount: (2 * bonded) / 1e6,
		for: `both faces of ${what}`,
	};
}
