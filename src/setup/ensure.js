import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, run } from './tool.js';

/*
 * Makes a fresh clone ready: installs the packages of the lock when some are missing or of another
 * version. Needs no package itself. Everything it says goes to standard error, since standard
 * output belongs to the answer.
 */

/**
 * Installs what the lock asks for, if that is not there already. Ends the process when it cannot be
 * done.
 */
export async function ensure() {
	if (isInstalled()) return;
	process.stderr.write('Installing packages, once …\n');
	const code = await npmCi();
	if (code === 0 && isInstalled()) return;
	process.stderr.write(
		'The packages could not be installed. Run "npm ci" in the project folder and read what it says.\n',
	);
	process.exit(2);
}

/** npm keeps a record of what it installed beside the packages; it must agree with the lock. */
function isInstalled() {
	const record = join(ROOT, 'node_modules', '.package-lock.json');
	if (!existsSync(record)) return false;
	const installed = packages(record);
	return Object.entries(packages(join(ROOT, 'package-lock.json'))).every(([path, wanted]) => {
		if (path === '') return true;
		const found = installed[path];
		if (found) return found.version === wanted.version && existsSync(join(ROOT, path));
		return wanted.optional === true || wanted.peer === true; // of another system
	});
}

/**
 * @param {string} lock
 * @returns {Record<string, { version?: string, optional?: boolean, peer?: boolean }>}
 */
function packages(lock) {
	try {
		return JSON.parse(readFileSync(lock, 'utf8')).packages ?? {};
	} catch {
		return {};
	}
}

function npmCi() {
	const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
	/** @type {import('node:child_process').StdioOptions} */
	const stdio = ['ignore', process.stderr, process.stderr];
	// Under npm its own script is known; elsewhere the shell finds the command (on Windows it is a
	// batch file).
	const script = process.env['npm_execpath'];
	if (script?.endsWith('.js') || script?.endsWith('.cjs')) {
		return run(process.execPath, [script, ...args], { stdio });
	}
	return run('npm', args, { stdio, shell: process.platform === 'win32' });
}
