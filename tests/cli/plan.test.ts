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
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FROM_SOURCE, packProject, PATIENCE, runNode } from './process';

/*
 * The commands as whoever gets the package has them: packed, unpacked, no other package near.
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

const run = (...args: string[]) => runNode(command, args, { cwd: folder });

/** Where the package says its command lies. */
function bin(at: string): string {
	const said = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8')) as {
		bin: Record<string, string>;
	};
	return said.bin['kerf-and-nap'] ?? 'no command named';
}

function write(name: string, content: unknown): string {
	const text = typeof content === 'string' ? content : JSON.stringify(content);
	writeFileSync(join(folder, name), text);
	return name;
}

const job = {
	name: 'Two shelves',
	stock: {
		materials: [{ id: 'ply', name: 'Birch 18', nominal: 18, measured: 17.8, grain: true }],
		sheets: [{ id: 's', material: 'ply', length: 2440, width: 1220, price: 46 }],
	},
	parts: [{ id: 'a', material: 'ply', length: 900, width: '12 in', count: 2 }],
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
			'dist',
			'package.json',
			'shared',
		]);
		expect(readdirSync(join(unpacked, 'dist', 'cli')).sort()).toEqual(['fonts', 'kerf-and-nap.js']);
		expect(readdirSync(join(unpacked, 'dist', 'cli', 'fonts')).sort()).toEqual([
			'fallback.ttf',
			'regular.ttf',
			'semibold.ttf',
		]);
	});

	test('has a command that a shell can start', () => {
		expect(readFileSync(command, 'utf8')).toMatch(/^#!\/usr\/bin\/env node\n/);
		const keepsRights = process.platform !== 'win32';
		expect(statSync(command).mode & 0o111).toBe(keepsRights ? 0o111 : 0);
	});

	test(
		'plans, checks and nests a job it carries, and writes the plan the source writes',
		async () => {
			const file = join(unpacked, 'shared', 'jobs', 'hatchback-pair.json');
			const [packed, source, checked, nested] = await Promise.all([
				run('plan', file, '--effort', '500', '--out', 'packed-plan'),
				runNode(FROM_SOURCE, ['plan', file, '--effort', '500', '--out', 'source-plan'], {
					cwd: folder,
				}),
				run('check', file),
				run('nest', write('nest.json', SHEETS)),
			]);
			expect([packed.code, source.code, checked.code, nested.code]).toEqual([0, 0, 0, 0]);
			expect(everyFile('packed-plan')).toEqual(everyFile('source-plan'));
			expect(everyFile('packed-plan').map(({ name }) => name)).toContain('plan.json');
			expect(nested.out).toContain('"layouts"');
		},
		PATIENCE,
	);
});

