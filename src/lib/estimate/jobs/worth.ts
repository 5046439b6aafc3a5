import type { Job } from '../../job';
import type { BoardLayouts, ClothLayouts } from '../../layout';
import { ticks } from '../../measure';
import { clothLines } from '../cloth-lines';
import { labourLines, type Work } from '../labour';
import { worthOf } from '../material';
import { sheetLines } from '../sheet-lines';
import type { OrderLine } from '../types';

/** What a layout comes to, in minor units; the sum of both is what it costs. */
export interface LayoutCost {
	readonly ordered: number;
	/** Stock at list price and the work at the saw, rounded nowhere. */
	readonly besides: number;
}

/** What the sheets of one board cost as they are laid out, with the work at the saw. */
export function costOfBoards(job: Job, boards: BoardLayouts): LayoutCost {
	const { ordered, besides } = costOf(job, sheetLines(job, boards));
	return { ordered, besides: besides + workOf(job, { boards: [boards], cloths: [] }) };
}

/** What the rolls of one cloth cost as they are laid out, with the work to cut along outlines. */
export function costOfCloth(job: Job, cloth: ClothLayouts): LayoutCost {
	const { ordered, besides } = costOf(job, clothLines(job, cloth));
	return { ordered, besides: besides + workOf(job, { boards: [], cloths: [cloth] }) };
}

/** What the layouts themselves make of work, in minor units. */
function workOf(job: Job, laid: Pick<Work, 'boards' | 'cloths'>): number {
	const none = { parts: [], blanks: [], reels: [], seamLength: ticks(0), boxes: 0, panels: 0 };
	const minutes = labourLines({ ...job, work: [] }, { ...none, ...laid }).reduce(
		(sum, l) => sum + l.minutes,
		0,
	);
	return (minutes * job.shop.labour.hour) / 60;
}

function costOf(job: Job, lines: readonly OrderLine[]): LayoutCost {
	return {
		ordered: lines.reduce((sum, l) => sum + l.total, 0),
		besides: lines.reduce((sum, l) => sum + worthOf(job, l), 0),
	};
}
