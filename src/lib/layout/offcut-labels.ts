import type { Job } from '../job/job';
import type { BoardLayouts } from './layouts';

/**
 * The labels that the offcuts of a plan will carry on the rack, by material, layout and offcut: R1, R2 ... past every label
 * the rack already knows. They are printed on the layouts before a sheet is cut, so they must not depend on what is cut first.
 */
export function offcutLabels(
	job: Job,
	boards: readonly BoardLayouts[],
): ReadonlyMap<string, readonly (readonly string[])[]> {
	const used = new Set(job.stock.offcuts.map((o) => o.id));
	let n = 0;
	const next = (): string => {
		do n += 1;
		while (used.has(`R${n}`));
		return `R${n}`;
	};
	return new Map(
		boards.map((b) => [
			b.material,
			// A sheet that is cut has handed its offcuts to the rack; the labels there are its own.
			b.answer.layouts.map((l, i) => (b.sources[i]?.cut ? [] : l.offcuts.map(next))),
		]),
	);
}
