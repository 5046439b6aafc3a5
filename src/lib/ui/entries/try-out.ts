import { designAll } from '../../design';
import { type JobFile, placesIn, readJob } from '../../job';

/** How many places of a job stop something: nothing of the layouts is looked at. */
export function stopsIn(file: JobFile): number {
	const read = readJob(file);
	const design = designAll(read.job, placesIn(file), read.unsized);
	return [...read.problems, ...design.problems].filter((p) => p.kind === 'stop').length;
}

/** The first of these that stops nothing new; the first of all where each of them does. */
export function firstThatFits<T>(
	file: JobFile,
	all: readonly [T, ...T[]],
	put: (file: JobFile, one: T) => JobFile,
): T {
	if (all.length === 1) return all[0];
	const before = stopsIn(file);
	return all.find((one) => stopsIn(put(file, one)) <= before) ?? all[0];
}
