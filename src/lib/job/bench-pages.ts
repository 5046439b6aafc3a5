/** Chapters of the bench pack, in their usual order. */
export const BENCH_CHAPTERS = [
	'summary',
	'cautions',
	'order',
	'sheets',
	'parts',
	'boxes',
	'panels',
	'cloth',
	'runs',
] as const;

export type BenchChapter = (typeof BENCH_CHAPTERS)[number];
