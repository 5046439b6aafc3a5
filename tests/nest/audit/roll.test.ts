import { describe, expect, it } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { auditRoll } from '../../../src/lib/nest/audit/roll';
import type { Placed, RollAnswer, RollProblem } from '../../../src/lib/nest/types';
import { ONE_WAY, blank, lay, roll } from '../roll/samples';

const problem = roll(40, [blank('a', 20, 15, 2, ONE_WAY), blank('b', 10, 15, 1, ONE_WAY)], {
	gap: ticks(1),
});
const good = lay(problem);

/** The good answer with its first blank changed. */
function withFirst(change: Partial<Placed>): RollAnswer {
	return { ...good, placed: good.placed.map((p, i) => (i === 0 ? { ...p, ...change } : p)) };
}

const words = (p: RollProblem, answer: RollAnswer) =>
	auditRoll(p, answer)
		.map((fault) => fault.what)
		.join(' ');

describe('the auditor of a roll', () => {
	it('finds no fault with a good layout', () => {
		expect(auditRoll(problem, good)).toEqual([]);
	});

	it.each([
		[{ turn: 180 as const }, /turned by 180 degrees, which is not allowed/],
		[{ turn: 90 as const }, /turned by 90 degrees.*own length and width/],
		[{ y: -1 }, /outside the usable width/],
		[{ y: 30 }, /outside the usable width/],
		[{ x: 0.5 }, /not lie on the grid/],
		[{ length: 19 }, /own length and width/],
		[{ y: good.placed[1]!.y }, /closer than the gap/],
		[{ id: 'c' }, /not among the blanks/],
		[{ copy: 5 }, /past the count/],
	])('refuses a blank with %j', (change, fault) => {
		expect(words(problem, withFirst(change))).toMatch(fault);
	});

	it('refuses blanks nearer than the gap by one tick', () => {
		const touching = good.placed.map((p, i) => ({ ...p, x: p.x, y: i === 0 ? p.y : p.y - 1 }));
		expect(words(problem, { ...good, placed: touching })).toMatch(/closer than the gap/);
	});

	it('refuses a blank that is missing, laid twice, or left out without a reason', () => {
		expect(words(problem, { ...good, placed: good.placed.slice(1) })).toMatch(/are wanted/);
		expect(words(problem, { ...good, placed: [...good.placed, good.placed[0]!] })).toMatch(
			/laid twice/,
		);
		expect(words(problem, { ...good, unplaced: [{ id: 'a', count: 1, why: '' }] })).toMatch(
			/No reason/,
		);
	});

	it('refuses a blank off the pattern and one past the end of the roll', () => {
		const third = good.placed.findIndex((p) => p.x > 0);
		expect(third).toBeGreaterThan(0);
		expect(words({ ...problem, repeat: ticks(16) }, good)).toMatch(/not start on the pattern/);
		expect(words({ ...problem, limit: ticks(25) }, good)).toMatch(/beyond the end/);
	});

	it('refuses figures that are not so', () => {
		expect(words(problem, { ...good, length: ticks(good.length + 1) })).toMatch(
			/the last blank ends/,
		);
		expect(words(problem, { ...good, bound: ticks(good.length + 1) })).toMatch(/above the length/);
		expect(words(problem, { ...good, proven: true, bound: ticks(0) })).toMatch(/called proven/);
	});
});
