import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const FROM_SOURCE = fileURLToPath(new URL('../../src/setup/run-cli.js', import.meta.url));
const VITE = fileURLToPath(new URL('../../node_modules/vite/bin/vite.js', import.meta.url));

/** Milliseconds that building may take on a busy machine; on an idle one it takes three seconds. */
export const PATIENCE = 120_000;

export interface Ended {
	readonly code: number | null;
	readonly out: string;
	readonly err: string;
}

interface Around {
	readonly input?: string;
	readonly cwd?: string;
}

/** Runs a Node script to its end, as a person's shell would: its own process, its own streams. */
export function runNode(
	script: string,
	args: readonly string[],
	around: Around = {},
): Promise<Ended> {
	return run(process.execPath, [script, ...args], around);
}

function run(
	program: string,
	args: readonly string[],
	{ input = '', cwd = ROOT }: Around = {},
): Promise<Ended> {
	return new Promise((resolve, reject) => {
		const env = { ...process.env };
		delete env['INIT_CWD']; // as if not started through npm
		// npm is a batch file on Windows, and only a shell starts those.
		const shell = program === 'npm' && process.platform === 'win32';
		const child = spawn(program, [...args], { cwd, env, shell });
		const out: Buffer[] = [];
		const err: Buffer[] = [];
		child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
		child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
		child.on('error', reject);
		child.on('close', (code) =>
			resolve({ code, out: Buffer.concat(out).toString(), err: Buffer.concat(err).toString() }),
		);
		child.stdin.on('error', () => {}); // a command that never reads its input closes it
		child.stdin.end(input);
	});
}

/** `npm run build:cli`, into a folder of its own where no package lies; returns the command's path. */
export async function buildCommand(folder: string): Promise<string> {
	const build = ['build', '--ssr', 'src/cli/kerf-and-nap.ts', '--config', 'src/cli/vite.config.ts'];
	const built = await runNode(VITE, [...build, '--outDir', folder]);
	if (built.code !== 0) throw new Error(built.err);
	return join(folder, 'kerf-and-nap.js');
}

/**
 * `npm pack`, which builds the command line first, then unpacked into a folder where no other
 * package lies. Returns the package's own folder.
 */
export async function packProject(folder: string): Promise<string> {
	mkdirSync(folder, { recursive: true });
	const packed = await run('npm', ['pack', '--pack-destination', folder, '--no-update-notifier']);
	if (packed.code !== 0) throw new Error(packed.err);
	const [file, ...more] = readdirSync(folder);
	if (file === undefined || more.length > 0) throw new Error(`not one package: ${packed.out}`);
	const unpacked = await run('tar', ['-xzf', file], { cwd: folder });
	if (unpacked.code !== 0) throw new Error(unpacked.err);
	return join(folder, 'package');
}
