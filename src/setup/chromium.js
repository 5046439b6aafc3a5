import { existsSync } from 'node:fs';
import { fromDebian, onTheMachine, TO_STDERR } from './debian.js';
import { node, tool } from './tool.js';

/**
 * A Chromium for the browser tests: one on the machine, else Debian's package when we may install
 * it, else the test runner's own download. Null, with a message that says what to do, when none of
 * them can be had.
 * @returns {Promise<string | null>}
 */
export async function chromiumPath() {
	const found = onTheSystem() ?? (await ofTheRunner());
	if (found !== null) return found;
	process.stderr.write('No Chromium on this machine: fetching one …\n');
	if (await fromDebian(['chromium'])) return onTheSystem();
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

const onTheSystem = () =>
	onTheMachine(
		'CHROMIUM',
		['chromium', 'chromium-browser'],
		['/usr/bin/chromium', '/Applications/Chromium.app/Contents/MacOS/Chromium'],
	);

async function ofTheRunner() {
	const { chromium } = await import('@playwright/test');
	const path = chromium.executablePath();
	return path !== '' && existsSync(path) ? path : null;
}
