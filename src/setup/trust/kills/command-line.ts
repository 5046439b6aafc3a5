import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeFiles } from '../../../cli/write-files';
import { random } from '../../../lib/nest';
import { ROOT } from '../../tool.js';
import type { Asked, Row } from '../row';

/** Longest wait after the first plan is written, ms: the writer has long begun to replace it. */
const LONGEST = 150;

/**
 * The command line's way of leaving files, killed while it replaces one plan by the next: under
 * their names stand all files of the old one or all of the new one, and a run after it, which stays
 * alive, leaves all of its own and nothing else.
 */
export async function killedCommands({ seed, count = 200, note }: Asked): Promise<Row> {
	const folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-kills-'));
	const dice = random(seed);
	const found: string[] = [];
	let within = 0;
	for (let n = 0; n < count; n++) {
		const place = join(folder, String(n));
		await killed(place, dice.unit() * LONGEST);
		if (existsSync(join(place, '.kerf-and-nap'))) within++;
		const wrong = wrongWith(place) ?? wrongAfterwards(place);
		if (wrong !== null) found.push(`kill ${n}: ${wrong}`);
		rmSync(place, { recursive: true, force: true });
		note(`kills of the command line ${n + 1} of ${count}`);
	}
	rmSync(folder, { recursive: true, force: true });
	return {
		what: 'command line killed while it writes',
		tried: count,
		survived: count - found.length,
		lost: found.length,
		crashed: found.length,
		found,
		notes: [
			`${within} found it at work on the next plan; after each of all ${count} every name led to the whole of one plan, and the next run left its own whole and nothing of the one that was stopped`,
		],
		notCovered: 'a cut of the power, where the disk itself may keep half',
	};
}

/** Runs the writer of the tests for a while after its first plan, and kills it. */
function killed(place: string, after: number): Promise<void> {
	const child = spawn(process.execPath, ['--import', 'tsx', 'tests/cli/writer.ts', place], {
		cwd: ROOT,
		stdio: ['ignore', 'pipe', 'inherit'],
		env: { ...process.env, TSX_TSCONFIG_PATH: 'tsconfig.cli.json' },
	});
	child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), after));
	return new Promise((resolve) => child.once('close', () => resolve()));
}

/** The writer leaves five files of one number each, repeated; the last is named by that number. */
function wrongWith(place: string): string | null {
	const names = readdirSync(place, { recursive: true, encoding: 'utf8' })
		.filter((name) => !name.startsWith('.') && /\.(pdf|csv|json|svg)$/.test(name))
		.filter((name) => existsSync(join(place, name)));
	const texts = names.map((name) => readFileSync(join(place, name), 'utf8'));
	const [text = ''] = texts;
	if (texts.some((t) => !/^(\d+) (\1 ){1999}$/.test(t))) return 'a torn file';
	if (new Set(texts).size > 1) return 'files of two plans';
	const last = `layouts/sheet-ply-${2 + (parseInt(text, 10) % 2)}.svg`;
	const wanted = ['a.pdf', 'b.csv', 'c.json', 'layouts/sheet-ply-1.svg', last];
	const stand = names.map((name) => name.replaceAll('\\', '/')).sort();
	return stand.join() === wanted.join() ? null : `these stand: ${stand.join(', ') || 'none'}`;
}

/** What is wrong once a run has written again that was not stopped. */
function wrongAfterwards(place: string): string | null {
	const names = ['a.pdf', 'only-next.csv'];
	writeFiles(
		place,
		names.map((name) => ({ name, data: 'next' })),
	);
	const left = readdirSync(place, { recursive: true, withFileTypes: true });
	const plain = left.filter((entry) => entry.isFile()).map(({ name }) => name);
	const wanted = ['.kerf-and-nap-set.json', ...names];
	const told = left.map(({ name }) => name).sort();
	return plain.sort().join() === wanted.join() && told.join() === wanted.join()
		? null
		: `after the next run these stand: ${told.join(', ')}`;
}
