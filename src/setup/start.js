import { join } from 'node:path';
import { build, isStale } from './build.js';
import { runCommand } from './command.js';
import { ensure } from './ensure.js';
import { serve } from '../shop/serve.js';
import { ROOT } from './tool.js';

await ensure();
if (isStale()) {
	process.stderr.write('Building the app …\n');
	if ((await build()) !== 0) {
		process.stderr.write('The app could not be built; the reason stands above.\n');
		process.exit(1);
	}
}
const asked = process.argv.slice(2);
if (asked.includes('--shop')) {
	// What is a folder's name means one where the person stands.
	if (process.env['INIT_CWD']) process.chdir(process.env['INIT_CWD']);
	const others = asked.filter((word) => word !== '--shop');
	process.argv = [...process.argv.slice(0, 2), 'shop', ...others];
	await runCommand();
} else await serveApp();

/** The app alone: nothing is kept but in the browser. */
async function serveApp() {
	const port = Number(process.env['PORT'] ?? 4173);
	if (!Number.isInteger(port) || port < 1 || port > 65_000) {
		process.stderr.write(`PORT is "${process.env['PORT']}": give a number from 1 to 65000.\n`);
		process.exit(2);
	}
	const { address } = await serve(join(ROOT, 'build'), port, process.env['PORT_STRICT'] === '1');
	process.stdout.write(`Kerf & Nap is at ${address} (end it with Ctrl+C)\n`);
}
