import { ensure } from '../ensure.js';
import { runTypeScript } from '../tool.js';

await ensure();
if (!(await runTypeScript('src/setup/bench/bench.ts'))) {
	process.stderr.write('There is nothing to measure: src/setup/bench/bench.ts is missing.\n');
	process.exitCode = 2;
}
