import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the project. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/**
 * The script behind a package's command, so that it runs under this very Node on any system,
 * without a shell.
 * @param {string} packageName
 * @param {string} command
 */
export function tool(packageName, command = packageName) {
	const folder = join(ROOT, 'node_modules', packageName);
	const { bin } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
	return join(folder, typeof bin === 'string' ? bin : bin[command]);
}

/**
 * Runs a program and waits for it; resolves to its exit code, 1 when it could not be started or was
 * ended by a signal.
 * @param {string} program
 * @param {readonly string[]} args
 * @param
 * {{ env?: Record<string, string | undefined>, stdio?: import('node:child_process').StdioOptions,
 * shell?: boolean }} [options]
 * @returns {Promise<number>}
 */
export function run(program, args, { env = {}, stdio = 'inherit', shell = false } = {}) {
	return new Promise((resolve) => {
		const child = spawn(program, [...args], {
			cwd: ROOT,
			env: { ...process.env, ...env },
			stdio,
			shell,
		});
		child.on('error', (error) => {
			process.stderr.write(`${program} could not be started: ${error.message}\n`);
			resolve(1);
		});
		child.on('close', (code) => resolve(code ?? 1));
	});
}

/**
 * Runs a Node script with this Node.
 * @param {string} script
 * @param {readonly string[]} args
 * @param {Parameters<typeof run>[2]} [options]
 */
export function node(script, args, options) {
	return run(process.execPath, [script, ...args], options);
}

/**
 * Runs one of the project's TypeScript files in this process, when it is there.
 * @param {string} file below the project folder
 * @returns {Promise<boolean>} whether there is such a file
 */
export async function runTypeScript(file) {
	const path = join(ROOT, file);
	if (!existsSync(path)) return false;
	const { register } = await import('tsx/esm/api');
	register({ tsconfig: join(ROOT, 'tsconfig.cli.json') });
	await import(`file://${path.replaceAll('\\', '/')}`);
	return true;
}
