import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT, run } from '../../tool.js';
import type { Asked, Row } from '../row';
import { digestsIn } from './builds';

/** The Node that is held against the one that runs this: of the major version after the next. */
const OTHER = 24;
const QUIET: Parameters<typeof run>[2] = { stdio: ['ignore', 'ignore', 'ignore'] };

/** Every sample job planned by this Node and by a newer one: the same files, byte for byte. */
export async function nodes({ count, note }: Asked): Promise<Row> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-nodes-'));
	try {
		const other = await otherNode(folder);
		const jobs = readdirSync(join(ROOT, 'shared', 'jobs'))
			.filter((name) => name.endsWith('.json'))
			.slice(0, count);
		const found: string[] = [];
		let compared = 0;
		for (const job of jobs) {
			note(`nodes: ${job}`);
			const [own, theirs] = [
				await plannedBy(process.execPath, job, folder),
				await plannedBy(other.program, job, folder),
			];
			const names = [...new Set([...own.keys(), ...theirs.keys()])];
			compared += names.length;
			const differ = names.filter((name) => own.get(name) !== theirs.get(name));
			found.push(...differ.map((name) => `${job}: ${name} is another one`));
			if (names.length === 0) found.push(`${job}: no files`);
		}
		return {
			what: 'files of the command line, by two versions of Node, byte for byte',
			tried: compared,
			survived: compared - found.length,
			found,
			notes: [
				`${jobs.length} sample jobs; Node ${process.version} and ${other.version} on ${process.platform} ${process.arch}`,
			],
			notCovered: 'another processor',
		};
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

/** A newer Node out of the registry's package that holds the program, and nothing to install. */
async function otherNode(folder: string): Promise<{ program: string; version: string }> {
	const name = `node-${process.platform}-${process.arch}@${OTHER}`;
	const wanted = ['pack', name, '--pack-destination', folder];
	if ((await run('npm', wanted, QUIET)) !== 0) throw new Error(`${name} cannot be fetched`);
	const packed = readdirSync(folder).find((file) => file.endsWith('.tgz')) ?? '';
	if ((await run('tar', ['xzf', join(folder, packed), '-C', folder], QUIET)) !== 0)
		throw new Error(`${packed} cannot be unpacked`);
	const about = readFileSync(join(folder, 'package', 'package.json'), 'utf8');
	const { version } = JSON.parse(about) as { readonly version: string };
	return { program: join(folder, 'package', 'bin', 'node'), version: `v${version}` };
}

/** What this Node leaves of the job: the digest of each file. */
async function plannedBy(program: string, job: string, folder: string) {
	const out = join(folder, 'out');
	rmSync(out, { recursive: true, force: true });
	const file = join(ROOT, 'shared', 'jobs', job);
	const cli = join(ROOT, 'src', 'setup', 'run-cli.js');
	await run(program, [cli, 'plan', file, '--out', out], QUIET);
	return digestsIn(out);
}
