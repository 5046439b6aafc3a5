import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from './build.js';
import { chromiumPath } from './chromium.js';
import { ensure } from './ensure.js';
import { node, tool } from './tool.js';

/*
 * All checks of the project, one after the other, whatever the ones before said. Ends with one line that sums them up.
 * A test that was skipped counts as failed: what is not looked at is not known to be good.
 */

/** @typedef {{ passed: number, failed: number }} Count */

/** @type {[string, () => Promise<Count>][]} */
const CHECKS = [
	['types', types],
	['lint', () => one(() => node(tool('eslint'), ['.', '--max-warnings', '0']))],
	['form', () => one(() => node(tool('prettier'), ['--check', '--log-level', 'warn', '.']))],
	['unit', unit],
	['build', () => one(build)],
	['browser', browser],
];

await ensure();
const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
const total = { passed: 0, failed: 0 };
const lines = [];
for (const [name, check] of CHECKS) {
	process.stdout.write(`\n${name}\n`);
	const { passed, failed } = await check();
	total.passed += passed;
	total.failed += failed;
	lines.push(`${name.padEnd(8)} ${passed} passed, ${failed} failed`);
}
rmSync(folder, { recursive: true, force: true });
process.stdout.write(`\n${lines.join('\n')}\n\n${total.passed} passed, ${total.failed} failed\n`);
process.exitCode = total.failed === 0 && total.passed > 0 ? 0 : 1;

/**
 * @param {() => Promise<number>} check
 * @returns {Promise<Count>}
 */
async function one(check) {
	const ok = (await check()) === 0;
	return { passed: ok ? 1 : 0, failed: ok ? 0 : 1 };
}

async function types() {
	return one(async () => {
		const synced = await node(tool('@sveltejs/kit', 'svelte-kit'), ['sync']);
		if (synced !== 0) return synced;
		return node(tool('svelte-check'), ['--tsconfig', 'tsconfig.json', '--fail-on-warnings']);
	});
}

async function unit() {
	const file = join(folder, 'unit.json');
	const code = await node(tool('vitest'), [
		'run',
		'--reporter=dot',
		'--reporter=json',
		`--outputFile.json=${file}`,
	]);
	const report = read(file);
	if (!report) return { passed: 0, failed: 1 };
	/** @type {{ status: string, assertionResults: { status: string }[] }[]} */
	const files = report.testResults;
	const results = files.flatMap((f) => f.assertionResults.map((r) => r.status));
	const passed = results.filter((status) => status === 'passed').length;
	// A file that could not even be loaded has no results to count.
	const torn = files.filter(
		(f) => f.status === 'failed' && f.assertionResults.every((r) => r.status === 'passed'),
	);
	return atLeast(code, { passed, failed: results.length - passed + torn.length });
}

async function browser() {
	const chromium = await chromiumPath();
	if (chromium === null) return { passed: 0, failed: 1 };
	const file = join(folder, 'browser.json');
	const code = await node(tool('@playwright/test', 'playwright'), ['test', '--reporter=dot,json'], {
		env: { CHROMIUM: chromium, PLAYWRIGHT_JSON_OUTPUT_NAME: file },
	});
	const stats = read(file)?.stats;
	if (!stats) return { passed: 0, failed: 1 };
	const { expected, unexpected, flaky, skipped } = stats;
	return atLeast(code, { passed: expected, failed: unexpected + flaky + skipped });
}

/**
 * A run that says it failed has failed, even if no single test did.
 * @param {number} code
 * @param {Count} count
 * @returns {Count}
 */
function atLeast(code, { passed, failed }) {
	return { passed, failed: code !== 0 && failed === 0 ? 1 : failed };
}

/** @param {string} file */
function read(file) {
	try {
		return JSON.parse(readFileSync(file, 'utf8'));
	} catch {
		return null;
	}
}
