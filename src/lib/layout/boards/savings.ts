import type { Part } from '../../design';
import type { Job } from '../../job';
import { mm, ticks, money, type Money } from '../../measure';
import { nearMisses, type NearMiss, type Budget, type Sheet } from '../../nest';
import type { BoardLayouts } from '../layouts';
import { pursue, type Watch } from '../pace';
import { sayMarks } from '../say-marks';

/** A small change to what was asked that was tried and found to save money or sheets. */
export interface Saving {
	readonly material: string;
	/** A full sentence in the words of the job. */
	readonly what: string;
	readonly money: Money;
	readonly sheets: number;
	/** The sheet size is not in the stock: its price was taken at the same price by area. */
	readonly guessed: boolean;
}

/** Sheet sizes commonly sold, mm. Common practice, no source. */
const COMMON_SIZES = [
	[2440, 1220],
	[2500, 1250],
	[3050, 1525],
	[1525, 1525],
	[1220, 1220],
] as const;

/**
 * What would save a sheet of one material: turning a part, a thinner kerf, a part a little smaller,
 * another sheet size. Only for the saw, and only while nothing is pinned, because a pinned layout
 * is not up for change.
 */
export async function boardSavings(
	job: Job,
	parts: readonly Part[],
	boards: BoardLayouts,
	budget: Budget,
	watch: Watch<readonly NearMiss[]>,
): Promise<Saving[]> {
	const { problem } = boards;
	if (problem.method !== 'saw' || boards.sources.some((s) => s.pinned)) return [];
	const others = otherSizes(job, boards);
	const found = await pursue(nearMisses(problem, boards.answer, budget, others), watch);
	return found.map((miss) => ({
		material: boards.material,
		what: sayMarks(parts, miss.what),
		money: money(miss.saving),
		sheets: miss.sheets,
		guessed: miss.kind === 'sheet',
	}));
}

/**
 * Common sizes that the stock does not sell, at the lowest price by area it does sell this material
 * for.
 */
function otherSizes(job: Job, boards: BoardLayouts): Sheet[] {
	const sold = boards.problem.sheets.filter((s) => s.id.startsWith('buy/'));
	const priced = job.stock.sheets.filter((s) => s.material === boards.material && s.price > 0);
	const first = sold[0];
	if (!first || priced.length === 0) return [];
	const perArea = Math.min(...priced.map((s) => s.price / (s.length * s.width)));
	return COMMON_SIZES.map(([l, w]) => ({ length: mm(l), width: mm(w) }))
		.filter((size) => !sold.some((s) => s.length === size.length && s.width === size.width))
		.map((size) => ({
			...size,
			id: `buy/another ${ticks(size.length)} ${ticks(size.width)}`,
			price: Math.round(size.length * size.width * perArea),
			count: null,
			rank: first.rank,
			trim: first.trim,
		}));
}
