import { writeSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { loadFonts } from '../../../cli/fonts';
import { hostileCase, SORTS } from './cases';
import { sampleJobs } from './sample-jobs';
import { through, type Way } from './through';
import { MOST_WORK, WATCH } from './watch';

/*
 * Started by a lane, to try one case after the other; says of each on the pipe how it ended. The
 * case in hand is written before it is tried, so that one that takes the process down is known.
 */

export interface Tried {
	readonly seed: number;
	/** Seconds of processor time. */
	readonly work: number;
	/** How far it came; 'threw' where it came to no end of its own. */
	readonly end: Way['end'] | 'threw';
	readonly amiss: readonly string[];
	/** Peak of the process so far, MiB. */
	readonly peak: number;
}

const say = (line: object): void => void writeSync(1, JSON.stringify(line) + '\n');

async function tryAll(seeds: readonly number[]): Promise<void> {
	const jobs = sampleJobs();
	const fonts = loadFonts();
	const begun = new Float64Array(new SharedArrayBuffer(8));
	const watchdog = new Worker(WATCH, { eval: true, workerData: { begun, most: MOST_WORK } });
	for (const seed of seeds) {
		const hostile = hostileCase(seed, jobs, sort);
		say({ begins: seed });
		const from = process.cpuUsage();
		begun[0] = from.user + from.system;
		const way = await through(hostile, fonts).catch((error: unknown) => ({
			end: 'threw' as const,
			amiss: [
				`threw: ${error instanceof Error ? (error.stack ?? error.message).slice(0, 700) : String(error)}`,
			],
		}));
		begun[0] = 0;
		const { user, system } = process.cpuUsage(from);
		const peak = process.resourceUsage().maxRSS / 1024;
		say({ seed, work: (user + system) / 1e6, ...way, peak } satisfies Tried);
	}
	await watchdog.terminate();
}

const [first = 0, count = 0, step = 1] = process.argv.slice(3).map(Number);
const sort = SORTS.find((one) => one === process.argv[2]);
await tryAll(Array.from({ length: count }, (_, i) => first + i * step));
