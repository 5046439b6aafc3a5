import type { Asked, Row } from '../row';
import { builtTwice } from './builds';
import { commandLineMade } from './command-line';
import { pageMade } from './page';

/** Sample jobs that are planned on both sides: a bench in cloth, a slanted box, a pair of panels. */
const JOBS = ['camper-bench.json', 'box-slanted-sealed.json', 'panel-quarter-pair.json'];

/**
 * The same plan, byte for byte, from the command line and from the workers of the built app in a
 * browser; and two builds of the app, byte for byte.
 */
export async function same({ note }: Asked): Promise<Row> {
	note('same: two builds');
	const { files, differ } = await builtTwice();
	const found = differ.map((name) => `two builds differ in ${name}`);
	let compared = files;
	for (const job of JOBS) {
		note(`same: ${job}`);
		const [page, commandLine] = [await pageMade(job), await commandLineMade(job)];
		for (const [name, own] of Object.entries(page)) {
			compared++;
			if (own !== commandLine[name]) found.push(`${job}: ${name} is another one in the page`);
		}
	}
	return {
		what: 'same bytes in the page, from the command line and from two builds',
		tried: compared,
		survived: compared - found.length,
		found,
		notes: [
			`${JOBS.length} jobs, of each the plan, the print pack, the cutting list and the order list; ${files} files of the app, built twice; Node ${process.version} on ${process.platform} ${process.arch}`,
		],
		notCovered: 'another version of Node, another processor, another browser than Chromium',
	};
}
