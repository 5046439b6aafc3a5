import { type Cloth, type Job, rollsOf } from '../job';
import { mm, type Length, type Ruler } from '../measure';
import { type Pace, paceOf } from './stages';

/** What the shop and the rack decide about a wrap. */
export interface WrapShop {
	readonly ruler: Ruler;
	/**
	 * Width less the selvedges of the widest roll of this cloth; null when the stock lists none.
	 */
	readonly usable: number | null;
	/** Cloth over cloth where a seam is cut through both layers. */
	readonly overlap: Length;
	/** How fast the shop glues; the usual pace when absent. */
	readonly pace?: Pace;
}

/**
 * Seams are laid over each other by this much before both layers are cut through in one stroke.
 * Common practice, no source.
 */
const OVERLAP_MM = 20;

/** A cloth of the rack, and what the shop and its rolls decide about it. */
export interface ClothInShop {
	readonly cloth: Cloth;
	readonly shop: WrapShop;
}

/** The shop of a job for one of its cloths. */
export function wrapShop(job: Job, cloth: Cloth): WrapShop {
	const widths = rollsOf(job, cloth.id).map((r) => r.usable);
	return {
		ruler: job.shop.ruler,
		usable: widths.length > 0 ? Math.max(...widths) : null,
		overlap: mm(OVERLAP_MM),
		pace: paceOf(job.shop.adhesive),
	};
}
