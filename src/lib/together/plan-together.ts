import { cautionsFor } from '../cautions';
import {
	estimateLeft,
	type JobWork,
	shareCosts,
	tallyOf,
	type Together,
	withoutUsed,
} from '../estimate';
import { type Job, type Path, type Problem, readJob, saidOnce } from '../job';
import { SearchSession } from '../layout';
import { nth, ticks } from '../measure';
import { plan, type Plan, type PlanOptions } from '../plan';
import { layReels, leftToCut } from '../runs';
import type { AtHand } from './at-hand';
import { type Counts, leastCounts, lessTaken, takesOf, withCounts } from './counts';
import { notJoinable } from './joinable';
import { layForAll } from './lay';
import { asLaidNow } from './left-over';
import { servedBy } from './bundles';
import { joinedRack } from './rack';
import {
	apartByHand,
	taggedBlanks,
	taggedDesigns,
	taggedJob,
	taggedNeeds,
	taggedParts,
	taggedRuns,
} from './tagged';
import { joinedNumber, tagsOf } from './tags';

/** Jobs at once: more would be no one's work of a week. */
export const MOST_JOBS = 20;

export type PlannedTogether =
	| { readonly plan: Plan }
	/** They cannot be planned in one go, and why. */
	| { readonly refused: readonly Problem[] };

/**
 * Plans the sheets and rolls of several jobs in one go. Each job is planned by itself first, one
 * after the other, with what those before it left on the rack; then all parts of a board and all
 * blanks of a cloth are laid out at once, and where that is no better, the layouts of each job
 * stand. So together never costs more than apart. Each mark begins with the tag of its job. What
 * is not the same in two jobs is never one: it is kept apart and told, or all is refused.
 */
export async function planTogether(
	files: readonly unknown[],
	options: PlanOptions = {},
): Promise<PlannedTogether> {
	const racks = files.map((file) => readJob(file).job);
	const tags = tagsOf(racks);
	const refused = [...howMany(files.length), ...notJoinable(racks, tags)];
	if (refused.length > 0) return { refused };
	const { counts, unlike } = leastCounts(racks);
	const { plans, taken } = await oneByOne(files, counts, options);
	const left = withoutWhatIsUsed(racks, plans);
	const rack = joinedRack(left.racks, left.plans, tags, { counts, taken });
	const made = await joined({ ...left, tags, rack }, options);
	const said = [
		...plans.flatMap((p, i) =>
			asLaidNow(p, files[i], nth(tags, i), made).map((problem) => ofJob(nth(tags, i), problem)),
		),
		...unlike.map((key) => countsDiffer(key, counts)),
		...rack.said,
		...made.problems,
	];
	return { plan: { ...made, problems: saidOnce(said) } };
}

function howMany(jobs: number): Problem[] {
	if (jobs >= 2 && jobs <= MOST_JOBS) return [];
	return [
		{
			path: [],
			what: `${jobs === 1 ? 'One job is' : `${jobs} jobs are`} asked for together.`,
			fix: `Choose 2 to ${MOST_JOBS} jobs.`,
			kind: 'stop',
		},
	];
}

/** Each by itself, with what is left of the rack. */
async function oneByOne(
	files: readonly unknown[],
	counts: Counts,
	options: PlanOptions,
): Promise<{ readonly plans: readonly Plan[]; readonly taken: readonly Counts[] }> {
	const plans: Plan[] = [];
	const taken: Counts[] = [];
	let left = counts;
	for (const [i, file] of files.entries()) {
		const now = left;
		const onRack = (job: Job): Job => ({ ...job, stock: withCounts(job.stock, now) });
		const made = await plan(file, { ...options, ...inTurn(options, i, files.length), onRack });
		plans.push(made);
		const takes = takesOf(made);
		taken.push(takes);
		left = lessTaken(left, takes);
	}
	return { plans, taken };
}

/** Progress of one of so many plans, of the first half of the work. */
function inTurn({ watch }: PlanOptions, i: number, count: number): Pick<PlanOptions, 'watch'> {
	if (!watch) return {};
	return {
		watch: ({ stage, done }) =>
			watch({ stage: `job ${i + 1} of ${count}, ${stage}`, done: (i + done) / count / 2 }),
	};
}

async function joined(at: AtHand, options: PlanOptions): Promise<Plan> {
	const { watch } = options;
	const search = new SearchSession(nth(at.racks, 0), {
		...options,
		...(watch && {
			watch: ({ stage, done }) => watch({ stage: `together, ${stage}`, done: (1 + done) / 2 }),
		}),
	});
	const job = jobOfAll(at);
	const works = at.plans.map((_, i) => workOf(at, i));
	const parts = works.flatMap((w) => w.parts);
	const blanks = works.flatMap((w) => w.blanks);
	const needs = works.flatMap((w) => w.needs);
	const runs = at.plans.map((p, i) => taggedRuns(p.runs, taggingOf(at, i)));
	const toCut = at.plans.map((p, i) => taggedRuns(leftToCut(p.job, p.runs), taggingOf(at, i)));
	const laid = await layForAll(job, at, { parts, blanks, search });
	const designs = at.plans.map((p, i) => taggedDesigns(p, taggingOf(at, i)));
	const made = {
		boxes: designs.flatMap((d) => d.boxes),
		panels: designs.flatMap((d) => d.panels),
		...{ parts, blanks, needs, boards: laid.boards, cloths: laid.cloths },
		...{ runs: runs.flat(), reels: layReels(job, toCut) },
		seamLength: ticks(at.plans.reduce((sum, p) => sum + p.seamLength, 0)),
	};
	const { order, quote, problems } = estimateLeft(job, made);
	const together: Together = {
		jobs: shareCosts(job, { ...made, order, quote }, works),
		...{ boards: laid.joinedBoards, cloths: laid.joinedCloths },
		now: tallyOf([{ ...made, order, quote }]),
		apart: tallyOf(at.plans),
	};
	return {
		job,
		...made,
		problems: [...laid.problems, ...problems, ...dearer(together)],
		carpets: designs.flatMap((d) => d.carpets),
		...{ order, quote, options: [], cautions: cautionsFor(job, made) },
		...{ search: search.record, together },
	};
}

