import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../tool.js';
import type { Asked, Row } from '../row';
import { hostileCase, type Sort } from './cases';
import type { Tried } from './child';
import { lane } from './lane';
import { sampleJobs } from './sample-jobs';
import { MOST_WORK } from './watch';

/** What is found amiss is saved there, a case a file. */
const FOUND = join(ROOT, 'out', 'trust');
/** MiB that a process of cases may come to. */
const MOST_MEMORY = 1024;

/** Hostile files through reading, planning, drawing and printing. */
export const hostile = (asked: Asked): Promise<Row> =>
	tryAll('files', { count: 100_000, ...asked }, 'hostile input');

/** The same of what other devices might send to be merged. */
export const merges = (asked: Asked): Promise<Row> =>
	tryAll('merges', { count: 20_000, ...asked }, 'hostile updates to merge');

async function tryAll(
	sort: Sort,
	{ seed, count, lanes, note }: Required<Asked>,
	what: string,
): Promise<Row> {
	const tally = { tried: 0, amiss: 0, down: 0, slowest: 0, slow: 0, peak: 0, work: 0 };
	const ends = { refused: 0, planned: 0, answered: 0, threw: 0 };
	const found: string[] = [];
	const begun = performance.now();
	const told = (tried: Tried): void => {
		tally.tried++;
		ends[tried.end]++;
		tally.work += tried.work;
		tally.slowest = Math.max(tally.slowest, tried.work);
		tally.peak = Math.max(tally.peak, tried.peak);
		const wrong = verdict(tried);
		if (wrong.some((word) => word.startsWith('down'))) tally.down++;
		if (wrong.length > 0) found.push(save(tried.seed, sort, wrong));
		note(`${what} ${tally.tried} of ${count}, ${found.length} found`);
	};
	const spans = Array.from({ length: lanes }, (_, i) => ({
		sort,
		first: seed + i,
		count: Math.ceil((count - i) / lanes),
		step: lanes,
	}));
	await Promise.all(spans.map((span) => lane(span, told)));
	const seconds = (performance.now() - begun) / 1000;
	return {
		what: `${what} (numbers ${seed} to ${seed + count - 1})`,
		tried: tally.tried,
		survived: tally.tried - found.length,
		crashed: tally.down,
		ends,
		executed: 0,
		slowest: tally.slowest,
		peak: tally.peak,
		found,
		notes: [
			`${(tally.tried / seconds).toFixed(0)} cases a second, ${((1000 * tally.work) / tally.tried).toFixed(0)} ms of work each; ${ends.planned} planned and drawn, ${ends.answered} laid out, ${ends.refused} refused in words`,
		],
		notCovered: 'pictures (only the browser decodes them), the search at its full effort',
	};
}

function verdict({ work, peak, amiss }: Tried): string[] {
	return [
		...amiss,
		...(work > MOST_WORK ? [`took ${work.toFixed(1)} s of work`] : []),
		...(peak > MOST_MEMORY ? [`took ${peak.toFixed(0)} MiB`] : []),
	];
}

/** Leaves the case as a file; returns what is said of it. */
function save(seed: number, sort: Sort, wrong: readonly string[]): string {
	const { kind, text } = hostileCase(seed, sampleJobs(), sort);
	mkdirSync(FOUND, { recursive: true });
	writeFileSync(join(FOUND, `${kind}-${seed}.txt`), text);
	return `${kind} ${seed}: ${wrong.map((word) => word.slice(0, 300)).join('; ')}`;
}
