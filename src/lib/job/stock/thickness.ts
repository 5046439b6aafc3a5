import { mm, toMm, type Length } from '../../measure';
import type { Material } from './stock';

interface Band {
	readonly under: number; // mm
	readonly over: number;
	readonly source: string;
}

/**
 * How far a board of this nominal thickness may be off and still be sold as such; null where the
 * trade has no common figure. A measured thickness beyond it is more likely a slip than a board.
 */
function bandOf(kind: Material['kind'], nominal: number): Band {
	if (kind === 'plywood') return wider(plywoodEn315(nominal), plywoodPs1(nominal));
	// From memory: EN 622-1, thickness of MDF.
	if (kind === 'mdf') return even(nominal <= 19 ? 0.2 : 0.3, 'EN 622-1');
	// Common practice, no source.
	return even(Math.max(0.5, nominal * 0.06), 'common practice');
}

/** EN 315:2000, sanded panels. */
function plywoodEn315(nominal: number): Band {
	return { under: 0.4 + 0.03 * nominal, over: 0.2 + 0.03 * nominal, source: 'EN 315' };
}

/** US PS 1, unsanded and touch-sanded: 1/32 in up to 13/16 in, 5 % above. */
function plywoodPs1(nominal: number): Band {
	return even(nominal <= (13 / 16) * 25.4 ? 25.4 / 32 : nominal * 0.05, 'PS 1');
}

function even(off: number, source: string): Band {
	return { under: off, over: off, source };
}

/** A board may come from either market. */
function wider(a: Band, b: Band): Band {
	return {
		under: Math.max(a.under, b.under),
		over: Math.max(a.over, b.over),
		source: `${a.source} and ${b.source}`,
	};
}

/** The limits a measured thickness keeps to, or null when this one does. */
export function offNominal(
	board: Pick<Material, 'kind' | 'nominal' | 'measured'>,
): { readonly low: Length; readonly high: Length; readonly source: string } | null {
	const band = bandOf(board.kind, toMm(board.nominal));
	const low = mm(toMm(board.nominal) - band.under);
	const high = mm(toMm(board.nominal) + band.over);
	return board.measured < low || board.measured > high ? { low, high, source: band.source } : null;
}