/** Prices that rise with the number bought are the seller's, and no layout helps against them. */
function dearer({ now, apart }: Together): Problem[] {
	if (now.ordered <= apart.ordered) return [];
	return [
		{
			path: ['stock'],
			what: 'Ordered at once all this costs more than job by job: a price rises with the number bought.',
			fix: 'Order each job by itself, or look at the price breaks.',
			kind: 'check',
		},
	];
}

const taggingOf = ({ tags, rack }: AtHand, i: number) => ({
	tag: nth(tags, i),
	marks: nth(rack.marks, i),
});

function workOf(at: AtHand, i: number): JobWork {
	const made = nth(at.plans, i);
	const own = nth(at.racks, i);
	const as = taggingOf(at, i);
	const { number, name, customer, vehicle } = made.job;
	const typed = own.stock.sundries.map((s): [string, number] => [
		as.marks.sundries.get(s.id) ?? s.id,
		s.use,
	]);
	return {
		...{ tag: as.tag, number, name, customer, vehicle },
		parts: taggedParts(made, as),
		blanks: taggedBlanks(made, as),
		needs: taggedNeeds(made, own, as),
		typed: new Map(typed),
		labour: made.quote.left.labour,
	};
}

/** The jobs as what is left of them: of what is used of sundries nothing is taken again. */
function withoutWhatIsUsed(
	racks: readonly Job[],
	plans: readonly Plan[],
): Pick<AtHand, 'racks' | 'plans'> {
	const left = plans.map((made, i) => {
		const { stock } = nth(racks, i);
		return withoutUsed(made, (need) => servedBy(stock, need));
	});
	return {
		plans: plans.map((made, i) => ({ ...made, needs: nth(left, i).needs })),
		racks: racks.map((rack, i) => {
			const { uses } = nth(left, i);
			const sundries = rack.stock.sundries.map((s) => ({ ...s, use: uses.get(s.id) ?? s.use }));
			return { ...rack, stock: { ...rack.stock, sundries } };
		}),
	};
}

/** Chapters of the bench pack: how a box or panel goes together is told in its job's own. */
const CHAPTERS: NonNullable<Job['pages']> = [
	...(['summary', 'cautions', 'order', 'sheets', 'parts', 'cloth', 'runs'] as const),
];

/** The job that all of them are: one shop, one rack, everything under marks of its own. */
function jobOfAll(at: AtHand): Job {
	const first = nth(at.racks, 0);
	const asked = at.plans.map((p, i) => taggedJob(p, taggingOf(at, i)));
	const loose = at.plans.flatMap((p) => p.job.parts);
	return {
		...first,
		name: `${at.tags.length} jobs together: ${at.tags.join(', ')}`,
		number: joinedNumber(at.tags),
		...{ revision: '', customer: '', vehicle: '', notes: '' },
		stock: at.rack.stock,
		boxes: asked.flatMap((a) => a.boxes),
		panels: asked.flatMap((a) => a.panels),
		work: asked.flatMap((a) => a.work),
		pinned: asked.flatMap((a) => a.pinned),
		byHand: apartByHand(asked.map((a) => a.byHand)),
		pulled: asked.flatMap((a) => a.pulled),
		used: [],
		took: { times: [], materials: [] },
		parts: loose,
		pages: CHAPTERS,
		...{ runs: [], options: [], sent: [], ticked: {}, look: null },
	};
}

/** What is said of one job, its path beginning with the job's tag. */
const ofJob = (tag: string, { accept: _, ...said }: Problem): Problem => {
	const path: Path = [tag, ...said.path];
	return { ...said, path };
};

const KINDS: Readonly<Record<string, string>> = {
	owned: 'sheets',
	buy: 'sheets to be bought at most',
	offcut: 'offcuts',
	roll: 'roll',
	sundry: 'packs',
};

function countsDiffer(key: string, counts: Counts): Problem {
	const at = key.indexOf('/');
	const [kind, id] = [key.slice(0, at), key.slice(at + 1)];
	const count = counts.get(key) ?? 0;
	const told = kind === 'roll' ? 'the shortest length' : `the lowest count, ${count}`;
	return {
		path: ['stock', id],
		what: `The jobs do not agree on how much of ${id} (${KINDS[kind]}) there is; ${told} is planned with.`,
		fix: 'Count it, and set it in the rack of each job.',
		kind: 'note',
	};
}
