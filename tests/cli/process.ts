import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Readable, Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { run } from '../../src/cli/run';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const FROM_SOURCE = fileURLToPath(new URL('../../src/setup/run-cli.js', import.meta.url));

/** Milliseconds that building may take on a busy machine; on an idle one it takes three seconds. */
export const PATIENCE = 120_000;

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
 * Runs the command line in this very process, with streams of its own: what it answers is the same,
 * and nothing is started. That it is the same when started as a program is seen to in
 * start.test.ts.
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
	given: Given = {},
): Promise<Ended> {
	return start(process.execPath, [script, ...args], given);
}

function start(
	program: string,
	args: readonly string[],
	{ input = '', cwd = ROOT }: Given = {},
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

/**
 * `npm pack`, which builds the command line first, then unpacked into a folder where no other
 * package lies. Returns the package's own folder.
 */
export async function packProject(folder: string): Promise<string> {
	mkdirSync(folder, { recursive: true });
	const packed = await start('npm', ['pack', '--pack-destination', folder, '--no-update-notifier']);
	if (packed.code !== 0) throw new Error(packed.err);
	const [file, ...more] = readdirSync(folder);
	if (file === undefined || more.length > 0) throw new Error(`not one package: ${packed.out}`);
	const unpacked = await start('tar', ['-xzf', file], { cwd: folder });
	if (unpacked.code !== 0) throw new Error(unpacked.err);
	return join(folder, 'package');
}
