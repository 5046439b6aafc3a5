import { chromiumPath } from '../chromium.js';
import { ensure } from '../ensure.js';
import { runTypeScript } from '../tool.js';

await ensure();
const chromium = await chromiumPath();
if (chromium === null) process.exit(1);
process.env['CHROMIUM'] = chromium;
if (!(await runTypeScript('src/setup/pictures/pictures.ts'))) {
	process.stderr.write(
		'There are no pictures to make: src/setup/pictures/pictures.ts is missing.\n',
	);
	process.exitCode = 2;
}
