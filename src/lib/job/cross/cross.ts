import { doubles } from './doubles';
import { unknownMarks } from './marks';
import { oddStock, usableSaws } from './stock';
import type { Job } from '../job';
import { leaveOut, pathInFile, type Sources, type Problem } from '../problems';

/** In this order, since what one leaves out the next must not count on. */
const CHECKS: readonly ((job: Job) => Problem[])[] = [doubles, oddStock, unknownMarks];

/** What each schema alone cannot see: double marks, marks of nothing, figures that contradict each other. */
export function crossCheck(
	read: Job,
	from: Sources,
): { readonly job: Job; readonly problems: readonly Problem[]; readonly sources: Sources } {
	let job = read;
	let sources = from;
	const problems: Problem[] = [];
	for (const check of CHECKS) {
		const faults = check(job);
		problems.push(...faults.map((f) => ({ ...f, path: pathInFile(sources, f.path) })));
		// A refused kerf leaves its saw where it is, with the usual kerf.
		const stops = faults
			.filter((f) => f.kind === 'stop' && f.path.at(-1) !== 'kerf')
			.map((f) => f.path);
		if (stops.length === 0) continue;
		job = structuredClone(job);
		sources = leaveOut(job, stops, sources);
	}
	const saws = usableSaws(job.shop.saws);
	return { job: { ...job, shop: { ...job.shop, saws } }, problems, sources };
}
