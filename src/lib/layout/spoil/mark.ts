import type { Job, JobFile } from '../../job';
import { findSheet, pinnedPlace, type Which } from '../boards';
import type { BoardLayouts } from '../layouts';

/** A part on a sheet cut or in the saw, or a blank on cloth that is pulled, by its place there. */
export type SpoiledAt =
	| ({ readonly of: 'board'; readonly place: number } & Which)
	/** `index`: which pull of that cloth. */
	| {
			readonly of: 'cloth';
			readonly cloth: string;
			readonly index: number;
			readonly place: number;
	  };

/**
 * Says of one piece that is cut that it was spoiled, or takes that back: the job needs one more of
 * it, or one less. Its sheet may be in the saw still. Or that it was worked over to fit a changed
 * design, and is kept. Returns a new file; the one given where the sheet is there no more, or free
 * to be laid out anew.
 */
export function markSpoiled(
	file: JobFile,
	{ job, boards }: { readonly job: Job; readonly boards: readonly BoardLayouts[] },
	at: SpoiledAt,
	as: { readonly spoiled: boolean } | { readonly kept: boolean } = { spoiled: true },
): JobFile {
	const mark = <P extends object>(placed: readonly P[]): P[] =>
		placed.map((p, i) => (i === at.place ? { ...p, ...as } : p));
	if (at.of === 'board') {
		const where = pinnedPlace(file, findSheet(job, boards, at), at.index);
		const pinned = (file.pinned ?? []).map((p, i) =>
			i === where ? { ...p, placed: mark(p.placed) } : p,
		);
		return where >= 0 ? { ...file, pinned } : file;
	}
	const mine = (file.pulled ?? []).filter((p) => p.cloth === at.cloth)[at.index];
	if (!mine) return file;
	return {
		...file,
		pulled: (file.pulled ?? []).map((p) => (p === mine ? { ...p, placed: mark(p.placed) } : p)),
	};
}

/** Why a piece cannot be told to be spoiled, in words; '' where it can. */
export function spoilRefusal(
	{ job, boards }: { readonly job: Job; readonly boards: readonly BoardLayouts[] },
	at: SpoiledAt,
): string {
	if (at.of === 'cloth') {
		const pulled = job.pulled.filter((p) => p.cloth === at.cloth)[at.index];
		return pulled ? '' : 'This cloth is not pulled yet: what is spoiled before is cut anew anyhow.';
	}
	const source = boards.find((b) => b.material === at.material)?.sources[at.index];
	if (source?.pinned) return '';
	return 'Nothing of this sheet is cut yet: until then every part of it is still to be cut, once.';
}
