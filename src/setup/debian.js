import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from './tool.js';

/*
 * Programs of the system that the tests need: one on the machine, or the one an environment
 * variable names, else Debian's package where we may install it.
 */

/** @type {{ stdio: import('node:child_process').StdioOptions }} */
export const TO_STDERR = { stdio: ['ignore', process.stderr, process.stderr] };

/**
 * @param {string} variable of the environment: the program's path
 * @param {readonly string[]} names
 * @param {readonly string[]} [places] where it may lie beside the usual folders
 * @returns {string | null}
 */
export function onTheMachine(variable, names, places = []) {
	const named = process.env[variable];
	if (named) return existsSync(named) ? named : null;
	const folders = (process.env['PATH'] ?? '').split(delimiter);
	const usual = folders.flatMap((folder) => names.map((name) => join(folder, name)));
	return [...usual, ...places].find((place) => existsSync(place)) ?? null;
}

/**
 * As root on a Debian system; anywhere else this is not ours to do.
 * @param {readonly string[]} packages
 */
export async function fromDebian(packages) {
	if (process.platform !== 'linux' || process.getuid?.() !== 0) return false;
	if (!existsSync('/usr/bin/apt-get')) return false;
	// A service that comes along is not started by it.
	const env = { DEBIAN_FRONTEND: 'noninteractive', RUNLEVEL: '1' };
	await run('apt-get', ['update', '-qq'], { ...TO_STDERR, env });
	const install = ['install', '-y', '-qq', '--no-install-recommends', ...packages];
	return (await run('apt-get', install, { ...TO_STDERR, env })) === 0;
}
