import type { Part } from '../../design';
import type { Job } from '../../job';
import { mm, ticks, money, type Money } from '../../measure';
import {
	nearMisses,
	type NearMiss,
	nestSaw,
	type Budget,
	type Sheet,
	type SheetsAnswer,
} from '../../nest';
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
	const { material } = boards;
	const held = boards.sources.some((s) => s.byHand !== null);
	const free = held ? await letGoOf(boards, budget, watch) : null;
	const from = free?.answer ?? boards.answer;
	const found = await pursue(nearMisses(problem, from, budget, others), watch);
	const more = found.map((miss) => ({
		material,
		what: `${sayMarks(parts, miss.what)}${held ? LETS_GO : ''}`,
		money: money(miss.saving + (free?.saving.money ?? 0)),
		sheets: miss.sheets + (free?.saving.sheets ?? 0),
		guessed: miss.kind === 'sheet',
	}));
	return free ? [free.saving, ...more] : more;
}

/** A change is tried on all parts anew: what lies by hand would be cut by other measures. */
const LETS_GO = ' What lies by hand is let go for it.';

/**
 * What letting the parts laid by hand go would save by itself, and the plan without them held: a
 * change is only worth what it saves beyond that. Null where it saves nothing.
 */
async function letGoOf(
	{ material, problem, answer: held }: BoardLayouts,
	budget: Budget,
	watch: Watch<readonly NearMiss[]>,
): Promise<{ readonly answer: SheetsAnswer; readonly saving: Saving } | null> {
	if (problem.method !== 'saw') return null;
	const answer = await pursue(nestSaw(problem, budget), (_, effort) => watch([], effort));
	const sheets = held.layouts.length - answer.layouts.length;
	const saved = held.cost - answer.cost;
	if (answer.unplaced.length > 0 || saved < 0 || (saved === 0 && sheets <= 0)) return null;
	const what = 'Let go what lies by hand: it is laid with the rest.';
	return { answer, saving: { material, what, money: money(saved), sheets, guessed: false } };
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
