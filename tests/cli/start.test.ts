import { spawn } from 'node:child_process';
import {
	existsSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { programPath } from '../../src/setup/programs.js';
import { FROM_SOURCE, packProject, PATIENCE, runHere, runNode } from './process';

/*
 * The command as a person starts it: a program of its own, with its exit code and its streams. It
 * is the packed one, unpacked where no other package lies. What it answers in every case is looked
 * at in plan.test.ts and nest.test.ts, without a start for each.
 */

let folder: string;
let unpacked: string;
let command: string;
beforeAll(async () => {
	folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
	unpacked = await packProject(join(folder, 'packed'));
	command = join(unpacked, bin(unpacked));
}, PATIENCE);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Where the package says its command lies. */
function bin(at: string): string {
	const said = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8')) as {
		bin: Record<string, string>;
	};
	return said.bin['kerf-and-nap'] ?? 'no command named';
}

const built = (...args: string[]) => runNode(command, args, { cwd: folder });

const job = {
	stock: {
		materials: [{ id: 'ply', name: 'Birch 18', nominal: 18, measured: 17.8 }],
		sheets: [{ id: 's', material: 'ply', length: 2440, width: 1220, price: 46 }],
	},
	parts: [{ id: 'a', material: 'ply', length: 900, width: '12 in', count: 2 }],
};
const roll = {
	nest: 'roll',
	width: 1370,
	gap: 0,
	pieces: [{ id: 'B', length: 500, width: 300, count: 4, turns: [0, 90] }],
};

/** A plain nest: two shelves on one sheet. */
const SHEETS = {
	nest: 'sheets',
	method: 'saw',
	kerf: 3,
	trim: 0,
	stages: null,
	sheets: [{ id: 'S', length: 2440, width: 1220, price: 40, count: null }],
	pieces: [{ id: 'A', length: 900, width: 300, count: 2, turns: 'any' }],
};

/** Names and contents of all files below a folder. */
function everyFile(name: string): { name: string; text: string }[] {
	const at = join(folder, name);
	return readdirSync(at, { recursive: true, withFileTypes: true })
		.filter((entry) => entry.isFile())
		.map((entry) => join(entry.parentPath, entry.name))
		.map((path) => ({ name: path.slice(at.length + 1), text: readFileSync(path, 'latin1') }))
		.sort((a, b) => (a.name < b.name ? -1 : 1));
}

