import { designAll } from '../../design';
import { type JobFile, placesIn, type Problem, readJob } from '../../job';
import { wrapAll } from '../../wrap';

interface Trouble {
	readonly stops: number;
	readonly checks: number;
}

/** How many places of a job stop something or want looking at, without layouts and carpet. */
function troubleIn(file: JobFile): Trouble {
	const read = readJob(file);
	const design = designAll(read.job, placesIn(file), read.unsized);
	const { panels } = wrapAll(
		read.job,
		{ boxes: [], panels: design.panels },
		placesIn(file),
		read.doubtfulCloths,
	);
	const all = [read, design, ...panels].flatMap((said) => said.problems);
	const count = (kind: Problem['kind']): number => all.filter((p) => p.kind === kind).length;
	return { stops: count('stop'), checks: count('check') };
}

/** How many places of a job stop something: nothing of the layouts is looked at. */
export const stopsIn = (file: JobFile): number => troubleIn(file).stops;

/** Some trouble no place is free of: once something stands, so many more are looked at. */
const LOOKS = 12;

/**
 * The first of these that brings no trouble; the first that stops nothing new where each brings
 * some; the first of all where each stops something.
 */
export function firstThatFits<T>(
	file: JobFile,
	all: readonly [T, ...T[]],
	put: (file: JobFile, one: T) => JobFile,
): T {
	if (all.length === 1) return all[0];
	const before = troubleIn(file);
	let second: T | undefined;
	let looks = 0;
	for (const one of all) {
		if (second !== undefined && looks++ === LOOKS) break;
		const { stops, checks } = troubleIn(put(file, one));
		if (stops > before.stops) continue;
		if (checks <= before.checks) return one;
		second ??= one;
	}
	return second ?? all[0];
}
