import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { app, browser, form, lint, types, unit } from './checks/checks.js';
import { chromiumPath } from './chromium.js';
import { ensure } from './ensure.js';
import { fetchPrograms } from './programs.js';
import { sideBySide } from './checks/side-by-side.js';

/*
 * All checks of the project, whatever the others say, two at a time: more would only wait for each
 * other on a small machine. What a check says is shown whole when it is over. Ends with one line
 * that sums them up.
 */

await ensure();
await fetchPrograms();
const chromium = await chromiumPath();
/** @type {{ name: string, check: import('./checks/checks.js').Check, after?: string }[]} */
const CHECKS = [
	{ name: 'build', check: app },
	{ name: 'form', check: form },
	{ name: 'rooms', check: unit('rooms') },
	{ name: 'browser', check: browser(chromium), after: 'build' },
	{ name: 'of their own', check: unit('of their own') },
	{ name: 'lint', check: lint },
	{ name: 'types', check: types, after: 'build' },
];

const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
const total = { passed: 0, failed: 0 };
/** @type {Map<string, string>} */
const lines = new Map();
await sideBySide(CHECKS, 2, async ({ name, check }) => {
	const begun = Date.now();
	const { passed, failed } = await apart(name, check);
	total.passed += passed;
	total.failed += failed;
	const seconds = Math.round((Date.now() - begun) / 1000);
	lines.set(name, `${name.padEnd(12)} ${passed} passed, ${failed} failed in ${seconds} s`);
});
rmSync(folder, { recursive: true, force: true });
const summary = CHECKS.map(({ name }) => lines.get(name)).join('\n');
process.stdout.write(`\n${summary}\n\n${total.passed} passed, ${total.failed} failed\n`);
process.exitCode = total.failed === 0 && total.passed > 0 ? 0 : 1;

/**
 * Runs a check with its words kept apart from those of the others, and shows them when it is over.
 * @param {string} name
 * @param {import('./checks/checks.js').Check} check
 */
async function apart(name, check) {
	const file = join(folder, `${name}.txt`);
	const words = openSync(file, 'a');
	const count = await check({ folder, stdio: ['ignore', words, words] }).catch((error) => {
		writeSync(words, `The check itself broke: ${error}\n`);
		return { passed: 0, failed: 1 };
	});
	closeSync(words);
	process.stdout.write(`\n${name}\n${readFileSync(file, 'utf8')}`);
	return count;
}
