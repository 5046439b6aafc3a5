import { doubles } from './doubles';
import { unknownMarks } from './marks';
import { tooMany } from './pieces';
import { oddPhotographs } from './photographs';
import { oddSent } from './sent';
import { oddPrices } from './prices';
import { oddStock, usableSaws } from './stock';
import type { Job } from '../job';
import { leaveOut, pathInFile, type Path, type Sources, type Problem } from '../problems';
import type { Fault } from './fault';

/** In this order, since what one leaves out the next must not count on. */
const CHECKS: readonly ((job: Job, clothsInFile: readonly string[]) => Fault[])[] = [
	doubles,
	oddStock,
	oddPrices,
	oddSent,
	unknownMarks,
	tooMany,
	oddPhotographs,
];

/**
 * What each schema alone cannot see: double marks, marks of nothing, figures that contradict each
 * other. `clothsInFile`: marks of all cloths the file holds, those that were left out as well.
 */
export function crossCheck(
	read: Job,
	from: Sources,
	clothsInFile: readonly string[],
): { readonly job: Job; readonly problems: readonly Problem[]; readonly sources: Sources } {
	let job = read;
	let sources = from;
	const problems: Problem[] = [];
	for (const check of CHECKS) {
		const faults = check(job, clothsInFile);
		const told = faults.filter((f) => !f.said);
		problems.push(...told.map(({ problem }) => problemInFile(problem, sources)));
		const out = faults.flatMap((f): Path[] => (f.leavesOut ? [f.leavesOut] : []));
		if (out.length === 0) continue;
		job = structuredClone(job);
		sources = leaveOut(job, out, sources);
	}
	const saws = usableSaws(job.shop.saws);
	return { job: { ...job, shop: { ...job.shop, saws } }, problems, sources };
}

function problemInFile(problem: Problem, sources: Sources): Problem {
	const { accept } = problem;
	const there = accept && { ...accept, path: pathInFile(sources, accept.path) };
	const path = pathInFile(sources, problem.path);
	return { ...problem, path, ...(there ? { accept: there } : {}) };
}
