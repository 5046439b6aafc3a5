import { toMm } from '../../measure/length';
import type { Material } from '../../job/stock';

/*
 * How far a sheet may be from its nominal thickness before somebody should measure again. A tolerance is a band, never
 * a size: the measured thickness rules every figure.
 */

/** mm over and under the nominal thickness. */
export interface Band {
	readonly over: number;
	readonly under: number;
}

/** Sanded plywood by EN 315:2000: +(0.2 + 0.03 t) / -(0.4 + 0.03 t), t in mm. */
export function plywoodBand(nominal: number): Band {
	return { over: 0.2 + 0.03 * nominal, under: 0.4 + 0.03 * nominal };
}

/** Medium density fibreboard by EN 622-1, from memory: 0.2 mm up to 19 mm, 0.3 mm above. */
export function fibreboardBand(nominal: number): Band {
	const band = nominal <= 19 ? 0.2 : 0.3;
	return { over: band, under: band };
}

/** Greatest difference of the diagonals of a 4 x 8 ft sheet and departure from square, US PS 1-09: 1/8 in and 1/64 in to the foot. */
export const SQUARE = { diagonals: 25.4 / 8, perFoot: 25.4 / 64 } as const;

/** Squareness of fibreboard by EN 622-1: 2 mm to the metre. */
export const FIBREBOARD_SQUARE = 2;

const BANDS: Partial<Record<Material['kind'], { band: (t: number) => Band; by: string }>> = {
	plywood: { band: plywoodBand, by: 'EN 315' },
	mdf: { band: fibreboardBand, by: 'EN 622-1' },
};

/** What to say when a measured thickness lies outside the band of its nominal one; null when it does not. */
export function thicknessDoubt(
	m: Pick<Material, 'name' | 'kind' | 'nominal' | 'measured'>,
): { what: string; fix: string } | null {
	const rule = BANDS[m.kind];
	if (!rule) return null;
	const nominal = toMm(m.nominal);
	const off = toMm(m.measured) - nominal;
	const { over, under } = rule.band(nominal);
	if (off <= over + 1e-9 && off >= -under - 1e-9) return null;
	return {
		what: `${m.name} measures ${toMm(m.measured)} mm against a nominal ${nominal} mm; ${rule.by} allows ${two(nominal - under)} to ${two(nominal + over)} mm.`,
		fix: 'Measure again at eight places 50 mm in from the edge (EN 324-1); the plan goes by the measured figure.',
	};
}

const two = (n: number): string => String(Math.round(n * 100) / 100);
