import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const FROM_SOURCE = fileURLToPath(new URL('../../src/setup/run-cli.js', import.meta.url));
const VITE = fileURLToPath(new URL('../../node_modules/vite/bin/vite.js', import.meta.url));

export interface Ended {
	readonly code: number | null;
	readonly out: string;
	readonly err: string;
}

/** Runs a Node script to its end, as a person's shell would: its own process, its own streams. */
export function runNode(
	script: string,
	args: readonly string[],
	{ input = '', cwd = ROOT }: { input?: string; cwd?: string } = {},
): Promise<Ended> {
	return new Promise((resolve, reject) => {
		const env = { ...process.env };
		delete env['INIT_CWD']; // as if not started through npm
		const child = spawn(process.execPath, [script, ...args], { cwd, env });
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
