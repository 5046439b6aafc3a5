import { existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { newest } from './build.js';
import { node, ROOT, tool } from './tool.js';

/*
 * The command of a checkout: its sources made into one file, once for every state of them. Loaded
 * one by one they took several seconds at each start.
 */

const SOURCES = ['src/cli', 'src/lib', 'src/shop', 'shared', 'package-lock.json'];
/** As deep as the packed command lies: from there it finds the app. */
const PLACE = join(ROOT, 'dist');

/** Runs the command line in this process, with the words this process was started with. */
export async function runCommand() {
	const state = Math.max(...SOURCES.map((source) => newest(join(ROOT, source))));
	const name = `from-source-${Math.round(state).toString(36)}`;
	if (!existsSync(join(PLACE, name))) await make(name);
	await import(`file://${join(PLACE, name, 'kerf-and-nap.js').replaceAll('\\', '/')}`);
}

/**
 * Made aside and then put in its place, for two may be started at once.
 * @param {string} name
 */
async function make(name) {
	const aside = join(PLACE, `${name}.${process.pid}`);
	const words = ['build', '--ssr', 'src/cli/kerf-and-nap.ts', '--outDir', aside];
	const settings = ['--config', 'src/cli/vite.config.ts', '--logLevel', 'warn'];
	// Standard output belongs to the answer.
	const stdio = /** @type {const} */ (['ignore', process.stderr, process.stderr]);
	const code = await node(tool('vite'), [...words, ...settings], { stdio: [...stdio] });
	if (code !== 0) {
		process.stderr.write('The command could not be made; the reason stands above.\n');
		process.exit(1);
	}
	try {
		renameSync(aside, join(PLACE, name));
	} catch {
		rmSync(aside, { recursive: true, force: true }); // another was quicker
	}
	for (const old of readdirSync(PLACE))
		if (/^from-source-\w+$/.test(old) && old !== name)
			rmSync(join(PLACE, old), { recursive: true, force: true });
}
