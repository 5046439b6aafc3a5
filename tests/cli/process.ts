import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { run } from '../../src/cli/run';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const FROM_SOURCE = fileURLToPath(new URL('../../src/setup/run-cli.js', import.meta.url));
const VITE = fileURLToPath(new URL('../../node_modules/vite/bin/vite.js', import.meta.url));

export interface Ended {
	readonly code: number | null;
	readonly out: string;
	readonly err: string;
}

/** What a person's shell gives a command besides its words. */
interface Given {
	readonly input?: string;
	readonly cwd?: string;
}

/**
 * Runs the command line in this very process, with streams of its own: what it answers is the same, and nothing is started.
 * That it is the same when started as a program is seen to in start.test.ts.
 */
export async function runHere(
	args: readonly string[],
	{ input = '', cwd = ROOT }: Given = {},
): Promise<Ended> {
	const before = {
		cwd: process.cwd(),
		in: process.stdin,
		out: process.stdout,
		err: process.stderr,
	};
	const out = new Kept();
	const err = new Kept();
	const stand = (streams: { in: unknown; out: unknown; err: unknown }) =>
		Object.defineProperties(process, {
			stdin: { value: streams.in, configurable: true },
			stdout: { value: streams.out, configurable: true },
			stderr: { value: streams.err, configurable: true },
		});
	process.chdir(cwd);
	stand({ in: Readable.from(input === '' ? [] : [Buffer.from(input)]), out, err });
	try {
		const code = await run(args);
		return { code, out: out.text, err: err.text };
	} finally {
		stand(before);
		process.chdir(before.cwd);
	}
}

/** A stream that keeps what is written to it. */
class Kept extends Writable {
	text = '';
	override _write(chunk: Buffer, _: BufferEncoding, done: () => void): void {
		this.text += chunk.toString();
		done();
	}
}

/** Runs a Node script to its end, as a person's shell would: its own process, its own streams. */
export function runNode(
	script: string,
	args: readonly string[],
	{ input = '', cwd = ROOT }: Given = {},
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
