import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { mm, ticks } from '../../../src/lib/measure/length';
import { auditRoll } from '../../../src/lib/nest/audit/roll';
import { nestRoll } from '../../../src/lib/nest/roll/roll';
import { madeStrips, stripProblem } from '../../../src/setup/bench/strip-instances';
import { FREE, ONE_WAY, TWO_WAY, anyRoll, blank, lay, roll, withTurns } from './samples';

describe('a roll layout', () => {
	it('passes the auditor on any problem, and never claims a bound above its length', () => {
		fc.assert(
			fc.property(anyRoll, fc.integer(), (problem, seed) => {
				expect(auditRoll(problem, lay(problem, 60, seed))).toEqual([]);
			}),
			{ numRuns: runs(400) },
		);
	});

	it('is the same for the same seed and effort', () => {
		fc.assert(
			fc.property(anyRoll, (problem) => {
				expect(lay(problem, 40, 7)).toEqual(lay(problem, 40, 7));
			}),
			{ numRuns: runs(40) },
		);
	});

	it('is never longer when the nap is ignored, for blanks that fit both ways', () => {
		const sizes = fc.record({
			length: fc.integer({ min: 1, max: 40 }),
			width: fc.integer({ min: 1, max: 40 }),
		});
		fc.assert(
			fc.property(fc.array(sizes, { minLength: 1, maxLength: 10 }), (all) => {
				const pieces = all.map((s, i) => blank(`b${i}`, s.length, s.width, 1, ONE_WAY));
				const oneWay = lay(roll(40, pieces), 600);
				const free = lay(withTurns(roll(40, pieces), FREE), 600);
				expect(free.length).toBeLessThanOrEqual(oneWay.length);
			}),
			// A search may miss: these problems are always the same ones. The shop is shown the
			// lesser of both answers.
			{ numRuns: runs(60), seed: 1 },
		);
	});

	it('does not depend on the order of the list when the bound is met', () => {
		const pieces = [
			[20, 30],
			[20, 10],
			[15, 40],
			[25, 20],
		].map(([l, w], i) => blank(`b${i}`, l!, w!, 2, ONE_WAY));
		const lengths = [pieces, [...pieces].reverse()].map((list) => lay(roll(40, list), 3000).length);
		expect(lengths[0]).toBe(lengths[1]);
	});

	it('gets better, never worse, while it looks on', () => {
		const pieces = Array.from({ length: 40 }, (_, i) =>
			blank(`b${i}`, 13 + ((i * 37) % 41), 7 + ((i * 53) % 29), 1, ONE_WAY),
		);
		let last = Infinity;
		let reports = 0;
		for (const { best } of nestRoll(roll(80, pieces), { seed: 1, effort: 6000 })) {
			expect(best.length).toBeLessThanOrEqual(last);
			last = best.length;
			reports += 1;
		}
		expect(reports).toBeGreaterThan(2);
	});
});