describe('plan', () => {
	test('the built-in sample, from any folder: every file, a summary, no problem', async () => {
		const ended = await run('plan');
		expect(ended).toMatchObject({ code: 0, err: '' });
		expect(ended.out).toMatch(/sheets .*\n[\s\S]*cloth .*\n[\s\S]*to buy .*EUR/);
		expect(ended.out).toContain('problems  none');
		const out = join(folder, 'out');
		expect(readdirSync(out).sort()).toEqual([
			'cutting-list.csv',
			'labels.pdf',
			'layouts',
			'order.csv',
			'plan.json',
			'print-pack.pdf',
			'templates.pdf',
		]);
		expect(readFileSync(join(out, 'print-pack.pdf'), 'latin1')).toMatch(/^%PDF-/);
		expect(readFileSync(join(out, 'order.csv'), 'utf8')).toMatch(/^what,code,need,/);
		const drawings = readdirSync(join(out, 'layouts'));
		expect(drawings.filter((name) => name.startsWith('sheet-'))).not.toEqual([]);
		expect(drawings.filter((name) => name.startsWith('roll-'))).not.toEqual([]);
		for (const drawing of drawings) {
			expect(readFileSync(join(out, 'layouts', drawing), 'utf8')).toMatch(
				/^<svg [\s\S]*<\/svg>\s*$/,
			);
		}
	});

	test('one’s own job into a folder of one’s own; old layouts are cleared away', async () => {
		const file = write('shelves.json', job);
		const first = await run('plan', file, '--out', 'mine');
		expect(first.code).toBe(0);
		const layouts = join(folder, 'mine', 'layouts');
		expect(readdirSync(layouts)).toEqual(['sheet-ply-1.svg']);
		writeFileSync(join(layouts, 'sheet-ply-7.svg'), 'of an older plan');
		writeFileSync(join(layouts, 'notes.txt'), 'the person’s own');
		await run('plan', file, '--out', 'mine');
		expect(readdirSync(layouts)).toEqual(['notes.txt', 'sheet-ply-1.svg']);
		const list = readFileSync(join(folder, 'mine', 'cutting-list.csv'), 'utf8');
		expect(list).toMatch(/^1,Birch 18,,part,,,a,a,900,304.8,/m);
	});

	test('--json prints the plan, lengths in millimetres, and writes nothing', async () => {
		const file = write('shelves.json', job);
		const ended = await run('plan', file, '--json', '--out', 'nowhere');
		expect(ended).toMatchObject({ code: 0, err: '' });
		const plan = JSON.parse(ended.out) as {
			parts: object[];
			boards: { layouts: { pieces: object[] }[] }[];
		};
		expect(plan.parts).toMatchObject([{ length: 900, width: 304.8, count: 2, thickness: 17.8 }]);
		expect(plan.boards[0]!.layouts[0]!.pieces).toHaveLength(2);
		expect(existsSync(join(folder, 'nowhere'))).toBe(false);
	});

	test('the same job, seed and effort give the same plan, built or from source', async () => {
		const file = write('shelves.json', job);
		const args = ['plan', file, '--json', '--seed', '7', '--effort', '500'];
		const [a, b] = await Promise.all([run(...args), runNode(FROM_SOURCE, args, { cwd: folder })]);
		expect(a.out).toBe(b.out);
		expect(a.code).toBe(0);
	});

	test('a faulty job: what can be planned is, every problem is printed with its path, exit code 1', async () => {
		const parts = [...job.parts, { id: 'b', material: 'oak', length: 1, width: 'wide' }, 7];
		const ended = await run('plan', write('faulty.json', { ...job, parts }), '--out', 'faulty');
		expect(ended.code).toBe(1);
		expect(ended.err).toContain('parts[1].width: ');
		expect(ended.err).toContain('"wide"');
		expect(ended.err).toContain('parts[2]: ');
		expect(ended.out).toContain('2 to cut');
		expect(statSync(join(folder, 'faulty', 'print-pack.pdf')).size).toBeGreaterThan(1000);
	});

	test('--paper changes the size of the pages', async () => {
		const file = write('shelves.json', job);
		await run('plan', file, '--paper', 'letter', '--out', 'letter');
		const pdf = readFileSync(join(folder, 'letter', 'print-pack.pdf'), 'latin1');
		expect(pdf).toMatch(/\/MediaBox \[0 0 612\.? ?0* 792\.?0*\]/);
	});
});

describe('check', () => {
	test('says nothing of a sound job', async () => {
		const ended = await run('check', write('shelves.json', job));
		expect(ended).toEqual({ code: 0, out: '', err: '' });
	});

	test('says all of a faulty one', async () => {
		const faulty = { ...job, custommer: 'x', shop: { paper: 'a3' } };
		const ended = await run('check', write('faulty.json', faulty));
		expect(ended.code).toBe(1);
		expect(ended.out).toContain('custommer: ');
		expect(ended.out).toContain('shop.paper: "paper" is "a3".');
	});
});

describe('wrong usage and unreadable files end with 2, say why, and write nothing', () => {
	test.each([
		['no command', [], 'No command'],
		['an unknown command', ['cut'], '"cut"'],
		['an unknown option', ['plan', '--colour'], '--colour'],
		['two files', ['plan', 'a.json', 'b.json'], 'one file'],
		['a paper nobody has', ['plan', '--paper', 'a3'], 'a4 or letter'],
		['a seed that is no number', ['plan', '--seed', 'x'], '--seed'],
		['no such file', ['plan', 'gone.json'], 'no such file'],
		['a folder', ['plan', '.'], 'folder'],
	])('%s', async (_, args, word) => {
		const ended = await run(...args);
		expect(ended.code).toBe(2);
		expect(ended.err).toContain(word);
		expect(ended.out).toBe('');
	});

	test('a torn file, with line and column', async () => {
		const ended = await run('plan', write('torn.json', '{\n\t"name": "x",\n'));
		expect(ended).toMatchObject({ code: 2, out: '' });
		expect(ended.err).toContain('line 3, column 1');
	});

	test('a folder that cannot be written to leaves no half files', async () => {
		const file = write('shelves.json', job);
		write('taken', 'a file, not a folder');
		const ended = await run('plan', file, '--out', 'taken');
		expect(ended).toMatchObject({ code: 2, out: '' });
		expect(ended.err).toContain('taken');
		expect(readFileSync(join(folder, 'taken'), 'utf8')).toBe('a file, not a folder');
	});

	test('--help is no fault', async () => {
		expect(await run('--help')).toMatchObject({ code: 0, err: '' });
	});
});
