import fc from 'fast-check';
import { TestRunner } from 'vitest';

/*
 * How many cases a law, a test over made-up cases, is tried on: few in the tests of every day, many
 * before a release. Loaded before every file of tests, so that laws that name no number of their
 * own are of the same depth.
 */

declare module 'vitest' {
	interface TaskMeta {
		/** Cases the laws of this test held for; those they do not speak of are not among them. */
		cases?: number;
	}
}

const DEEP = process.env['DEPTH'] === 'deep';
/** Under a fault put in on purpose a law is run hundreds of times; one that sees it does soon. */
const OFTEN = process.env['DEPTH'] === 'mutants';
/** Of the full number, what the tests of every day take. */
const SHARE = OFTEN ? 1 / 12 : 1 / 4;
/** Times the full number, what a deep run takes. */
const TIMES = 10;
/** Fewer cases than these say little; a law with fewer in full takes all of them. */
const LEAST = OFTEN ? 10 : 30;
/** The full number of a law that names none. */
const USUAL = 100;

/**
 * Cases for a law.
 * @param full cases that meet nearly everything the law speaks of
 * @param least never fewer than these: where the law must also have met something rare
 */
export function runs(full: number, least = LEAST): number {
	if (DEEP) return TIMES * full;
	return Math.min(full, Math.max(least, Math.round(full * SHARE)));
}

/**
 * What the cases of every day are drawn by, so that what the tests say depends on the code alone.
 * Another number tries others; a deep run draws anew each time.
 */
const SEED = 0x5cfc0650;

fc.configureGlobal({
	...fc.readConfigureGlobal(),
	...(DEEP ? {} : { seed: SEED }),
	numRuns: runs(USUAL),
	reporter: noted,
});

/**
 * Notes beside the test how many cases its law held for; a law that does not hold fails as it
 * always does.
 */
function noted(law: fc.RunDetails<unknown>): void {
	const { meta } = TestRunner.getCurrentTest() ?? {};
	if (meta) meta.cases = (meta.cases ?? 0) + law.numRuns;
	if (law.failed) throw new Error(fc.defaultReportMessage(law), { cause: law.errorInstance });
}
