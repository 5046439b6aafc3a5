import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { node, ROOT, tool } from './tool.js';

/** What the app is made of. */
const SOURCES = [
	'src/app.html',
	'src/app.d.ts',
	'src/service-worker.ts',
	'src/lib',
	'src/routes',
	'src/worker',
	'static',
	'shared',
	'package-lock.json',
	'svelte.config.js',
	'vite.config.ts',
];

/**
 * Builds the app into build/; resolves to the exit code.
 * @param {import('node:child_process').StdioOptions} [stdio]
 */
export function build(stdio = ['ignore', process.stderr, process.stderr]) {
	return node(tool('vite'), ['build', '--logLevel', 'warn'], { stdio });
}

/** Is the built app missing, or older than what it is made of? */
export function isStale() {
	const page = join(ROOT, 'build', 'index.html');
	if (!existsSync(page)) return true;
	const built = statSync(page).mtimeMs;
	return SOURCES.some((source) => newest(join(ROOT, source)) > built);
}

/**
 * @param {string} path
 * @returns {number} when it or anything in it was last changed
 */
export function newest(path) {
	if (!existsSync(path)) return 0;
	const stat = statSync(path);
	if (!stat.isDirectory()) return stat.mtimeMs;
	return readdirSync(path).reduce(
		(latest, name) => Math.max(latest, newest(join(path, name))),
		stat.mtimeMs,
	);
}
