import { writeFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { answerNest } from '../../src/cli/nest/effort';
import { readNest } from '../../src/cli/nest/problem';
import { runHere } from './process';

let folder: string;
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'kerf-and-nap-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const nest = (input: unknown, ...args: string[]) =>
	runHere(['nest', ...args], {
		input: typeof input === 'string' ? input : JSON.stringify(input),
	});

interface Piece {
	readonly id: string;
	readonly x: number;
	readonly y: number;
	readonly length: number;
	readonly width: number;
	readonly turn: number;
}
interface Sheets {
	readonly layouts: { sheet: string; pieces: Piece[]; cuts: unknown[]; offcuts: unknown[] }[];
	readonly seconds: number;
}
interface Roll {
	readonly length: number;
	readonly pieces: Piece[];
	readonly seconds: number;
}

const problem = {
	nest: 'sheets',
	method: 'saw',
	kerf: 3.2,
	trim: 0,
	stages: null,
	sheets: [{ id: 'S', length: 2440, width: 1220, price: 40, count: null }],
	pieces: [
		{ id: 'A', length: 600, width: '40 cm', count: 12, turns: 'any' },
		{ id: 'B', length: '23 5/8 in', width: 300, count: 4, turns: 'none' },
	],
};
const roll = {
	nest: 'roll',
	width: 1370,
	gap: 0,
	pieces: [{ id: 'B', length: 500, width: 300, count: 4, turns: [0, 90] }],
};

function apart(a: Piece, b: Piece, gap: number): boolean {
	const near = 1e-6;
	return (
		a.x + a.length + gap <= b.x + near ||
		b.x + b.length + gap <= a.x + near ||
		a.y + a.width + gap <= b.y + near ||
		b.y + b.width + gap <= a.y + near
	);
}

describe('nest', () => {
	test('sheets: the answer has exactly the fields of the contract, and the layout is sound', async () => {
		const ended = await nest(problem, '--effort', '2000');
		expect(ended).toMatchObject({ code: 0, err: '' });
		const answer = JSON.parse(ended.out) as Sheets & Record<string, unknown>;
		expect(Object.keys(answer)).toEqual([
			'layouts',
			'unplaced',
			'cost',
			'bound',
			'proven',
			'effort',
			'seconds',
		]);
		expect(answer).toMatchObject({ unplaced: [], cost: 80, bound: { sheets: 2, cost: 80 } });
		expect(answer['proven']).toBe(true);
		for (const { sheet, pieces, cuts } of answer.layouts) {
			expect(sheet).toBe('S');
			expect(cuts.length).toBeGreaterThan(0);
			for (const [i, a] of pieces.entries()) {
				expect(a.x).toBeGreaterThanOrEqual(0);
				expect(a.x + a.length).toBeLessThanOrEqual(2440);
				expect(a.y + a.width).toBeLessThanOrEqual(1220);
				expect([0, 90, 180, 270]).toContain(a.turn);
				expect(pieces.slice(i + 1).every((b) => apart(a, b, 3.2))).toBe(true);
			}
		}
		const laid = answer.layouts.flatMap((l) => l.pieces);
		expect(laid.filter((p) => p.id === 'A')).toHaveLength(12);
		const upright = laid.filter((p) => p.id === 'B');
		expect(upright.map((p) => [p.length, p.width])).toEqual(Array(4).fill([600.075, 300]));
	});

	test('the same from a file, by router, and with an outline named clockwise and away from 0,0', async () => {
		const file = join(folder, 'problem.json');
		const outline = [
			[10, 10],
			[10, 110],
			[210, 10],
		];
		const pieces = [{ id: 'T', outline, count: 3, turns: 'half' }];
		writeFileSync(file, JSON.stringify({ ...problem, method: 'router', pieces }));
		const ended = await runHere(['nest', file]);
		expect(ended.code).toBe(0);
		const { layouts } = JSON.parse(ended.out) as Sheets;
		expect(layouts.flatMap((l) => l.pieces)).toHaveLength(3);
		expect(layouts[0]!.pieces[0]).toMatchObject({ id: 'T', length: 200, width: 100 });
	});

	test('roll', async () => {
		const ended = await nest(roll);
		expect(ended).toMatchObject({ code: 0, err: '' });
		const answer = JSON.parse(ended.out) as Roll & Record<string, unknown>;
		expect(Object.keys(answer)).toEqual([
			'length',
			'pieces',
			'unplaced',
			'bound',
			'proven',
			'effort',
			'seconds',
		]);
		expect(answer.length).toBe(500);
		expect(answer.pieces).toHaveLength(4);
		expect(answer.pieces.every((p) => p.y + p.width <= 1370)).toBe(true);
	});

	test('what cannot be laid is named, and is an answer', async () => {
		const pieces = [{ id: 'long', length: 3000, width: 100, count: 2 }];
		const ended = await nest({ ...problem, pieces });
		expect(ended.code).toBe(0);
		expect(JSON.parse(ended.out)).toMatchObject({
			layouts: [],
			unplaced: [{ id: 'long', count: 2 }],
			proven: false,
		});
	});

	test('--seconds looks as long as asked, and takes no step once that time is over', async () => {
		const pieces = Array.from({ length: 40 }, (_, i) => ({
			id: `p${i}`,
			length: 200 + ((i * 137) % 600),
			width: 150 + ((i * 211) % 400),
			count: 2,
		}));
		const read = readNest({ ...problem, pieces });
		if ('problems' in read) throw new Error('it is sound');
		// A clock of our own, that goes on by a hundredth of a second whenever it is looked at.
		const secondsOf = (seconds: number): number => {
			let now = 5000;
			return answerNest(read.nest, { seed: 1, effort: null, seconds }, () => (now += 10)).seconds;
		};
		const whole = secondsOf(60);
		expect(whole).toBeGreaterThan(0.1);
		expect(whole).toBeLessThan(60); // proven before its time
		expect(secondsOf(0.05)).toBeGreaterThanOrEqual(0.05);
		expect(secondsOf(0.05)).toBeLessThan(0.1);
		const ended = await nest({ ...problem, pieces }, '--seconds', '0.05');
		expect(ended.code).toBe(0);
		expect((JSON.parse(ended.out) as Sheets).layouts).not.toEqual([]);
	});
});

describe('a faulty problem is refused whole, with paths, on standard error', () => {
	test.each([
		['a missing field', { ...problem, sheets: [{ id: 'S', length: 2440 }] }, 'sheets[0].width'],
		['an unknown field', { ...problem, kerff: 3 }, 'kerff'],
		['a bad length', { ...problem, kerf: 'thin' }, 'kerf'],
		['no kind', { pieces: [] }, 'nest'],
		[
			'a mark used twice',
			{ ...problem, pieces: [roll.pieces[0], roll.pieces[0]] },
			'pieces[0].turns',
		],
		[
			'two sheets of one mark',
			{ ...problem, sheets: [problem.sheets[0], problem.sheets[0]] },
			'sheets[1].id',
		],
		[
			'a turn there is none of',
			{ ...roll, pieces: [{ ...roll.pieces[0], turns: [45] }] },
			'pieces[0].turns[0]',
		],
		['an outline that crosses itself', crossed(), 'pieces[0].outline'],
		[
			'an outline of another size',
			{ ...roll, pieces: [{ ...square(), length: 90 }] },
			'pieces[0].length',
		],
		['more pieces than are laid in seconds', many(5001), 'pieces'],
		['a list', [], 'the file'],
	])('%s', async (_, input, path) => {
		const ended = await nest(input);
		expect(ended).toMatchObject({ code: 1, out: '' });
		expect(ended.err.split('\n').some((line) => line.startsWith(`${path}: `))).toBe(true);
	});

	test('as many pieces as are taken are laid', async () => {
		expect((await nest(many(5000))).code).toBe(0);
	});

	function many(count: number) {
		return { ...roll, pieces: [{ id: 'M', length: 10, width: 10, count }] };
	}

	function square() {
		const outline = [
			[0, 0],
			[100, 0],
			[100, 50],
			[0, 50],
		];
		return { id: 'Q', outline };
	}

	function crossed() {
		const outline = [
			[0, 0],
			[100, 50],
			[100, 0],
			[0, 50],
		];
		return { ...roll, pieces: [{ id: 'X', outline }] };
	}
});

describe('--lines', () => {
	test('an answer a line, in order; a faulty line is answered with its problems; exit code 1', async () => {
		const lines = [roll, { ...roll, width: 'wide' }, 'torn {', { ...roll, width: 700 }];
		const input = lines.map((l) => (typeof l === 'string' ? l : JSON.stringify(l))).join('\n');
		const ended = await nest(input, '--lines', '--effort', '100');
		expect(ended).toMatchObject({ code: 1, err: '' });
		const answers = ended.out
			.trim()
			.split('\n')
			.map((line) => JSON.parse(line) as object);
		expect(answers).toHaveLength(4);
		expect(answers[0]).toMatchObject({ length: 500 });
		expect(answers[1]).toMatchObject({ problems: [{ path: 'width', kind: 'stop' }] });
		expect(answers[2]).toMatchObject({ problems: [{ path: '' }] });
		expect(answers[3]).toMatchObject({ length: 1000 });
	});

	test('all good: exit code 0', async () => {
		const ended = await nest(
			`${JSON.stringify(roll)}\r\n\r\n${JSON.stringify(roll)}\r\n`,
			'--lines',
		);
		expect(ended.code).toBe(0);
		const answers = ended.out
			.trim()
			.split('\n')
			.map((line) => JSON.parse(line) as Roll);
		expect(answers).toHaveLength(2);
		expect(answers.map(({ seconds: _, ...rest }) => rest)[0]).toEqual(
			answers.map(({ seconds: _, ...rest }) => rest)[1],
		);
	});
});
