import type { JobFile } from '../../src/lib/job/job';
import { plan, type Plan, withOptions } from '../../src/lib/plan';
import { labelPages } from '../../src/lib/print/lists';
import { plainFiles } from '../../src/lib/print/output-files';
import {
	costPack,
	counterPack,
	handoverPack,
	printPack,
	quotePack,
	shopCardPack,
	templatePages,
} from '../../src/lib/print/pack';
import { changed, type Change } from './changes';

/* What a changed job brings: another plan, a word about it, or neither. */

/**
 * A plan as texts that can be compared; what is printed is asked for only where the rest is alike.
 */
interface Seen {
	readonly plan: Plan;
	readonly figures: string;
	readonly said: ReadonlySet<string>;
	/** The papers, each made when it is asked for; the short ones first. */
	readonly papers: readonly (() => string)[];
}

export interface Verdict {
	readonly outcome: 'changed' | 'told' | 'silent';
	readonly faults: readonly string[];
	/** Problems there were none of before. */
	readonly news: Plan['problems'];
	readonly seen: Seen;
}

export async function seen(file: unknown): Promise<Seen> {
	const made = await withOptions(await plan(file), file);
	// The job's own echo is no effect, its ruler with it, nor are the seed and effort asked for.
	const boards = made.boards.map((b) => ({ ...b, problem: { ...b.problem, ruler: null } }));
	const figures = JSON.stringify({ ...made, boards, job: null, search: null, problems: null });
	const said = new Set(made.problems.map((p) => `${p.path.join('/')} ${p.what} ${p.fix}`));
	return { plan: made, figures, said, papers: papersOf(made) };
}

const PACKS = [
	quotePack,
	costPack,
	counterPack,
	shopCardPack,
	handoverPack,
	templatePages,
	printPack,
] as const;

function papersOf(made: Plan): readonly (() => string)[] {
	const files = () => [...plainFiles('order', made), ...plainFiles('cutting-list', made)];
	return [files, labelPages, ...PACKS].map((paper) => once(() => JSON.stringify(paper(made))));
}

function once(make: () => string): () => string {
	let known: string | null = null;
	return () => (known ??= make());
}

/** Whether anything is printed otherwise; no more is printed than has to be to tell. */
export const printsOtherwise = (a: Seen, b: Seen): boolean =>
	a.papers.some((paper, i) => paper() !== b.papers[i]!());

const known = new Map<JobFile, Promise<Seen>>();
export const baseSeen = (base: JobFile): Promise<Seen> => {
	const found = known.get(base) ?? seen(base);
	known.set(base, found);
	return found;
};

export async function judge(change: Change): Promise<Verdict> {
	const [before, after] = [await baseSeen(change.base), await seen(changed(change))];
	const news = after.plan.problems.filter(
		(p) => !before.said.has(`${p.path.join('/')} ${p.what} ${p.fix}`),
	);
	const outcome = outcomeOf(before, after, news.length > 0);
	return { outcome, faults: faultsOf(after.plan), news, seen: after };
}

function outcomeOf(before: Seen, after: Seen, told: boolean): Verdict['outcome'] {
	if (after.figures !== before.figures) return 'changed';
	return told ? 'told' : 'silent';
}

/** What no plan may hold, whatever was asked. */
export function faultsOf(made: Plan): string[] {
	const rest = { ...made, job: null };
	const wordless = made.problems.filter((p) => p.path.length === 0);
	const mumbled = made.problems.filter((p) =>
		/NaN|Infinity|undefined|\[object|null/.test(p.what + p.fix),
	);
	return [
		...notNumbers(rest),
		...wordless.map((p) => `a problem without a place: ${p.what}`),
		...mumbled.map((p) => `a problem that mumbles: ${p.what} ${p.fix}`),
		...leftOut(made),
	];
}

/** Places in the plan that hold no finite number where a number stands. */
function notNumbers(value: unknown, path = 'plan'): string[] {
	if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
	if (typeof value !== 'object' || value === null) return [];
	return Object.entries(value).flatMap(([key, inner]) => notNumbers(inner, `${path}.${key}`));
}

/** Boxes and panels that came to nothing without a word. */
function leftOut({ boxes, panels, problems }: Plan): string[] {
	const empty = [...boxes, ...panels].filter((thing) => thing.parts.length === 0);
	return empty.length > 0 && !problems.some((p) => p.kind === 'stop')
		? empty.map((t) => `${t.id} is left out without a word`)
		: [];
}
