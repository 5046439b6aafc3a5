import { describe, expect, test } from 'vitest';
import { answerNest } from '../../src/cli/nest/effort';
import { readNest } from '../../src/cli/nest/problem';
import { type NestAnswer, type NestHand, nestTogether } from '../../src/cli/nest/together';
import { runHere } from './process';

/* Several hands on one problem: no worse than one, and the same again. */

const L = [
	[0, 0],
	[300, 0],
	[300, 80],
	[80, 80],
	[80, 260],
	[0, 260],
];
const outlines = {
	nest: 'roll',
	width: 640,
	gap: 4,
	pieces: [{ id: 'L', outline: L, count: 7, turns: [0, 90, 180, 270] }],
};
const sheets = {
	nest: 'sheets',
	kerf: 3,
	sheets: [{ id: 'S', length: 1200, width: 800, price: 40 }],
	pieces: [
		{ id: 'A', length: 510, width: 330, count: 7 },
		{ id: 'B', length: 270, width: 190, count: 9 },
	],
};
const LIMIT = { seed: 3, effort: 4000, seconds: null };

/** In this process; keeps what was asked. */
function hands(): {
	readonly hand: NestHand;
	readonly asked: { seed: number; effort: number | null }[];
} {
	const asked: { seed: number; effort: number | null; start: boolean }[] = [];
	const hand: NestHand = async (problem, { seed, effort, seconds }) => {
		asked.push({ seed, effort, start: 'start' in problem });
		const read = readNest(structuredClone(problem));
		if ('problems' in read) throw new Error(read.problems[0]!.what);
		return answerNest(read.nest, { seed, effort, seconds }) as NestAnswer;
	};
	return { hand, asked };
}

const still = (answer: NestAnswer | null): object => ({ ...answer, seconds: 0 });

describe('several hands', () => {
	test('on outlines go on from the best of all, each with a seed of its own', async () => {
		const { hand, asked } = hands();
		const answer = await nestTogether(hand, 2, outlines, LIMIT);
		expect(asked).toEqual([
			{ seed: 3, effort: 3200, start: false },
			{ seed: 4, effort: 3200, start: false },
			{ seed: 5, effort: 800, start: true },
			{ seed: 6, effort: 800, start: true },
		]);
		const alone = await hand(outlines, { ...LIMIT, effort: 3200 });
		expect(answer!.length).toBeLessThanOrEqual(alone!.length!);
		expect(answer!.pieces).toHaveLength(7);
	});

	test.each([
		['outlines', outlines],
		['sheets', sheets],
	])('on %s find the same again', async (_, problem) => {
		const once = await nestTogether(hands().hand, 3, problem, LIMIT);
		expect(still(await nestTogether(hands().hand, 3, problem, LIMIT))).toEqual(still(once));
	});

	test('take the cheapest, of equals the lowest seed; one that breaks is done without', async () => {
		const answers: Record<number, NestAnswer | null> = {
			3: null,
			4: answerOf(90, 'four'),
			5: answerOf(80, 'five'),
			6: answerOf(80, 'six'),
		};
		const hand: NestHand = (_, { seed }) => Promise.resolve(answers[seed] ?? null);
		const best = await nestTogether(hand, 4, sheets, LIMIT);
		expect(best).toMatchObject({ cost: 80, layouts: ['five'], effort: 30, seconds: 2 });
		expect(await nestTogether(hand, 1, sheets, LIMIT)).toBeNull();
	});
});

const answerOf = (cost: number, name: string): NestAnswer => ({
	proven: false,
	effort: 10,
	unplaced: [],
	seconds: 2,
	cost,
	layouts: [name],
});

describe('a layout to go on from', () => {
	const nest = (input: object, ...args: string[]) =>
		runHere(['nest', ...args], { input: JSON.stringify(input) });
	const two = { ...outlines, pieces: [{ ...outlines.pieces[0], count: 2 }] };

	test('is the answer until a shorter one is found', async () => {
		const { hand } = hands();
		const long = await hand(outlines, { ...LIMIT, effort: 20_000 });
		const start = long!.pieces!.map(({ id, x, y, turn }) => ({ id, x, y, turn }));
		const short = { ...LIMIT, effort: 1 };
		expect((await hand(outlines, short))!.length).toBeGreaterThan(long!.length!);
		expect((await hand({ ...outlines, start }, short))!.length).toBe(long!.length);
	});

	test.each([
		['too near', [at(0, 0), at(0, 263)], 'start'],
		['outside', [at(0, 0), at(0, 500)], 'start'],
		['one missing', [at(0, 0)], 'start'],
		['one too many', [at(0, 0), at(0, 264), at(304, 0)], 'start'],
		['one there is none of', [at(0, 0), { id: 'M', x: 400, y: 0 }], 'start'],
		['a turn there is none of', [at(0, 0), { ...at(0, 264), turn: 45 }], 'start[1].turn'],
	])('%s: refused', async (_, start, path) => {
		const { code, out, err } = await nest({ ...two, start });
		expect({ code, out }).toEqual({ code: 1, out: '' });
		expect(err).toContain(path);
	});

	function at(x: number, y: number) {
		return { id: 'L', x, y };
	}
});

test('workers are for one problem', async () => {
	const ended = await runHere(['nest', '--lines', '--workers', '2'], { input: '{}' });
	expect(ended.code).toBe(2);
	expect(ended.err).toContain('--lines');
});
