import { execFileSync } from 'node:child_process';
import {
	existsSync,
	lstatSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	symlinkSync,
	utimesSync,
	writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { settle } from '../../src/cli/settle';
import { tryFolder, writeFiles } from '../../src/cli/write-files';

/** Steps left before the run is dead; from then on nothing it asks of the disk happens. */
const life = vi.hoisted(() => ({ steps: Infinity, links: true }));

vi.mock('node:fs', async (original) => {
	const fs: Record<string, unknown> = await original();
	const changing = [
		...['writeFileSync', 'renameSync', 'rmSync', 'rmdirSync', 'mkdirSync', 'openSync'],
		...['symlinkSync', 'linkSync', 'copyFileSync'],
	];
	const mortal = (name: string) => {
		const real = fs[name] as (...args: unknown[]) => unknown;
		return (...args: unknown[]) => {
			if (life.steps-- <= 0) throw new Error('dead');
			if (name === 'symlinkSync' && !life.links) throw new Error('EPERM: no right to make links');
			return real(...args);
		};
	};
	const living = Object.fromEntries(changing.map((name) => [name, mortal(name)]));
	// Nobody pulls the plug here, and a disk takes its time.
	return { ...fs, ...living, fsyncSync: () => undefined };
});

const root = mkdtempSync(join(tmpdir(), 'kerf-and-nap-write-'));
let folder: string;
let made = 0;
beforeEach(() => {
	folder = join(root, String(made++));
	mkdirSync(folder);
});
afterEach(() => {
	life.steps = Infinity;
	life.links = true;
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const OLD = [
	'a.pdf',
	'b.csv',
	'layouts/sheet-1.svg',
	'layouts/sheet-2.svg',
	'machine/only-old.dxf',
];
const NEW = ['a.pdf', 'b.csv', 'layouts/sheet-1.svg', 'layouts/only-new.svg'];
const write = (names: readonly string[], text: string): void =>
	writeFiles(
		folder,
		names.map((name) => ({ name, data: `${text} ${name}` })),
	);

/** What stands under every name a person sees, links followed. */
function seen(): Record<string, string> {
	const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
	const shown = names.filter((name) => !name.startsWith('.') && existsSync(join(folder, name)));
	const files = shown.filter((name) => !isFolder(name));
	return Object.fromEntries(files.map((n) => [n, readFileSync(join(folder, n), 'utf8')]));
}
const isFolder = (name: string): boolean => {
	try {
		readdirSync(join(folder, name));
		return true;
	} catch {
		return false;
	}
};
const whole = (names: readonly string[], text: string): Record<string, string> =>
	Object.fromEntries(names.map((name) => [name, `${text} ${name}`]));

/** A run that dies after so many steps; true when it lived to its end. */
function diesAfter(steps: number, work: () => void): boolean {
	life.steps = steps;
	try {
		work();
		return true;
	} catch {
		return false;
	} finally {
		life.steps = Infinity;
	}
}

/** As if the process had another number: the dead one cannot be asked. */
function nobodyIsAtIt(): void {
	const by = join(folder, '.kerf-and-nap', 'by');
	if (existsSync(by)) writeFileSync(by, '');
}

describe('stopped at any step', () => {
	test('every name leads to the old set or every name to the new one, and the next run ends it', () => {
		const found = { old: 0, new: 0 };
		for (let steps = 0, ended = false; !ended; steps++) {
			folder = join(root, `step-${steps}`);
			mkdirSync(folder);
			write(OLD, 'old');
			ended = diesAfter(steps, () => write(NEW, 'new'));
			const now = seen();
			const side = now['a.pdf']?.startsWith('new') === true ? 'new' : 'old';
			expect(now, `after ${steps} steps`).toEqual(
				side === 'new' ? whole(NEW, 'new') : whole(OLD, 'old'),
			);
			found[side]++;
			nobodyIsAtIt();
			settle(folder);
			expect(seen(), `after ${steps} steps, settled`).toEqual(now);
			plainFilesOnly();
			write(NEW, 'next');
			expect(seen()).toEqual(whole(NEW, 'next'));
		}
		expect(found.old).toBeGreaterThan(10);
		expect(found.new).toBeGreaterThan(10);
	});

	test('the finishing too may be stopped at any step', () => {
		const turned = stepsToDoor();
		for (let steps = 0, ended = false; !ended; steps++) {
			folder = join(root, `settle-${steps}`);
			mkdirSync(folder);
			write(OLD, 'old');
			// Dead right after the door was turned, with every name still a link.
			diesAfter(turned, () => write(NEW, 'new'));
			nobodyIsAtIt();
			expect(lstatSync(join(folder, 'a.pdf')).isSymbolicLink()).toBe(true);
			ended = diesAfter(steps, () => settle(folder));
			expect(seen()).toEqual(whole(NEW, 'new'));
			settle(folder);
			expect(seen()).toEqual(whole(NEW, 'new'));
			plainFilesOnly();
		}
	});

	test('where links are not allowed: never two mixed, and the next run gives the new ones', () => {
		for (let steps = 0, ended = false; !ended; steps++) {
			folder = join(root, `linkless-${steps}`);
			mkdirSync(folder);
			write(OLD, 'old');
			life.links = false;
			ended = diesAfter(steps, () => write(NEW, 'new'));
			life.links = true;
			const texts = Object.values(seen()).map((text) => text.slice(0, 3));
			expect(new Set(texts).size, `after ${steps} steps`).toBeLessThanOrEqual(1);
			nobodyIsAtIt();
			settle(folder);
			expect([whole(OLD, 'old'), whole(NEW, 'new')]).toContainEqual(seen());
		}
	});
});

/** Steps of a run up to the moment the door has turned. */
function stepsToDoor(): number {
	for (let steps = 1; ; steps++) {
		folder = join(root, `door-${steps}`);
		mkdirSync(folder);
		write(OLD, 'old');
		diesAfter(steps, () => write(NEW, 'new'));
		if (seen()['a.pdf']?.startsWith('new') === true) return steps;
	}
}

function plainFilesOnly(): void {
	const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
	expect(names.filter((n) => lstatSync(join(folder, n)).isSymbolicLink())).toEqual([]);
	expect(existsSync(join(folder, '.kerf-and-nap'))).toBe(false);
}

describe('only what the list names', () => {
	test('files of the plan before go with it, and their folder with its last one', () => {
		write(OLD, 'old');
		write(NEW, 'new');
		expect(seen()).toEqual(whole(NEW, 'new'));
		expect(existsSync(join(folder, 'machine'))).toBe(false);
	});

	test('a person’s own files stay, however they are called', () => {
		write(OLD, 'old');
		const own = { 'layouts/sheet-mine-1.svg': '<svg/>', 'notes.txt': 'mine', 'machine/x.dxf': '0' };
		for (const [name, text] of Object.entries(own)) writeFileSync(join(folder, name), text);
		write(NEW, 'new');
		expect(seen()).toEqual({ ...whole(NEW, 'new'), ...own });
	});

	test.each([
		['torn', '{"files": ["a.pdf"'],
		['no list', '[]'],
		['no names', '{"files": [7, null]}'],
		[
			'names of others',
			'{"files": ["../outside.txt", "/etc/x.txt", "sub/own.txt", ".hidden.txt", "tool.exe"]}',
		],
	])('a list that is none takes nothing away: %s', (_, text) => {
		const outside = join(root, 'outside.txt');
		writeFileSync(outside, 'outside');
		mkdirSync(join(folder, 'sub'));
		for (const name of ['sub/own.txt', '.hidden.txt', 'tool.exe'])
			writeFileSync(join(folder, name), 'mine');
		writeFileSync(join(folder, '.kerf-and-nap-set.json'), text);
		write(NEW, 'new');
		expect(readFileSync(outside, 'utf8')).toBe('outside');
		for (const name of ['sub/own.txt', '.hidden.txt', 'tool.exe'])
			expect(readFileSync(join(folder, name), 'utf8')).toBe('mine');
		expect(seen()).toMatchObject(whole(NEW, 'new'));
	});

	test('a name that is a link of the person’s gets the file; what it led to stays', () => {
		const elsewhere = join(root, 'elsewhere.csv');
		writeFileSync(elsewhere, 'theirs');
		symlinkSync(elsewhere, join(folder, 'b.csv'));
		write(NEW, 'new');
		expect(seen()).toEqual(whole(NEW, 'new'));
		expect(readFileSync(elsewhere, 'utf8')).toBe('theirs');
	});
});

describe('another run in the same folder', () => {
	/** A run that stands in the middle of its work. */
	function atWork(number: number): void {
		write(OLD, 'old');
		mkdirSync(join(folder, '.kerf-and-nap'));
		writeFileSync(join(folder, '.kerf-and-nap', 'by'), String(number));
	}

	test('is not disturbed, and said', () => {
		atWork(process.ppid);
		expect(() => write(NEW, 'new')).toThrow(/another run \(process \d+\) is writing there/);
		expect(() => tryFolder(folder)).toThrow(/another run/);
		expect(seen()).toEqual(whole(OLD, 'old'));
	});

	test('is finished where it has ended, or its number must be another’s by now', () => {
		const ended = Number(
			execFileSync(process.execPath, ['-p', 'process.pid'], { encoding: 'utf8' }),
		);
		atWork(ended);
		write(NEW, 'new');
		expect(seen()).toEqual(whole(NEW, 'new'));
		atWork(process.ppid);
		utimesSync(join(folder, '.kerf-and-nap'), 1, 1);
		write(NEW, 'newer');
		expect(seen()).toEqual(whole(NEW, 'newer'));
	});
});
