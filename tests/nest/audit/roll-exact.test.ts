import { describe, expect, it } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { auditRoll } from '../../../src/lib/nest/audit/roll';
import type { Placed, RollAnswer, RollProblem } from '../../../src/lib/nest/types';
import { blank, FREE, roll } from '../roll/samples';

/* Layouts of a roll set by hand, right to the tick and one tick off. */

const at = (
	id: string,
	x: number,
	y: number,
	length: number,
	width: number,
	more = {},
): Placed => ({
	...{ id, copy: 0, x, y, length, width, turn: 0 },
	...more,
});
const pair = roll(50, [blank('a', 20, 10, 1, FREE), blank('b', 20, 10, 1, FREE)], {
	gap: ticks(4),
});
function told(problem: RollProblem, placed: readonly Placed[], more: Partial<RollAnswer> = {}) {
	const length = ticks(Math.max(0, ...placed.map((p) => p.x + p.length)));
	const answer = { length, placed, unplaced: [], bound: ticks(0), proven: false, effort: 0 };
	return auditRoll(problem, { ...answer, ...more }).map(({ what }) => what);
}

describe('two blanks', () => {
	const still = at('a', 30, 20, 20, 10);
	it.each([
		['after', 54, 20, 53, 20],
		['before', 6, 20, 7, 20],
		['above', 30, 34, 30, 33],
		['below', 30, 6, 30, 7],
		['askew, after and above', 54, 33, 53, 33],
	])('%s each other: by the gap, and one tick nearer', (_, x, y, u, v) => {
		expect(told(pair, [still, at('b', x, y, 20, 10)])).toEqual([]);
		expect(told(pair, [at('b', x, y, 20, 10), still])).toEqual([]);
		const near = ['They lie closer than the gap.'];
		expect(told(pair, [still, at('b', u, v, 20, 10)])).toEqual(near);
		expect(told(pair, [at('b', u, v, 20, 10), still])).toEqual(near);
	});

	it('may reach the edge of the cloth and the end of the roll, and no farther', () => {
		const ended = { ...pair, limit: ticks(60) };
		const good = [at('a', 0, 0, 20, 10), at('b', 40, 40, 20, 10)];
		expect(told(ended, good)).toEqual([]);
		expect(told(ended, [good[0]!, at('b', 40, 41, 20, 10)]).join()).toMatch(/usable width/);
		expect(told(ended, [at('a', 0, -1, 20, 10), good[1]!]).join()).toMatch(/usable width/);
		expect(told(ended, [at('a', -1, 0, 20, 10), good[1]!]).join()).toMatch(/usable width/);
		const past = told(ended, [good[0]!, at('b', 41, 40, 20, 10)]).join();
		expect(past).toMatch(/beyond the end of the roll/);
		expect(past).toMatch(/longer than the roll/);
	});

	it('turned by a quarter or three have their length across', () => {
		const [a, b] = [at('a', 0, 0, 10, 20, { turn: 90 }), at('b', 14, 0, 10, 20, { turn: 270 })];
		expect(told(pair, [a, b])).toEqual([]);
		const wrong = 'b does not have its own length and width.';
		expect(told(pair, [a, { ...b, turn: 0 }])).toEqual([wrong]);
		expect(told(pair, [a, { ...b, width: 19 }])).toEqual([wrong]);
	});
});

it('names the blank at fault by its place in the answer', () => {
	const placed = [at('a', 0, 0, 20, 10), at('b', 0, 41, 20, 10)];
	const answer = {
		length: ticks(20),
		placed,
		unplaced: [],
		bound: ticks(0),
		proven: false,
		effort: 0,
	};
	expect(auditRoll(pair, answer)).toEqual([
		{ where: 'placed[1]', what: 'b lies outside the usable width.' },
	]);
});

