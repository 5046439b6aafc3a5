import {
	copyFileSync,
	existsSync,
	mkdirSync,
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
import { carried, jpeg, photographOf } from '../job/photographs/made-pictures';
import { runHere } from './process';

let folder: string;
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: string[]) => runHere(args, { cwd: folder });

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

describe('plan', () => {
	test('the built-in sample, from any folder: every file, a summary, no problem', async () => {
		const ended = await run('plan');
		expect(ended.code).toBe(0);
		// One note, of a corner that the cloth is slit at, and nothing else.
		expect(ended.err).toMatch(/^panels\[2\]: [^\n]*\(a note: nothing is wrong\)\n {4}[^\n]*\n$/);
		expect(ended.out).toMatch(/sheets .*\n[\s\S]*cloth .*\n[\s\S]*to buy .*EUR/);
		expect(ended.out).toContain('problems  none');
		const out = join(folder, 'out');
		expect(readdirSync(out).sort()).toEqual([
			'.kerf-and-nap-set.json',
			'cost-sheet.pdf',
			'counter-lists.pdf',
			'cutting-list.csv',
			'handover.pdf',
			'labels.pdf',
			'layouts',
			'offcuts.csv',
			'order-anybody.csv',
			'order-boards.csv',
			'order-trim.csv',
			'order.csv',
			'parts.csv',
			'plan.json',
			'print-pack.pdf',
			'quote.pdf',
			'shop-card.pdf',
			'templates.pdf',
		]);
		expect(readFileSync(join(out, 'print-pack.pdf'), 'latin1')).toMatch(/^%PDF-/);
		expect(readFileSync(join(out, 'order.csv'), 'utf8')).toMatch(/^\ufeffwhat,code,need,/);
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
		const shelves = job.parts.map((part) => ({ ...part, count: 20 }));
		const many = write('many.json', { ...job, parts: shelves });
		const first = await run('plan', many, '--out', 'mine');
		expect(first.code).toBe(0);
		const layouts = join(folder, 'mine', 'layouts');
		expect(readdirSync(layouts)).toEqual(['sheet-ply-1-x3.svg', 'sheet-ply-4.svg']);
		const file = write('shelves.json', job);
		copyFileSync(join(layouts, 'sheet-ply-4.svg'), join(layouts, 'sheet-mine-1.svg'));
		writeFileSync(join(layouts, 'sheet-own.svg'), '<svg><title>the person’s own</title></svg>');
		writeFileSync(join(layouts, 'notes.txt'), 'the person’s own');
		await run('plan', file, '--out', 'mine');
		expect(readdirSync(layouts)).toEqual([
			'notes.txt',
			'sheet-mine-1.svg',
			'sheet-own.svg',
			'sheet-ply-1.svg',
		]);
		const list = readFileSync(join(folder, 'mine', 'parts.csv'), 'utf8');
		expect(list).toMatch(/^1,Birch 18,a,a,900,304.8,mm,/m);
	});

	test('--machine leaves files for machines, and the next plan without it takes them away', async () => {
		const file = write('shelves.json', { ...job, shop: { method: 'router' } });
		const first = await run('plan', file, '--out', 'cut', '--machine');
		expect(first.out).toContain('5 files for machines');
		expect(readdirSync(join(folder, 'cut', 'machine'))).toEqual([
			...['part-a.dxf', 'part-a.svg', 'read-me.txt'],
			...['sheet-ply-1.dxf', 'sheet-ply-1.svg'],
		]);
		await run('plan', file, '--out', 'cut');
		expect(existsSync(join(folder, 'cut', 'machine'))).toBe(false);
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

	test('says notes, and ends with 0 where there is nothing else', async () => {
		const { materials } = job.stock;
		const off = { ...job, stock: { ...job.stock, materials: [{ ...materials[0], measured: 16 }] } };
		const ended = await run('check', write('noted.json', off));
		expect(ended).toMatchObject({ code: 0, err: '' });
		expect(ended.out).toMatch(
			/^stock\.materials\[0\]\.measured: .* \(a note: nothing is wrong\)\n/,
		);
		const both = await run('check', write('both.json', { ...off, custommer: 'x' }));
		expect(both.code).toBe(1);
		expect(both.out.indexOf('custommer')).toBeLessThan(both.out.indexOf('a note'));
	});

	test('says all of a faulty one', async () => {
		const faulty = { ...job, custommer: 'x', shop: { paper: 'a5' } };
		const ended = await run('check', write('faulty.json', faulty));
		expect(ended.code).toBe(1);
		expect(ended.out).toContain('custommer: ');
		expect(ended.out).toContain('shop.paper: "paper" is "a5".');
	});
});

describe('wrong usage and unreadable files end with 2, say why, and write nothing', () => {
	test.each([
		['no command', [], 'No command'],
		['an unknown command', ['cut'], '"cut"'],
		['an unknown option', ['plan', '--colour'], '--colour'],
		['two files', ['check', 'a.json', 'b.json'], 'one file'],
		['a paper nobody has', ['plan', '--paper', 'a5'], 'a4, letter, a3, tabloid'],
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

	test('a place that cannot be written to is told before anything is planned', async () => {
		const file = write('shelves.json', job);
		write('taken', 'a file, not a folder');
		// An hour's look: it would never come to the writing.
		const ended = await run('plan', file, '--effort', '1000000000', '--out', 'taken/below');
		expect(ended).toMatchObject({ code: 2, out: '' });
		expect(ended.err).toContain('taken/below');
	});

	test('a folder with the name of a file is told while the files of before still lie whole', async () => {
		const file = write('shelves.json', job);
		const out = join(folder, 'blocked');
		mkdirSync(join(out, 'plan.json'), { recursive: true });
		writeFileSync(join(out, 'order.csv'), 'of before');
		const ended = await run('plan', file, '--out', 'blocked');
		expect(ended).toMatchObject({ code: 2, out: '' });
		expect(ended.err).toMatch(/plan\.json is a folder; move it away/);
		expect(readFileSync(join(out, 'order.csv'), 'utf8')).toBe('of before');
		expect(readdirSync(out).sort()).toEqual(['order.csv', 'plan.json']);
	});

	test('prints the pictures a job file carries; without them, or torn, it plans all the same', async () => {
		const picture = jpeg(160, 120);
		const wanted = { shopCard: true, width: 160, height: 120, shows: 'Behind the trim' };
		const photographed = { ...job, photographs: [photographOf(picture, wanted)] };
		const [hash] = Object.keys(carried(picture));
		for (const [name, pictures, code] of [
			['whole', carried(picture), 0],
			['without', {}, 0],
			['torn', { [hash!]: 'AAAA' }, 1],
		] as const) {
			const file = write(`${name}.json`, { ...photographed, pictures });
			const ended = await run('plan', file, '--out', name);
			expect([name, ended.code], ended.err).toEqual([name, code]);
			const card = readFileSync(join(folder, name, 'shop-card.pdf'), 'latin1');
			expect(card.includes('/DCTDecode'), name).toBe(name === 'whole');
			if (name === 'torn')
				expect(ended.err).toContain('This picture cannot be used: it is no JPEG');
		}
	});

	test('--help is no fault', async () => {
		expect(await run('--help')).toMatchObject({ code: 0, err: '' });
	});
});
