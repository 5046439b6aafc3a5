import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { node, ROOT } from '../../tool.js';
import { digest } from './builds';

/** The files that the page makes as well. */
const FILES = ['print-pack.pdf', 'cutting-list.csv', 'order.csv', 'plan.json'] as const;

/** What the command line leaves of a sample job: the digest of each file. */
export async function commandLineMade(job: string): Promise<Record<string, string>> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-same-'));
	const file = join(ROOT, 'shared', 'jobs', job);
	try {
		await node(join(ROOT, 'src', 'setup', 'run-cli.js'), ['plan', file, '--out', folder], {
			stdio: ['ignore', 'ignore', 'ignore'],
		});
		const files = FILES.map((name) => [name, digest(readFileSync(join(folder, name)))] as const);
		return Object.fromEntries(files);
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}
