import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { unitTests } from './checks/checks.js';
import { ensure } from './ensure.js';
import { fetchPrograms } from './programs.js';
import { ROOT } from './tool.js';

/*
 * The tests that need no browser, with every law tried on many times the cases (tests/depth.ts):
 * what runs before a release. Tells of each law how many cases it held for. Arguments name the
 * tests to run, all of them without any.
 */

await ensure();
await fetchPrograms();
const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
const more = ['--maxWorkers=2', ...process.argv.slice(2)];
const { count, files } = await unitTests(join(folder, 'unit.json'), more, {
	env: { DEPTH: 'deep' },
});
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
		`on ${Math.min(...cases)} at least\n\n${count.passed} passed, ${count.failed} failed\n`,
);
process.exitCode = count.failed === 0 && count.passed > 0 && laws.length > 0 ? 0 : 1;
