import { cautionsFor, type Caution } from './cautions';
import { type BoxPlan, designAll, type Need, type PanelPlan, type Part } from './design';
import {
	estimate,
	type OptionPrice,
	optionPrice,
	type Order,
	type Quote,
	type Together,
} from './estimate';
import {
	type Job,
	type JobFile,
	placesIn,
	type Problem,
	readJob,
	saidOnce,
	withOption,
} from './job';
import {
	allSavings,
	chooseWays,
	complaints,
	layBoards,
	layCloths,
	laySound,
	markSpoiled,
	SearchSession,
	type BoardLayouts,
	type Carpeting,
	type ClothLayouts,
	type Saving,
	type SearchOptions,
	type SearchRecord,
	type SpoiledAt,
	type WayAgain,
	waysAgain,
} from './layout';
import type { Length } from './measure';
import { planRuns, type ReelPlan, type RunPlan } from './runs';
import { type Blank, wrapAll } from './wrap';

/**
 * Everything that can be shown or printed of a job. Plain data: it crosses to and from the worker
 * as it is.
 */
export interface Plan {
	readonly job: Job;
	readonly problems: readonly Problem[];
	readonly boxes: readonly BoxPlan[];
	readonly panels: readonly PanelPlan[];
	readonly parts: readonly Part[];
	readonly blanks: readonly Blank[];
	/** The ways each box could be carpeted, priced, and the one taken. */
	readonly carpets: readonly Carpeting[];
	readonly boards: readonly BoardLayouts[];
	readonly cloths: readonly ClothLayouts[];
	/** Cables, looms and hoses by their lengths, and what they are cut from. */
	readonly runs: readonly RunPlan[];
	readonly reels: readonly ReelPlan[];
	readonly needs: readonly Need[];
	/** Seams to cut in all the cloth. */
	readonly seamLength: Length;
	readonly order: Order;
	readonly quote: Quote;
	/** Alternatives offered in the quote, priced: none before {@link withOptions}. */
	readonly options: readonly OptionPrice[];
	readonly cautions: readonly Caution[];
	/** The search that found the layouts. */
	readonly search: SearchRecord;
	/** The jobs it is the plan of where these are several, and what that saves; null for one. */
	readonly together: Together | null;
}

/**
 * Seed and work units of each search, and who is told how far it is: see {@link SearchSession}. The
 * job's own when absent.
 */
export interface PlanOptions extends SearchOptions {
	/** The job with the rack as it will find it, where others take from that first. */
	readonly onRack?: (job: Job) => Job;
}

/**
 * From a job to everything that can be shown or printed of it. Takes whatever a file held: what is
 * wrong comes back as problems, and what can still be planned is planned. Same file, seed and
 * effort: same plan.
 */
export async function plan(file: unknown, options: PlanOptions = {}): Promise<Plan> {
	const read = readJob(file);
	const job = options.onRack?.(read.job) ?? read.job;
	const places = placesIn(file);
	const search = new SearchSession(job, options);

	const design = designAll(job, places, read.unsized);
	const offer = wrapAll(job, design, places, read.doubtfulCloths);
	const cloth = await chooseWays(job, offer, search.budget);
	const boards = await layBoards(job, design.parts, search);
	const cloths = await layCloths(job, cloth.blanks, search);

	const { boxes, panels, parts } = design;
	const wired = planRuns(job, places);
	const { runs, reels } = wired;
	const needs = [...design.needs, ...cloth.needs, ...wired.needs];
	const { seamLength } = cloth;
	const made = {
		...{ boxes, panels, parts, blanks: cloth.blanks, boards, cloths },
		...{ runs, reels, needs, seamLength },
	};
	const sound = await laySound(job, made, search);
	const { order, quote, problems } = estimate(job, made, sound);
	const said = [
		read,
		design,
		cloth,
		wired,
		{ problems: complaints(job, places, made, rollsLost(file, read.job)) },
		{ problems },
		{ problems: job.options.flatMap((o, i) => withOption(file, o, ['options', i]).problems) },
	];
	return {
		job,
		...made,
		problems: saidOnce(said.flatMap((from) => from.problems)),
		carpets: cloth.carpets,
		order,
		quote,
		options: [],
		cautions: cautionsFor(job, made),
		search: search.record,
		together: null,
	};
}