describe('counts', () => {
	const two = roll(50, [blank('a', 20, 10, 2, FREE)]);
	const [first, second] = [at('a', 0, 0, 20, 10), at('a', 0, 10, 20, 10, { copy: 1 })];

	it('every copy once, numbered below the count', () => {
		expect(told(two, [first, second])).toEqual([]);
		expect(told(two, [first, { ...second, copy: 2 }])).toEqual([
			'A copy has a number past the count.',
		]);
		expect(told(two, [first, { ...second, copy: -1 }])).toEqual([
			'A copy has a number past the count.',
		]);
		expect(told(two, [first, { ...second, copy: 0 }])).toEqual(['A copy is laid twice.']);
	});

	it('what is left out is told with its reason', () => {
		const left = (count: number, why: string) => ({ unplaced: [{ id: 'a', count, why }] });
		expect(told(two, [first], left(1, 'No room.'))).toEqual([]);
		expect(told(two, [first], left(2, 'No room.'))).toEqual([
			'2 are wanted; 1 are laid and 2 reported.',
		]);
		expect(told(two, [first], left(1, ' '))).toEqual(['No reason is given for leaving it out.']);
		expect(
			told(two, [], { unplaced: [1, 1].map((n) => left(n, 'No room.').unplaced[0]!) }),
		).toEqual([]);
	});
});

describe('a pattern', () => {
	const one = (more: Partial<RollProblem>, phase?: { along: number; across: number }) => {
		const own = { ...blank('a', 20, 10, 1, FREE), ...(phase ? { phase } : {}) };
		return roll(200, [own as never], more);
	};
	const starts = (problem: RollProblem, x: number, y: number) =>
		told(problem, [at('a', x, y, 20, 10)]).length === 0;
	const where = (problem: RollProblem, ...places: [number, number][]) =>
		places.map(([x, y]) => starts(problem, x, y));

	it('straight: whole repeats along, whole columns across', () => {
		const p = one({ repeat: ticks(32), across: ticks(50) });
		expect(where(p, [0, 0], [64, 150], [31, 0], [33, 0], [0, 49], [0, 51])).toEqual([
			...[true, true, false, false, false, false],
		]);
		expect(where(one({ repeat: ticks(32) }), [32, 7], [16, 7])).toEqual([true, false]);
		expect(where(one({ across: ticks(50) }), [7, 50], [7, 25])).toEqual([true, false]);
	});

	it('half-drop: half a repeat later in every second column', () => {
		const p = one({ repeat: ticks(33), drop: { across: ticks(50) } });
		expect(where(p, [0, 0], [33, 100], [16, 50], [49, 150], [0, 50], [16, 0])).toEqual([
			...[true, true, true, true, false, false],
		]);
	});

	it('of a part that goes on from another: its own place in it', () => {
		const p = one({ repeat: ticks(32), across: ticks(50) }, { along: 10, across: 20 });
		expect(where(p, [10, 20], [42, 70], [0, 20], [10, 0])).toEqual([true, true, false, false]);
		const half = one({ repeat: ticks(32), drop: { across: ticks(50) } }, { along: 10, across: 70 });
		// Its place is in an odd column, that starts 16 later: 10 is 26 on in an even one.
		expect(where(half, [10, 70], [26, 20], [10, 20], [42, 170])).toEqual([
			...[true, true, false, true],
		]);
	});
});

describe('what is claimed', () => {
	const placed = [at('a', 0, 0, 20, 10), at('b', 0, 14, 20, 10)];
	it('is no more than is so', () => {
		expect(told(pair, placed, { bound: ticks(20), proven: true })).toEqual([]);
		expect(told(pair, placed, { bound: ticks(21) })).toEqual(['The bound is above the length.']);
		const proven = 'It is called proven, but the bound is not met or blanks are left.';
		expect(told(pair, placed, { bound: ticks(19), proven: true })).toEqual([proven]);
		const left = { unplaced: [{ id: 'b', count: 1, why: 'No room.' }] };
		expect(told(pair, placed.slice(0, 1), { ...left, bound: ticks(20), proven: true })).toEqual([
			proven,
		]);
		expect(told(pair, placed, { length: ticks(21) })).toEqual([
			'It says 21 ticks; the last blank ends at 20.',
		]);
	});
});
