import { byChance } from '../document';
import type { JobFile } from '../../job';
import type { TakenStock } from '../../layout';
import { type Claim, unitOf } from './claim';

/*
 * A sheet that is printed, or that the saw is in, is held for its job: no other job's plan counts
 * on it. What is held follows from the layouts pinned in the job.
 */

/** Whose claims, and since when. */
export type Holder = Pick<Claim, 'job' | 'by' | 'at'>;

/** What has to be held for a file that is not, and what is held for it that need not be. */
export function heldAnew(
	file: JobFile,
	claims: readonly Claim[],
	holder: Holder,
): { readonly put: readonly Claim[]; readonly out: readonly Claim[] } {
	const mine = claims.filter((claim) => !claim.cut && claim.job === holder.job);
	const free = new Map<string, Claim[]>();
	for (const claim of mine) {
		const unit = unitOf(claim.takes);
		free.set(unit, [...(free.get(unit) ?? []), claim]);
	}
	const put = pinnedStock(file, new Set(free.keys())).flatMap((takes): Claim[] => {
		if (free.get(unitOf(takes))?.shift()) return [];
		return [{ ...holder, id: byChance(MARK), cut: false, takes, yields: [] }];
	});
	return { put, out: [...free.values()].flat() };
}

/** Digits of a claim's id: no two that meet on one rack are alike. */
export const MARK = 12;

/**
 * Sheets and offcuts of the rack that lie under pinned layouts not cut yet. An offcut that was held
 * and that somebody has cut all the same stays claimed: that is told.
 */
function pinnedStock({ pinned, stock }: JobFile, held: ReadonlySet<string>): TakenStock[] {
	if (!Array.isArray(pinned)) return [];
	return pinned.flatMap(({ sheet, material, length, width, cut }): TakenStock[] => {
		const [, kind, id] = /^(owned|offcut)\/(.+)$/.exec(String(sheet)) ?? [];
		if (cut === true || id === undefined) return [];
		if (kind === 'offcut' && !held.has(`offcut/${id}`) && !isOnRack(stock, id)) return [];
		const size = { length: Number(length), width: Number(width) };
		if (!Number.isFinite(size.length) || !Number.isFinite(size.width)) return [];
		return [{ kind: kind as 'owned' | 'offcut', id, material: String(material), ...size }];
	});
}

/** Else it is what is left of another sheet of the same job. */
const isOnRack = (stock: JobFile['stock'], id: string): boolean => {
	const offcuts: unknown = stock?.offcuts;
	return Array.isArray(offcuts) && offcuts.some((o: { id?: unknown } | null) => o?.id === id);
};