describe('what a roll layout must respect', () => {
	it('lays thirty blanks at the first answer', () => {
		const pieces = Array.from({ length: 30 }, (_, i) =>
			blank(`b${i}`, mm(300 + 17 * i), mm(200 + 11 * i), 1, ONE_WAY),
		);
		const problem = roll(mm(1370), pieces);
		const first = nestRoll(problem, { seed: 1, effort: 100_000 }).next();
		if (first.done === true) throw new Error('bug: a search ends before its first answer');
		expect(auditRoll(problem, first.value.best)).toEqual([]);
		expect(first.value.best.placed).toHaveLength(30);
		expect(first.value.effort).toBeLessThan(5000); // units: half of what 50 ms give
	});

	it('counts the gap between blanks and not at the ends', () => {
		const row = lay(roll(32, [blank('strip', 10, 10, 6, ONE_WAY)], { gap: ticks(1) }));
		// three across: 10 + 1 + 10 + 1 + 10 = 32; two rows: 10 + 1 + 10
		expect(row.length).toBe(21);
		expect(row.proven).toBe(true);
		expect(lay(roll(31, [blank('strip', 10, 10, 6, ONE_WAY)], { gap: ticks(1) })).length).toBe(32);
	});

	it('turns a one-way blank not even to make it fit', () => {
		const answer = lay(
			roll(20, [blank('long', 10, 30, 1, ONE_WAY), blank('free', 10, 30, 1, FREE)]),
		);
		expect(answer.placed.map((p) => [p.id, p.turn])).toEqual([['free', 90]]);
		expect(answer.unplaced).toEqual([
			{ id: 'long', count: 1, why: expect.stringMatching(/^It is wider than .+\.$/) },
		]);
		expect(answer.proven).toBe(false);
	});

	it('uses no more than is left on the roll, and says what was left out', () => {
		const problem = roll(10, [blank('a', 10, 10, 5, ONE_WAY)], { limit: ticks(35) });
		const answer = lay(problem);
		expect(answer.length).toBe(30);
		expect(answer.unplaced).toEqual([
			{ id: 'a', count: 2, why: expect.stringMatching(/^No room .+\.$/) },
		]);
		const longer = lay(roll(10, [blank('a', 40, 10, 1, ONE_WAY)], { limit: ticks(35) }));
		expect(longer.unplaced[0]!.why).toMatch(/^It is longer than what is left .+\.$/);
	});

	it('starts every blank on a whole repeat, in every second column of a half drop on a half', () => {
		const drop = { repeat: ticks(64), drop: { across: ticks(50) } };
		const problem = roll(100, [blank('panel', 60, 50, 4, ONE_WAY)], drop);
		const answer = lay(problem);
		expect(answer.placed.map((p) => [p.x, p.y])).toEqual([
			[0, 0],
			[32, 50],
			[64, 0],
			[96, 50],
		]);
		expect(lay(roll(100, problem.pieces, { repeat: ticks(64) })).length).toBe(124); // 64 + 60
	});

	it('handles no blank, one blank and thousands of equal ones', () => {
		expect(lay(roll(10, []))).toMatchObject({
			length: 0,
			bound: 0,
			proven: true,
			placed: [],
			unplaced: [],
		});
		expect(lay(roll(10, [blank('a', 7, 3, 1, TWO_WAY)]))).toMatchObject({
			length: 7,
			proven: true,
		});
		const many = lay(roll(100, [blank('a', 7, 30, 3000, TWO_WAY)]));
		expect(many).toMatchObject({ length: 7000, proven: true, unplaced: [] });
	});
});

describe('the bound of a roll', () => {
	it('sees that two blanks wider than half the roll never lie side by side', () => {
		expect(lay(roll(10, [blank('a', 5, 6, 3, ONE_WAY)]))).toMatchObject({
			length: 15,
			bound: 15,
			proven: true,
		});
	});

	it('sees that blanks longer than half the length all cross its middle', () => {
		expect(lay(roll(40, [blank('a', 38, 19, 3, ONE_WAY)]))).toMatchObject({
			length: 76,
			bound: 76,
			proven: true,
		});
	});

	it('is never above the shortest length: strips made without waste', () => {
		for (const made of madeStrips(3, 5)) {
			for (const turned of [false, true]) {
				const answer = lay(stripProblem(made, turned), 300);
				expect(answer.bound).toBeLessThanOrEqual(made.bestFixed);
				expect(answer.bound).toBe(made.bestFixed); // the area alone gives it
			}
		}
	});

	it('holds against what a longer look finds', () => {
		fc.assert(
			fc.property(anyRoll, (problem) => {
				const soon = lay({ ...problem, limit: null }, 0);
				const late = lay({ ...problem, limit: null }, 150, 9);
				expect(soon.bound).toBeLessThanOrEqual(late.length);
			}),
			{ numRuns: runs(300) },
		);
	});

	it('is not fooled when turning would let them lie side by side', () => {
		expect(lay(roll(10, [blank('a', 5, 6, 2, FREE)]))).toMatchObject({ length: 6, proven: true });
	});
});
