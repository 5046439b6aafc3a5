import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { node, run, tool } from './tool.js';

/**
 * A Chromium for the browser tests: one on the machine, else Debian's package when we may install
 * it, else the test runner's own download. Null, with a message that says what to do, when none of
 * them can be had.
 * @returns {Promise<string | null>}
 */
export async function chromiumPath() {
	const found = onTheMachine() ?? (await ofTheRunner());
	if (found !== null) return found;
	process.stderr.write('No Chromium on this machine: fetching one …\n');
	if (await fromDebian()) return onTheMachine();
	const code = await node(
		tool('@playwright/test', 'playwright'),
		['install', 'chromium'],
		TO_STDERR,
	);
	if (code === 0) return ofTheRunner();
	process.stderr.write(
		'The browser tests need Chromium, and it could not be fetched. Install it (on Debian: apt-get install chromium), ' +
			'or give the path of its program in the environment variable CHROMIUM.\n',
	);
	return null;
}

/** @type {{ stdio: import('node:child_process').StdioOptions }} */
const TO_STDERR = { stdio: ['ignore', process.stderr, process.stderr] };

function onTheMachine() {
	const named = process.env['CHROMIUM'];
	if (named) return existsSync(named) ? named : null;
	const folders = (process.env['PATH'] ?? '').split(delimiter);
	const names = ['chromium', 'chromium-browser'];
	const places = [
		...folders.flatMap((folder) => names.map((name) => join(folder, name))),
		'/usr/bin/chromium',
		'/Applications/Chromium.app/Contents/MacOS/Chromium',
	];
	return places.find((place) => existsSync(place)) ?? null;
}

async function ofTheRunner() {
	const { chromium } = await import('@playwright/test');
	const path = chromium.executablePath();
	return path !== '' && existsSync(path) ? path : null;
}

/** As root on a Debian system; anywhere else this is not ours to do. */
async function fromDebian() {
	if (process.platform !== 'linux' || process.getuid?.() !== 0) return false;
	if (!existsSync('/usr/bin/apt-get')) return false;
	const env = { DEBIAN_FRONTEND: 'noninteractive' };
	await run('apt-get', ['update', '-qq'], { ...TO_STDERR, env });
	const install = ['install', '-y', '-qq', '--no-install-recommends', 'chromium'];
	return (await run('apt-get', install, { ...TO_STDERR, env })) === 0;
}
