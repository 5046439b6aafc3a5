import { type Job, packsDone, type Problem, reelOf } from '../job';
import { mm } from '../measure';
import type { RunPlan } from './run-plan';

/**
 * The runs less those that are cut from what is booked as used. Which they were is not booked: they
 * are the first ones of the list that come to just that length. Where none do, a run was changed
 * since, and all are left to cut: `unlikeUsed` tells.
 */
export function leftToCut(job: Job, runs: readonly RunPlan[]): RunPlan[] {
	const used = new Map(reelsOf(runs).map((id) => [id, lengthUsed(job, id)]));
	const unlike = new Set(unlikeReels(job, runs));
	return runs.map((run) => {
		const left = unlike.has(run.reel) ? 0 : (used.get(run.reel) ?? 0);
		const done = piecesIn(run, left);
		used.set(run.reel, left - done * run.cut);
		return { ...run, count: run.count - done };
	});
}

/** Told where what was used of a cable, loom or hose is not the length of its first runs. */
export function unlikeUsed(job: Job, runs: readonly RunPlan[]): Problem[] {
	return unlikeReels(job, runs).map((id) => ({
		...{ path: ['runs'], kind: 'check' },
		what: `"${reelOf(job, id)?.name}" was used for runs that have changed since, so all runs cut from it are planned and ordered again.`,
		fix: 'Take the runs that are cut already out of the list, or take back what is booked as used.',
	}));
}

function unlikeReels(job: Job, runs: readonly RunPlan[]): string[] {
	return reelsOf(runs).filter((id) => {
		let left = lengthUsed(job, id);
		for (const run of runs.filter((r) => isFrom(r, id))) {
			const done = piecesIn(run, left);
			left -= done * run.cut;
			if (done < run.count) break;
		}
		return left > CRUMB;
	});
}

const isFrom = (run: RunPlan, id: string): boolean => run.uncut === '' && run.reel === id;

const reelsOf = (runs: readonly RunPlan[]): string[] => [
	...new Set(runs.flatMap((r) => (r.uncut === '' ? [r.reel] : []))),
];

const piecesIn = (run: RunPlan, left: number): number =>
	run.uncut === '' ? Math.min(run.count, Math.floor((left + CRUMB) / run.cut)) : 0;

/** Ticks: shares of a pack are not whole ones. */
const CRUMB = 1;

/** In ticks; packs typed for the job beside its runs were used first. */
function lengthUsed(job: Job, id: string): number {
	const reel = reelOf(job, id);
	if (!reel) return 0;
	return Math.max(0, packsDone(job.used, id) - reel.use) * mm(1000 * reel.pack);
}
