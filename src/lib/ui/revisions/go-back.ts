import type { JobFile } from '../../job';

/**
 * The job as it was then. One that draws on the shop's rack leaves the rack and the shop as they
 * are now: they are other jobs' as well.
 */
export function goneBack(then: JobFile, now: JobFile, sharesRack: boolean): JobFile {
	if (!sharesRack) return then;
	const job: JobFile = { ...then };
	for (const part of ['stock', 'shop'] as const) {
		delete job[part];
		if (part in now) Object.assign(job, { [part]: now[part] });
	}
	return job;
}
