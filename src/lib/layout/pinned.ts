import type { Job } from '../job/job';
import type { PinnedLayout } from '../job/pinned';
import type { Piece, Placed, Sheet, SheetLayout } from '../nest/types';

/*
 * Pinned layouts were printed or cut: they stay as they are, and only the rest is planned. Their parts are taken off the
 * demand and their sheets off the stock; nothing else about the job has to know.
 */

/** What is left to lay out once the pinned layouts of one material have had their share. */
export interface Remaining {
	readonly pieces: Piece[];
	readonly sheets: Sheet[];
	readonly kept: { readonly pinned: PinnedLayout; readonly layout: SheetLayout }[];
}

export function afterPinned(
	job: Job,
	material: string,
	pieces: readonly Piece[],
	sheets: readonly Sheet[],
): Remaining {
	const pinned = job.pinned.filter((p) => p.material === material);
	const made = tally(pinned.flatMap((p) => p.placed.map((placed) => placed.id)));
	// A sheet that was cut has left the rack already when it was booked; one only printed is still counted there.
	const taken = tally(pinned.filter((p) => !p.cut).map((p) => p.sheet));
	return {
		pieces: pieces
			.map((p) => ({ ...p, count: p.count - (made.get(p.id) ?? 0) }))
			.filter((p) => p.count > 0),
		sheets: sheets
			.map((s) => (s.count === null ? s : { ...s, count: s.count - (taken.get(s.id) ?? 0) }))
			.filter((s) => s.count === null || s.count > 0),
		kept: numbered(pinned),
	};
}

/** Copies of a part and of a sheet are numbered from 0 over all pinned layouts together. */
function numbered(pinned: readonly PinnedLayout[]): Remaining['kept'] {
	const next = new Map<string, number>();
	const copy = (id: string): number => {
		const n = next.get(id) ?? 0;
		next.set(id, n + 1);
		return n;
	};
	return pinned.map((p) => ({
		pinned: p,
		layout: {
			sheet: p.sheet,
			copy: copy(`sheet ${p.sheet}`),
			length: p.length,
			width: p.width,
			placed: p.placed.map((placed): Placed => ({ ...placed, copy: copy(`part ${placed.id}`) })),
			cuts: p.cuts,
			offcuts: p.offcuts,
		},
	}));
}

function tally(ids: readonly string[]): Map<string, number> {
	const counts = new Map<string, number>();
	for (const id of ids) counts.set(id, (counts.get(id) ?? 0) + 1);
	return counts;
}
