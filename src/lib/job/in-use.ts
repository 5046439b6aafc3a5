import type { Job } from './job';
import { REEL_KINDS } from './marks';
import type { Cloth, Material, Roll, StockSheet, Sundry } from './stock';

/*
 * What a job uses, by its mark. A mark the rack does not hold is answered with null: the reader and
 * the design have told the person where it stands, and whoever comes later leaves the thing out.
 */

type Rack<List extends keyof Job['stock']> = { readonly stock: Pick<Job['stock'], List> };
/** A mark that was asked for, or none. */
type Mark = string | null | undefined;

/** The saw in use: the chosen one, else the first. The schema sees to it that there is one. */
export function sawOf(job: Job): Job['shop']['saws'][number] {
	const saw = job.shop.saws.find((s) => s.id === job.shop.saw) ?? job.shop.saws[0];
	if (!saw) throw new Error('bug: a shop without a saw');
	return saw;
}

/** The board material with this mark; null when the rack has none. */
export function materialOf(job: Rack<'materials'>, id: Mark): Material | null {
	return job.stock.materials.find((m) => m.id === id) ?? null;
}

/** What a material is called; its mark when the rack has none. */
export function materialName(job: Rack<'materials'>, id: string): string {
	return materialOf(job, id)?.name ?? id;
}

/** The cloth with this mark; null when the rack has none. */
export function clothOf(job: Rack<'cloths'>, id: Mark): Cloth | null {
	return job.stock.cloths.find((c) => c.id === id) ?? null;
}

/** What a cloth is called; its mark when the rack has none. */
export function clothName(job: Rack<'cloths'>, id: string): string {
	return clothOf(job, id)?.name ?? id;
}

/** The sheet with this mark, owned or to be bought; null when the rack has none. */
export function sheetOf(job: Rack<'sheets'>, id: Mark): StockSheet | null {
	return job.stock.sheets.find((s) => s.id === id) ?? null;
}

/** The roll with this mark; null when the rack has none. */
export function rollOf(job: Rack<'rolls'>, id: Mark): Roll | null {
	return job.stock.rolls.find((r) => r.id === id) ?? null;
}

/** The rolls of one cloth in the order of the rack, owned and sold by the length. */
export function rollsOf(job: Rack<'rolls'>, cloth: string): Roll[] {
	return job.stock.rolls.filter((r) => r.cloth === cloth);
}

/** The cable, loom or hose with this mark; null when the rack has none. */
export function reelOf(job: Rack<'sundries'>, id: Mark): Sundry | null {
	return job.stock.sundries.find((s) => s.id === id && REEL_KINDS.includes(s.kind)) ?? null;
}

/** Minutes for a square metre of foam: its own, else those of cloth. */
export const foamMinutes = ({ shop: { labour } }: { readonly shop: Pick<Job['shop'], 'labour'> }) =>
	labour.minutes.foamSquareMetre ?? labour.minutes.bondedSquareMetre;
