import { build, isStale } from '../../build.js';
import type { Asked, Row } from '../row';
import { builtTwice } from './builds';
import { commandLineMade } from './command-line';
import { pageMade } from './page';

/**
 * Sample jobs that are planned on both sides: a bench in cloth, a slanted box, a pair of panels.
 */
const JOBS = ['camper-bench.json', 'box-slanted-sealed.json', 'panel-quarter-pair.json'];

/** The same files, byte for byte, from the command line and from the workers of the built app. */
export async function same({ count = JOBS.length, note }: Asked): Promise<Row> {
	if (isStale() && (await build()) !== 0) throw new Error('the app cannot be built');
	const found: string[] = [];
	const jobs = JOBS.slice(0, count);
	let compared = 0;
	for (const job of jobs) {
		note(`same: ${job}`);
		const [page, commandLine] = [await pageMade(job), await commandLineMade(job)];
		for (const [name, own] of Object.entries(page)) {
			compared++;
			if (own !== commandLine[name]) found.push(`${job}: ${name} is another one in the page`);
		}
	}
	return {
		what: 'files of the page and of the command line, byte for byte',
		tried: compared,
		survived: compared - found.length,
		found,
		notes: [
			`${jobs.join(', ')}; Node ${process.version} on ${process.platform} ${process.arch}`,
			...found,
		],
		notCovered: 'another version of Node, another processor, another browser than Chromium',
	};
}

/** The app built twice, byte for byte. */
export async function builds(): Promise<Row> {
	const { files, differ } = await builtTwice();
	return {
		what: 'files of the app, built twice',
		tried: files,
		survived: files - differ.length,
		found: differ,
		notes: [`Node ${process.version}`],
		notCovered: 'another machine, another folder',
	};
}
