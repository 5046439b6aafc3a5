import type { Need } from '../design';
import { type Job, type Places, type Problem, reelOf, type Run, type Sundry } from '../job';
import { sayLength } from '../measure';
import { leftToCut, unlikeUsed } from './left-to-cut';
import { inMetres, layReels, longestOf, type ReelPlan } from './reels';
import { plannedRun, type RunPlan } from './run-plan';

/** The runs of a job: how long each is cut, from what, and what the order has to know. */
interface RunsPlanned {
	readonly runs: readonly RunPlan[];
	readonly reels: readonly ReelPlan[];
	readonly needs: readonly Need[];
	readonly problems: readonly Problem[];
}

export function planRuns(job: Job, places: Places): RunsPlanned {
	const runs = job.runs.map((run) => ({ ...plannedRun(job, run), ...cutFrom(job, run) }));
	const left = leftToCut(job, runs);
	const needs = runs.flatMap((run): Need[] => {
		const reel = run.uncut === '' ? reelOf(job, run.reel) : null;
		if (!reel) return [];
		const amount = inMetres(run.cut) * run.count;
		return [{ kind: reel.kind, amount, for: `run ${run.label}`, of: reel.id }];
	});
	const problems = runs.flatMap((run, i) =>
		problemOf(job, run, { at: places.of('runs', run.id, i), asked: job.runs[i]?.from }),
	);
	return {
		runs,
		reels: layReels(job, [left]),
		needs,
		problems: [...problems, ...unlikeUsed(job, runs)],
	};
}

function cutFrom(job: Job, { from, ...run }: Run): Pick<RunPlan, 'reel' | 'uncut'> {
	const reel = reelOf(job, from);
	if (!reel) return { reel: '', uncut: 'no reel' };
	const longest = longestOf(reel);
	const { cut } = plannedRun(job, { ...run, from });
	return { reel: reel.id, uncut: longest !== null && cut > longest ? 'too long' : '' };
}

interface Asked {
	readonly at: Problem['path'];
	/** The mark the job gives for what it is cut from. */
	readonly asked: string | undefined;
}

function problemOf(job: Job, run: RunPlan, { at, asked }: Asked): Problem[] {
	if (run.uncut === '') return [];
	const path = [...at, 'from'];
	const left = `The order leaves ${run.label} ${run.name} out`;
	if (run.uncut === 'too long') return [tooLong(job, run, { path, left })];
	if (asked === undefined)
		return [
			{
				...{ path, kind: 'check' },
				what: `${left}: it is not said what it is cut from.`,
				fix: 'Choose a cable, loom or hose of the rack; put it among the sundries first if it is not there.',
			},
		];
	const other = job.stock.sundries.find((s) => s.id === asked);
	return [
		{
			...{ path, kind: 'check' },
			what: other
				? `${left}: "${other.name}" is no cable, loom or hose.`
				: `${left}: no sundry of the rack has the mark "${asked}".`,
			fix: `Use ${oneOf(job.stock.sundries.filter((s) => reelOf(job, s.id)))}.`,
		},
	];
}

const oneOf = (reels: readonly Sundry[]): string =>
	reels.length === 0
		? 'a cable, loom or hose, put among the sundries of the rack first'
		: `one of ${reels
				.slice(0, 8)
				.map((r) => r.id)
				.join(', ')}`;

/** Nobody said that a joint may be there, and where one may be is not for a list of lengths. */
function tooLong(
	job: Job,
	run: RunPlan,
	{ path, left }: { readonly path: Problem['path']; readonly left: string },
): Problem {
	const { ruler } = job.shop;
	const reel = reelOf(job, run.reel);
	const longest = reel ? longestOf(reel) : null;
	const piece = longest === null ? '' : sayLength(longest, ruler);
	return {
		...{ path, kind: 'stop' },
		what: `${left}: it is ${sayLength(run.cut, ruler)} long, and one length of "${reel?.name}" is ${piece}. No joint is planned.`,
		fix: 'Cut it from longer lengths, or say of the sundry that any length is cut off in one piece. If a joint is meant and allowed there, list two runs.',
	};
}
