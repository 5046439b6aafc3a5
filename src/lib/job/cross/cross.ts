import { doubles } from './doubles';
import { unknownMarks } from './marks';
import { oddStock, usableSaws } from './stock';
import type { Job } from '../job';
import { leaveOut, pathInFile, type Path, type Sources, type Problem } from '../problems';
import type { Fault } from './fault';

/** In this order, since what one leaves out the next must not count on. */
const CHECKS: readonly ((job: Job) => Fault[])[] = [doubles, oddStock, unknownMarks];

/**
 * What each schema alone cannot see: double marks, marks of nothing, figures that contradict each
 * other.
 */
export function crossCheck(
	read: Job,
	from: Sources,
): { readonly job: Job; readonly problems: readonly Problem[]; readonly sources: Sources } {
	let job = read;
	let sources = from;
	const problems: Problem[] = [];
	for (const check of CHECKS) {
		const faults = check(job);
		problems.push(...faults.map(({ problem }) => problemInFile(problem, sources)));
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
