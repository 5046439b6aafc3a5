import type { Job } from './job';

/** The saw in use: the chosen one, else the first. The schema sees to it that there is one. */
export function sawOf(job: Job): Job['shop']['saws'][number] {
	const saw = job.shop.saws.find((s) => s.id === job.shop.saw) ?? job.shop.saws[0];
	if (!saw) throw new Error('bug: a shop without a saw');
	return saw;
}
