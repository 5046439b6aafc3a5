import { BENCH_CHAPTERS, type BenchChapter } from '../../../job';

/** A chapter of the bench pack in the list that is chosen from. */
export interface ChapterChoice {
	readonly name: BenchChapter;
	readonly on: boolean;
}

type Chosen = readonly BenchChapter[];

/** Those that are printed in their order, then the others in the usual one. */
export function choices(chosen: Chosen = BENCH_CHAPTERS): ChapterChoice[] {
	const on = [...new Set(chosen)];
	const off = BENCH_CHAPTERS.filter((name) => !on.includes(name));
	return [...on.map((name) => ({ name, on: true })), ...off.map((name) => ({ name, on: false }))];
}

/** With one put in, at its usual place among those that are in, or left out. */
export function tickedOrNot(
	chosen: Chosen = BENCH_CHAPTERS,
	name: BenchChapter,
): Chosen | undefined {
	if (chosen.includes(name)) return kept(chosen.filter((other) => other !== name));
	const usual = BENCH_CHAPTERS.indexOf(name);
	const before = chosen.findLastIndex((other) => BENCH_CHAPTERS.indexOf(other) < usual);
	return kept(chosen.toSpliced(before + 1, 0, name));
}

/** With one printed so many places later, or earlier where it is less than 0. */
export function placedAt(
	chosen: Chosen = BENCH_CHAPTERS,
	name: BenchChapter,
	by: number,
): Chosen | undefined {
	const from = chosen.indexOf(name);
	const to = Math.min(chosen.length - 1, Math.max(0, from + by));
	return kept(chosen.toSpliced(from, 1).toSpliced(to, 0, name));
}

/** All in the usual order is what a job says that says nothing. */
function kept(chosen: Chosen): Chosen | undefined {
	return chosen.join() === BENCH_CHAPTERS.join() ? undefined : chosen;
}
