import { join } from 'node:path';
import { build, isStale } from './build.js';
import { ensure } from './ensure.js';
import { serve } from './serve.js';
import { ROOT } from './tool.js';

await ensure();
if (isStale()) {
	process.stderr.write('Building the app …\n');
	if ((await build()) !== 0) {
		process.stderr.write('The app could not be built; the reason stands above.\n');
		process.exit(1);
	}
}
const port = Number(process.env['PORT'] ?? 4173);
if (!Number.isInteger(port) || port < 1 || port > 65_000) {
	process.stderr.write(`PORT is "${process.env['PORT']}": give a number from 1 to 65000.\n`);
	process.exit(2);
}
const { address } = await serve(join(ROOT, 'build'), port, process.env['PORT_STRICT'] === '1');
process.stdout.write(`Kerf & Nap is at ${address} (end it with Ctrl+C)\n`);
