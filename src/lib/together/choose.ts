import { costOfBoards, costOfCloth, type LayoutCost, sheetsIn } from '../estimate';
import type { Job } from '../job';
import type { BoardLayouts, ClothLayouts } from '../layout';
import { auditSheets } from '../nest';

/*
 * One layout for all jobs, or each job's as it would be by itself. The search is no proof: where it
 * found nothing cheaper, what was found job by job stands, so that together never costs more.
 */

/** The layouts of several jobs on one board as the layouts of one plan. */
export function sideBySide(whole: BoardLayouts, each: readonly BoardLayouts[]): BoardLayouts {
	const all = each.flatMap(({ answer, sources }) =>
		answer.layouts.flatMap((layout, i) => {
			const source = sources[i];
			return source ? [{ layout, source }] : [];
		}),
	);
	// Pinned layouts come first among those of a board.
	const inOrder = [...all.filter((l) => l.source.pinned), ...all.filter((l) => !l.source.pinned)];
	const next = new Map<string, number>();
	const layouts = inOrder.map(({ layout }) => {
		const copy = next.get(layout.sheet) ?? 0;
		next.set(layout.sheet, copy + 1);
		return { ...layout, copy };
	});
	const answer = {
		...whole.answer,
		layouts,
		unplaced: each.flatMap((b) => b.answer.unplaced),
		cost: each.reduce((sum, b) => sum + b.answer.cost, 0),
		proven: false,
	};
	const sources = inOrder.map((l) => l.source);
	// Pinned layouts are no part of the question: they were looked at job by job.
	const audited = sources.some((s) => s.pinned) ? [] : auditSheets(whole.problem, answer);
	return { ...whole, answer, sources, faults: [...each.flatMap((b) => b.faults), ...audited] };
}

/** Is the layout of all jobs worth having? */
export function boardsTogetherPay(job: Job, all: BoardLayouts, apart: BoardLayouts): boolean {
	if (all.faults.length > 0) return apart.faults.length > 0;
	const left = missing(all.answer.unplaced) - missing(apart.answer.unplaced);
	if (left !== 0) return left < 0;
	const less = compared(costOfBoards(job, all), costOfBoards(job, apart));
	if (less !== 0) return less < 0;
	return sheetsIn(all) < sheetsIn(apart) || areaOf(all) < areaOf(apart);
}

export function clothTogetherPays(job: Job, all: ClothLayouts, apart: ClothLayouts): boolean {
	const faulty = (c: ClothLayouts): boolean => c.rolls.some((r) => r.faults.length > 0);
	if (faulty(all)) return faulty(apart);
	const left = missing(all.unplaced) - missing(apart.unplaced);
	if (left !== 0) return left < 0;
	const less = compared(costOfCloth(job, all), costOfCloth(job, apart));
	if (less !== 0) return less < 0;
	// One pull for both is less work at the roll, where it takes no more cloth.
	return pulled(all) <= pulled(apart) && all.rolls.length <= apart.rolls.length;
}

/** Under nothing: cheaper, and not a coin more to order. */
function compared(a: LayoutCost, b: LayoutCost): number {
	const sum = a.ordered + a.besides - b.ordered - b.besides;
	if (a.ordered > b.ordered) return 1;
	return Math.abs(sum) < CRUMB ? 0 : sum;
}

const CRUMB = 1e-6;

const missing = (unplaced: readonly { readonly count: number }[]): number =>
	unplaced.reduce((sum, u) => sum + u.count, 0);

const areaOf = ({ answer, sources }: BoardLayouts): number =>
	answer.layouts.reduce((sum, l, i) => sum + (sources[i]?.cut ? 0 : l.length * l.width), 0);

const pulled = ({ rolls }: ClothLayouts): number => rolls.reduce((sum, r) => sum + r.pull, 0);
