import { clothName } from '../../job';
import type { Plan } from '../../plan';
import type { Figures } from '../wording';

/** What a label on one blank of cloth says. */
interface BlankLabel {
	readonly id: string;
	readonly mark: string;
	readonly name: string;
	readonly covers: string;
	readonly cloth: string;
	readonly size: string;
	/** `1 of 2`; '' for the only one. */
	readonly which: string;
}

/** A label for each blank, those alike one after the other. */
export function blankLabels(plan: Plan, figures: Figures): BlankLabel[] {
	return plan.blanks.flatMap((blank) =>
		Array.from({ length: blank.count }, (_, i) => ({
			id: blank.id,
			mark: blank.label,
			name: blank.name,
			covers: blank.covers,
			cloth: clothName(plan.job, blank.cloth),
			size: figures.size(blank.length, blank.width),
			which: blank.count === 1 ? '' : `${i + 1} of ${blank.count}`,
		})),
	);
}