describe('the package', () => {
	test('holds the command with its typefaces, the shared data, and nothing else', () => {
		expect(readdirSync(unpacked).sort()).toEqual([
			'LICENSE',
			'README.md',
			'build',
			'dist',
			'package.json',
			'shared',
		]);
		expect(readdirSync(join(unpacked, 'dist', 'cli')).sort()).toEqual([
			'fonts',
			'kerf-and-nap.js',
			'parts',
		]);
		expect(readdirSync(join(unpacked, 'dist', 'cli', 'fonts')).sort()).toEqual([
			'fallback.ttf',
			'regular.ttf',
			'semibold.ttf',
		]);
	});

	test(
		'serves the app it carries, and the documents of a shop beside it',
		async () => {
			const port = String(45_000 + (process.pid % 900));
			const kept = join(folder, 'shop');
			const program = [command, 'shop', '--folder', kept, '--port', port];
			const shop = spawn(process.execPath, program, { cwd: folder });
			let said = '';
			shop.stdout.on('data', (data: Buffer) => (said += data.toString()));
			const gone = new Promise((resolve) => shop.once('close', resolve));
			try {
				await vi.waitFor(() => expect(said).toContain('#join='), { timeout: 30_000 });
				const page = await fetch(`http://localhost:${port}/`);
				expect(await page.text()).toContain('<title>');
				const [script = ''] = readdirSync(join(unpacked, 'build', '_app', 'immutable', 'entry'));
				const entry = await fetch(`http://localhost:${port}/_app/immutable/entry/${script}`);
				expect(entry.status).toBe(200);
				expect(readdirSync(kept).sort()).toContain('documents');
			} finally {
				shop.kill();
				await gone;
			}
		},
		PATIENCE,
	);

	test('has a command that a shell can start', () => {
		expect(readFileSync(command, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
		const keepsRights = process.platform !== 'win32';
		expect(statSync(command).mode & 0o111).toBe(keepsRights ? 0o111 : 0);
	});

	test(
		'plans, checks and nests a job it carries, and writes the plan the source writes',
		async () => {
			const nest = join(folder, 'nest.json');
			writeFileSync(nest, JSON.stringify(SHEETS));
			const file = join(unpacked, 'shared', 'jobs', 'box-slanted-sealed.json');
			const [packed, source, checked, nested] = await Promise.all([
				built('plan', file, '--effort', '500', '--out', 'packed-plan'),
				runNode(FROM_SOURCE, ['plan', file, '--effort', '500', '--out', 'source-plan'], {
					cwd: folder,
				}),
				built('check', file),
				built('nest', nest),
			]);
			expect([packed.code, source.code, checked.code, nested.code]).toEqual([0, 0, 0, 0]);
			expect(everyFile('packed-plan')).toEqual(everyFile('source-plan'));
			expect(everyFile('packed-plan').map(({ name }) => name)).toContain('plan.json');
			expect(nested.out).toContain('"layouts"');
		},
		PATIENCE,
	);
});

test('the built command leaves every paper of the sample where it is started, and ends with 0', async () => {
	const ended = await built('plan', '--effort', '50');
	expect(ended.code).toBe(0);
	// One note, of a corner that the cloth is slit at, and nothing else.
	expect(ended.err).toMatch(/^panels\[2\]: [^\n]*\(a note: nothing is wrong\)\n {4}[^\n]*\n$/);
	expect(ended.out).toContain('problems  none');
	const out = join(folder, 'out');
	expect(readdirSync(out)).toContain('plan.json');
	expect(readFileSync(join(out, 'print-pack.pdf'), 'latin1')).toMatch(/^%PDF-/);
});

test('the same job, seed and effort give the same plan, started or within another program', async () => {
	writeFileSync(join(folder, 'shelves.json'), JSON.stringify(job));
	const args = ['plan', 'shelves.json', '--json', '--seed', '7', '--effort', '500'];
	const started = await built(...args);
	expect(started).toMatchObject({ code: 0, err: '' });
	expect(await runHere(args, { cwd: folder })).toEqual(started);
});

test('problems end with 1 and are told on standard error, wrong usage ends with 2', async () => {
	const parts = [...job.parts, { id: 'b', material: 'oak', length: 1, width: 'wide' }];
	writeFileSync(join(folder, 'faulty.json'), JSON.stringify({ ...job, parts }));
	const faulty = await built('plan', 'faulty.json', '--json');
	expect(faulty.code).toBe(1);
	expect(faulty.err).toContain('parts[1].width: ');
	expect(JSON.parse(faulty.out)).toHaveProperty('parts');
	const wrong = await built('plan', '--colour');
	expect(wrong).toMatchObject({ code: 2, out: '' });
	expect(wrong.err).toContain('--colour');
});

test('a problem comes in by standard input, and its layout goes out', async () => {
	const input = JSON.stringify(roll);
	const ended = await runNode(command, ['nest'], { input });
	expect(ended).toMatchObject({ code: 0, err: '' });
	expect(JSON.parse(ended.out)).toMatchObject({ length: 500, unplaced: [] });
});

test('--lines answers each line before the next one is asked', async () => {
	const child = spawn(process.execPath, [command, 'nest', '--lines', '--effort', '100']);
	const ended = new Promise<number | null>((done) => child.on('close', done));
	const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
	const ask = async (line: string): Promise<unknown> => {
		child.stdin.write(`${line}\n`);
		return JSON.parse((await answers.next()).value as string);
	};
	expect(await ask(JSON.stringify(roll))).toMatchObject({ length: 500 });
	expect(await ask('torn {')).toMatchObject({ problems: [{ path: '' }] });
	expect(await ask(JSON.stringify({ ...roll, width: 700 }))).toMatchObject({ length: 1000 });
	child.stdin.end();
	expect(await ended).toBe(1);
});

describe('a batch, two workers at a time, one of them killed', () => {
	const runner = () => programPath('parallel');
	/** As in the guide; each worker leaves its number where it can be killed by it. */
	const batch = (args: readonly string[], command: string, jobs: readonly string[] = []) => {
		const killable = `sh -c 'echo $$ >> started; exec ${command}' || [ $? -eq 1 ]`;
		const options = ['--will-cite', '--jobs', '2', '--retries', '5', ...args];
		const child = spawn(runner(), [...options, killable, ...jobs], {
			...{ cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] },
		});
		let out = '';
		child.stdout?.on('data', (data: Buffer) => (out += data.toString()));
		return new Promise<{ code: number | null; out: string }>((done) =>
			child.on('close', (code) => done({ code, out })),
		);
	};
	/** The first worker, as soon as there is one; then all that were started. */
	const killFirst = async (): Promise<() => number> => {
		const file = join(folder, 'started');
		rmSync(file, { force: true });
		const started = () =>
			existsSync(file) ? readFileSync(file, 'utf8').split('\n').slice(0, -1) : [];
		const begun = vi.waitFor(() => expect(started().length).toBeGreaterThan(0), 20_000);
		return begun.then(() => {
			process.kill(Number(started()[0]), 'SIGKILL');
			return () => started().length;
		});
	};

	test('plan leaves every job in its folder, a job with problems too', async () => {
		const faulty = {
			...job,
			parts: [...job.parts, { id: 'b', material: 'oak', length: 1, width: 1 }],
		};
		for (const [name, file] of Object.entries({ a: job, b: faulty, c: job }))
			writeFileSync(join(folder, `batch-${name}.json`), JSON.stringify(file));
		const killed = killFirst();
		const ended = batch(
			[],
			`${process.execPath} ${command} plan {}.json --effort 100 --out out-{}`,
			[':::', ...['a', 'b', 'c'].map((name) => `batch-${name}`)],
		);
		const started = await killed;
		expect(await ended).toMatchObject({ code: 0 });
		expect(started()).toBe(4);
		for (const name of ['a', 'b', 'c'])
			expect(readdirSync(join(folder, `out-batch-${name}`))).toContain('plan.json');
	});
});
