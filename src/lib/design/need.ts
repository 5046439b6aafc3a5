import type { Sundry } from '../job';

/** Something the work uses up besides boards and cloth. */
export interface Need {
	readonly kind: Sundry['kind'];
	/** In the unit the kind is counted in (see {@link UNIT}). */
	readonly amount: number;
	/** What for, in words: 'seams of Bench box'. */
	readonly for: string;
	/**
	 * Mark of the sundry it is taken from; absent for the first of its kind on the rack, '' where
	 * the rack has none for it.
	 */
	readonly of?: string;
}

/** The unit each kind is counted and sold in. */
export const UNIT: Readonly<Record<Sundry['kind'], 'm2' | 'm' | 'L' | 'pieces' | 'packs'>> = {
	'contact-adhesive': 'm2',
	'wood-glue': 'm2',
	screws: 'pieces',
	brads: 'pieces',
	sealant: 'm',
	gasket: 'm',
	dowel: 'm',
	't-nuts': 'pieces',
	terminal: 'pieces',
	lining: 'm2',
	stuffing: 'L',
	damping: 'm2',
	foam: 'm2',
	clips: 'pieces',
	magnets: 'pieces',
	cable: 'm',
	loom: 'm',
	hose: 'm',
	other: 'packs',
};
