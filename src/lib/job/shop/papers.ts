/** What the bench pack and the templates can be printed on. */
export const BENCH_PAPERS = { a4: 'A4', letter: 'Letter', a3: 'A3', tabloid: 'Tabloid' };

/**
 * What letters, cards and labels are printed on: a sheet that goes into an envelope and a folder,
 * half of the large one.
 */
export function letterPaper(paper: keyof typeof BENCH_PAPERS): 'a4' | 'letter' {
	return paper === 'a4' || paper === 'a3' ? 'a4' : 'letter';
}
