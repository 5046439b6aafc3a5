import type { Job } from '../../job';
import type { BoardLayouts } from '../layouts';

/**
 * The labels that the offcuts of a plan carry on the rack, by material, layout and offcut. A pinned
 * layout keeps the labels it was printed with; the others take 0142-R1, 0142-R2 ... by the job's
 * number, past every label that the rack or a pinned layout knows. They are printed on the layouts
 * before a sheet is cut, so they must not depend on what is cut first; and two jobs may be printed
 * before either is cut, so the rack alone cannot keep their labels apart.
 */
export function offcutLabels(
	job: Job,
	boards: readonly BoardLayouts[],
): ReadonlyMap<string, readonly (readonly string[])[]> {
	const next = freshLabels(job);
	return new Map(
		boards.map((b) => {
			const kept = job.pinned.filter((p) => p.material === b.material);
			const labels = b.answer.layouts.map((l, i) =>
				b.sources[i]?.pinned ? (kept[i]?.offcuts.map((o) => o.label) ?? []) : l.offcuts.map(next),
			);
			return [b.material, labels];
		}),
	);
}

/** A longer number would fill the label; the rack's own labels are still kept clear of. */
const LONGEST_NUMBER = 12;

/** A label becomes a mark of the rack, and no mark holds the sign in '2026/14' or '101+102'. */
const asMark = (number: string): string =>
	number.replace(/[^A-Za-z0-9._-]+/g, '-').replace(/^[._-]+|[._-]+$/g, '');

/** @param others labels that are not free either */
export function freshLabels(job: Job, others: readonly string[] = []): () => string {
	const used = new Set([
		...others,
		...job.stock.offcuts.map((o) => o.id),
		...job.pinned.flatMap((p) => p.offcuts.map((o) => o.label)),
	]);
	const number = asMark(job.number);
	const by = number === '' || number.length > LONGEST_NUMBER ? '' : `${number}-`;
	let n = 0;
	return () => {
		do n += 1;
		while (used.has(`${by}R${n}`));
		return `${by}R${n}`;
	};
}
