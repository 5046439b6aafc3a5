import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { node, ROOT } from '../../tool.js';
import { digest } from './builds';

/** The files that the page makes as well. */
const FILES = ['print-pack.pdf', 'cutting-list.csv', 'order.csv'] as const;

/** The name of the plan with its figures to twelve digits. */
const TO_TWELVE = 'plan.json to twelve digits';

/**
 * The digest of a plan's text, and of it with each figure to twelve digits: what is worked out by
 * angles, powers and logarithms may differ in the last, for each engine works these out in its own
 * way.
 */
export function digestsOf(plan: string): Record<string, string> {
	const short = plan.replace(/-?\d+\.\d{6,}(e[-+]\d+)?/g, (figure) =>
		Number(figure).toPrecision(12),
	);
	return { 'plan.json': digest(plan), [TO_TWELVE]: digest(short) };
}

/** What the command line leaves of a sample job: the digest of each file. */
export async function commandLineMade(job: string): Promise<Record<string, string>> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-same-'));
	const file = join(ROOT, 'shared', 'jobs', job);
	try {
		await node(join(ROOT, 'src', 'setup', 'run-cli.js'), ['plan', file, '--out', folder], {
			stdio: ['ignore', 'ignore', 'ignore'],
		});
		const files = FILES.map((name) => [name, digest(readFileSync(join(folder, name)))] as const);
		const plan = readFileSync(join(folder, 'plan.json'), 'utf8');
		return { ...Object.fromEntries(files), ...digestsOf(plan) };
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}
