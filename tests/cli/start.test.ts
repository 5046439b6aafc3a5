import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommand, FROM_SOURCE, runHere, runNode } from './process';

/*
 * The command as a person starts it: a program of its own, with its exit code and its streams. The built one lies where there
 * are no packages. What it answers in every case is looked at in plan.test.ts and nest.test.ts, without a start for each.
 */

let folder: string;
let command: string;
beforeAll(async () => {
	folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
	command = await buildCommand(join(folder, 'command'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

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

test('the built command leaves every paper of the sample where it is started, and ends with 0', async () => {
	const ended = await built('plan');
	expect(ended).toMatchObject({ code: 0, err: '' });
	expect(ended.out).toContain('problems  none');
	const out = join(folder, 'out');
	expect(readdirSync(out)).toContain('plan.json');
	expect(readFileSync(join(out, 'print-pack.pdf'), 'latin1')).toMatch(/^%PDF-/);
});

test('the same job, seed and effort give the same plan, built, from source, or within another program', async () => {
	writeFileSync(join(folder, 'shelves.json'), JSON.stringify(job));
	const args = ['plan', 'shelves.json', '--json', '--seed', '7', '--effort', '500'];
	const source = await runNode(FROM_SOURCE, args, { cwd: folder });
	expect(source).toMatchObject({ code: 0, err: '' });
	expect(await built(...args)).toEqual(source);
	expect(await runHere(args, { cwd: folder })).toEqual(source);
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
