import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from '../build.js';
import { node, tool } from '../tool.js';

/*
 * The checks of the project, each a function that runs it and counts. A test that was skipped
 * counts as failed: what is not looked at is not known to be good. Whatever a check has to say goes
 * to the file it is given.
 */

/** @typedef {{ passed: number, failed: number }} Count */
/**
 * @typedef {{ folder: string, stdio: ['ignore', number, number] }} Place a folder for its papers,
 * and where it speaks
 */
/** @typedef {(place: Place) => Promise<Count>} Check */

/** @type {Check} */
export const lint = ({ stdio }) =>
	one(node(tool('eslint'), ['.', '--max-warnings', '0'], { stdio }));

/** @type {Check} */
export const form = ({ stdio }) =>
	one(node(tool('prettier'), ['--check', '--log-level', 'warn', '.'], { stdio }));

/**
 * Types of everything. The types of the routes are written by whoever built the app last, or by
 * `svelte-kit sync`.
 * @type {Check}
 */
export const types = ({ stdio }) =>
	one(node(tool('svelte-check'), ['--tsconfig', 'tsconfig.json', '--fail-on-warnings'], { stdio }));

/** @type {Check} */
export const app = ({ stdio }) => one(build(stdio));

/**
 * The tests that need no browser, in the two halves that `vite.config.ts` names.
 * @param {'rooms' | 'of their own'} project
 * @returns {Check}
 */
export function unit(project) {
	return async ({ folder, stdio }) => {
		const file = join(folder, `${project}.json`);
		const { count } = await unitTests(file, ['--project', project], { stdio });
		return count;
	};
}

/**
 * Runs the tests that need no browser.
 * @param {string} file where the runner leaves its report
 * @param {readonly string[]} more further arguments of the runner
 * @param {Parameters<typeof node>[2]} options
 * @returns {Promise<{ count: Count, files: readonly TestFile[] }>}
 */
export async function unitTests(file, more, options) {
	const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${file}`];
	const code = await node(tool('vitest'), ['run', ...reporters, ...more], options);
	/** @type {readonly TestFile[] | undefined} */
	const files = read(file)?.testResults;
	if (!files) return { count: { passed: 0, failed: 1 }, files: [] };
	const results = files.flatMap((f) => f.assertionResults.map((r) => r.status));
	const passed = results.filter((status) => status === 'passed').length;
	// A file that could not even be loaded has no results to count.
	const torn = files.filter(
		(f) => f.status === 'failed' && f.assertionResults.every((r) => r.status === 'passed'),
	);
	const count = atLeast(code, { passed, failed: results.length - passed + torn.length });
	return { count, files };
}

/**
 * What the runner reports of a file of tests.
 * @typedef {{
 *   name: string,
 *   status: string,
 *   assertionResults: { status: string, fullName: string, meta?: { cases?: number } }[],
 * }} TestFile
 */

/**
 * @param {string | null} chromium the browser's program, null when there is none
 * @param {'long'} [only] the tests of this name alone, which are of a deep run
 * @returns {Check}
 */
export function browser(chromium, only) {
	return async ({ folder, stdio }) => {
		if (chromium === null) return { passed: 0, failed: 1 };
		const file = join(folder, 'browser.json');
		/** @type {Record<string, string>} */
		const env = { CHROMIUM: chromium, PLAYWRIGHT_JSON_OUTPUT_NAME: file };
		if (only !== undefined) env.DEPTH = 'deep';
		const which = only === undefined ? [] : ['--project', only];
		const args = ['test', '--reporter=dot,json', ...which];
		const code = await node(tool('@playwright/test', 'playwright'), args, { env, stdio });
		const stats = read(file)?.stats;
		if (!stats) return { passed: 0, failed: 1 };
		const { expected, unexpected, flaky, skipped } = stats;
		return atLeast(code, { passed: expected, failed: unexpected + flaky + skipped });
	};
}

/**
 * @param {Promise<number>} ending the exit code to come
 * @returns {Promise<Count>}
 */
async function one(ending) {
	const ok = (await ending) === 0;
	return { passed: ok ? 1 : 0, failed: ok ? 0 : 1 };
}

/**
 * A run that says it failed has failed, even if no single test did.
 * @param {number} code
 * @param {Count} count
 * @returns {Count}
 */
function atLeast(code, { passed, failed }) {
	return { passed, failed: code === 0 ? failed : Math.max(failed, 1) };
}

/** @param {string} file */
function read(file) {
	try {
		return JSON.parse(readFileSync(file, 'utf8'));
	} catch {
		return null;
	}
}
