import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { browser, unitTests } from './checks/checks.js';
import { chromiumPath } from './chromium.js';
import { ensure } from './ensure.js';
import { fetchPrograms } from './programs.js';
import { ROOT } from './tool.js';

/*
 * The tests that need no browser, with every law tried on many times the cases (tests/depth.ts),
 * and those in the browser that take minutes: what runs before a release. Tells of each law how
 * many cases it held for. Arguments name tests without a browser to run, and then those alone.
 */

await ensure();
await fetchPrograms();
const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
const more = ['--maxWorkers=2', ...process.argv.slice(2)];
const { count, files } = await unitTests(join(folder, 'unit.json'), more, {
	env: { DEPTH: 'deep' },
});
const named = process.argv.length > 2;
const long = named ? { passed: 0, failed: 0 } : await inBrowser();
rmSync(folder, { recursive: true, force: true });
const laws = files.flatMap((file) =>
	file.assertionResults.flatMap(({ meta, fullName }) =>
		meta?.cases === undefined ? [] : [{ cases: meta.cases, file: file.name, name: fullName }],
	),
);
for (const { cases, file, name } of laws)
	process.stdout.write(`${String(cases).padStart(6)}  ${relative(ROOT, file)}: ${name}\n`);
const cases = laws.map((law) => law.cases);
process.stdout.write(
	`\n${laws.length} laws on ${cases.reduce((a, b) => a + b, 0)} cases, ` +
		`on ${Math.min(...cases)} at least\n\n${count.passed + long.passed} passed, ${count.failed + long.failed} failed\n`,
);
process.exitCode = count.failed + long.failed === 0 && count.passed > 0 && laws.length > 0 ? 0 : 1;

async function inBrowser() {
	const check = browser(await chromiumPath(), 'long');
	return check({ folder, stdio: ['ignore', 1, 2] });
}