/**
 * The plan with its options priced: each is a plan of its own of the same file with the option's
 * changes made, by the same seed and effort.
 */
export async function withOptions(
	of: Plan,
	file: unknown,
	options: PlanOptions = {},
): Promise<Plan> {
	const priced: OptionPrice[] = [];
	const { length } = of.job.options;
	for (const [i, option] of of.job.options.entries()) {
		const { file: other, problems } = withOption(file, option, ['options', i]);
		const { watch } = options;
		const mine: PlanOptions = {
			...options,
			...(watch && {
				watch: ({ done }) => watch({ stage: `option: ${option.name}`, done: (i + done) / length }),
			}),
		};
		const made = problems.length > 0 ? null : await plan(other, mine);
		priced.push(optionPrice(option, of, made, problems));
	}
	return { ...of, options: priced };
}

/** Cloths with a roll in the file that could not be read: what is wrong with it has been said. */
function rollsLost(file: unknown, job: Job): string[] {
	const list = isRecord(file) && isRecord(file.stock) ? file.stock.rolls : null;
	if (!Array.isArray(list)) return [];
	const asked = list.flatMap((roll: unknown) =>
		isRecord(roll) && typeof roll.cloth === 'string' ? [roll.cloth] : [],
	);
	const many = (of: readonly string[], cloth: string) => of.filter((c) => c === cloth).length;
	const kept = job.stock.rolls.map((r) => r.cloth);
	return [...new Set(asked)].filter((cloth) => many(asked, cloth) > many(kept, cloth));
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
	typeof value === 'object' && value !== null;

/**
 * What would save a sheet: small changes to the job, tried in earnest and ranked by what they save.
 */
export function savings(of: Plan, options: PlanOptions = {}): Promise<Saving[]> {
	return allSavings(of.job, of.parts, of.boards, new SearchSession(of.job, options));
}

/** A way to get a spoiled piece again, and the plan of the job with it. */
export interface PlannedAgain extends WayAgain {
	readonly plan: Plan;
}

/**
 * The ways to get a piece of this plan again that was spoiled, each with the whole plan it comes
 * to: what is said of it is what will be. Cheapest first.
 */
export async function planAgain(
	of: Plan,
	file: JobFile,
	at: SpoiledAt,
	options: PlanOptions = {},
): Promise<PlannedAgain[]> {
	const made: PlannedAgain[] = [];
	for (const way of await waysAgain(of, at))
		made.push({ ...way, plan: await plan(withSpoiled(file, of, at, way), options) });
	const left = ({ plan: { boards, cloths } }: PlannedAgain): number =>
		[...boards.map((b) => b.answer), ...cloths]
			.flatMap((b) => b.unplaced)
			.reduce((sum, u) => sum + u.count, 0);
	const stops = ({ plan: { boards } }: PlannedAgain): number =>
		boards.flatMap((b) => b.faults).length;
	return made.toSorted(
		(a, b) =>
			stops(a) - stops(b) ||
			left(a) - left(b) ||
			a.plan.quote.spoil.cost - b.plan.quote.spoil.cost ||
			a.plan.order.total - b.plan.order.total,
	);
}

/** The file with a piece told to be spoiled, and what it is cut from again kept as it was said. */
export function withSpoiled(
	file: JobFile,
	of: Pick<Plan, 'job' | 'boards'>,
	at: SpoiledAt,
	{ record }: WayAgain,
): JobFile {
	const marked = markSpoiled(file, of, at);
	if (marked === file || !record) return marked;
	return { ...marked, pinned: [...(marked.pinned ?? []), record] };
}
