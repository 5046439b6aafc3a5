import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import type { SawProblem, SheetsAnswer } from '../../../src/lib/nest/types';
import { finish, piece, problems, sawProblem, sheet } from './samples';

const solve = (problem: SawProblem, effort = 150): SheetsAnswer =>
	finish(nestSaw(problem, { seed: 1, effort }));

describe('the saw nest on any problem', () => {
	it('gives layouts that pass the audit, from the first one on', () => {
		fc.assert(
			fc.property(problems(false), (problem) => {
				const search = nestSaw(problem, { seed: 1, effort: 60 });
				for (let step = search.next(); ; step = search.next()) {
					expect(auditSheets(problem, step.done ? step.value : step.value.best)).toEqual([]);
					if (step.done) return;
				}
			}),
			{ numRuns: runs(150) },
		);
	});

	it('keeps to the limits of the saw', () => {
		fc.assert(
			fc.property(problems(true), (problem) => {
				expect(auditSheets(problem, solve(problem, 60))).toEqual([]);
			}),
			{ numRuns: runs(150) },
		);
	});

	it('gives the same plan whatever the order of the list', () => {
		fc.assert(
			fc.property(problems(false), fc.integer(), (problem, turn) => {
				const mixed = <T>(list: readonly T[]): T[] =>
					list
						.map((item, i) => ({ item, key: Math.imul(i + 1, turn | 1) }))
						.sort((a, b) => a.key - b.key)
						.map(({ item }) => item);
				const other = { ...problem, pieces: mixed(problem.pieces), sheets: mixed(problem.sheets) };
				const [a, b] = [solve(problem), solve(other)];
				// the very same plan, not only the same cost: the search never sees the order of
				// the list
				expect(b.layouts).toEqual(a.layouts);
				expect(b.cost).toBe(a.cost);
			}),
			{ numRuns: runs(60) },
		);
	});
});

describe('the saw nest on plain cases', () => {
	it('lays nothing when nothing is asked for', () => {
		const answer = solve(sawProblem([sheet('S', 100, 50)], []));
		expect(answer).toMatchObject({ layouts: [], unplaced: [], cost: 0, proven: true });
	});

	it('needs no cut for a piece that is the sheet', () => {
		const answer = solve(sawProblem([sheet('S', 100, 50)], [piece('A', 100, 50)]));
		expect(answer.layouts[0]?.cuts).toEqual([]);
		expect(answer.proven).toBe(true);
	});

	it('counts the kerf between pieces and not beyond the last one', () => {
		const problem = sawProblem([sheet('S', 109, 10)], [piece('A', 10, 10, 10)], { kerf: ticks(1) });
		expect(solve(problem).layouts).toHaveLength(1);
		expect(solve({ ...problem, sheets: [sheet('S', 108, 10)] }).layouts).toHaveLength(2);
	});

	it('works with a kerf wider than the pieces', () => {
		const problem = sawProblem([sheet('S', 50, 50)], [piece('A', 2, 2, 30)], { kerf: ticks(8) });
		const answer = solve(problem);
		expect(auditSheets(problem, answer)).toEqual([]);
		// five in a row: 5 x 2 + 4 x 8 = 42, a sixth would need 52
		expect(answer.layouts).toHaveLength(2);
	});

	it('says why a piece cannot be cut and plans the rest', () => {
		const problem = sawProblem(
			[sheet('S', 100, 50)],
			[piece('long', 120, 10), piece('grain', 40, 90), piece('good', 40, 40)],
		);
		const { unplaced, layouts } = solve(problem);
		expect(layouts.flatMap((l) => l.placed.map((p) => p.id))).toEqual(['good']);
		expect(unplaced.find((u) => u.id === 'long')?.why).toMatch(/more than every sheet gives/);
		expect(unplaced.find((u) => u.id === 'grain')?.why).toMatch(/grain does not allow/);
	});

	it('names what is left when the stock runs out', () => {
		const problem = sawProblem([sheet('S', 10, 10, { count: 2 })], [piece('A', 10, 10, 5)]);
		const { unplaced, layouts, proven } = solve(problem);
		expect(layouts).toHaveLength(2);
		expect(unplaced).toMatchObject([{ id: 'A', count: 3 }]);
		expect(unplaced[0]?.why).toMatch(/used up/);
		expect(proven).toBe(false);
	});

	it('lays thousands of equal pieces', () => {
		const problem = sawProblem([sheet('S', 500, 500)], [piece('A', 9, 9, 4000)], {
			kerf: ticks(1),
		});
		const answer = solve(problem, 400);
		expect(auditSheets(problem, answer)).toEqual([]);
		expect(answer.layouts).toHaveLength(2); // 50 x 50 on a sheet
		expect(answer.proven).toBe(true);
	});

	it('takes offcuts before owned sheets and owned sheets before new ones', () => {
		const problem = sawProblem(
			[
				sheet('buy', 100, 100, { price: 50 }),
				sheet('own', 100, 100, { price: 0, count: 1, rank: 1 }),
				sheet('off', 60, 50, { price: 0, count: 1, rank: 0 }),
			],
			[piece('A', 50, 50, 6)],
		);
		const count = (n: number): string[] =>
			solve({ ...problem, pieces: [piece('A', 50, 50, n)] }).layouts.map((l) => l.sheet);
		expect(count(1)).toEqual(['off']);
		expect(count(4)).toEqual(['own']);
		expect(count(5)).toEqual(['off', 'own']);
		// once a sheet is bought, the offcut saves nothing
		expect(count(6)).toEqual(['own', 'buy']);
	});

	it('gives the same plan for the same seed and effort', () => {
		const sizes = [...'abcdefghijklmnopqrst'].map((id, i) =>
			piece(id, 7 + ((i * 13) % 23), 5 + ((i * 7) % 17), 2),
		);
		const problem = sawProblem([sheet('S', 60, 40)], sizes, { kerf: ticks(1) });
		expect(solve(problem, 300)).toEqual(solve(problem, 300));
	});
});

describe('the saw nest when the question changes', () => {
	const left = (answer: SheetsAnswer): number =>
		answer.unplaced.reduce((sum, u) => sum + u.count, 0);

	/** Lays at least as much, for no more money. */
	function noWorse(now: SheetsAnswer, before: SheetsAnswer): void {
		expect(left(now)).toBeLessThanOrEqual(left(before));
		if (left(now) === left(before)) expect(now.cost).toBeLessThanOrEqual(before.cost);
	}

	it('never costs more for more stock or fewer pieces, at a budget that settles jobs of this size', () => {
		fc.assert(
			fc.property(problems(false), (problem) => {
				const before = solve(problem, 400);
				const { length, price, ...like } = problem.sheets[0]!;
				const extra = {
					...like,
					id: 'extra',
					length: ticks(length + 7),
					price: price + 1,
					count: 2,
				};
				noWorse(solve({ ...problem, sheets: [...problem.sheets, extra] }, 400), before);
				noWorse(solve({ ...problem, pieces: problem.pieces.slice(1) }, 400), before);
			}),
			{ numRuns: runs(40), seed: 11 },
		);
	});

	it('plans the same when the rack gains sheets of no use, at any budget', () => {
		fc.assert(
			fc.property(
				problems(false),
				fc.integer({ min: 1, max: 200 }),
				fc.boolean(),
				(problem, effort, first) => {
					// no piece is that narrow
					const scrap = sheet('scrap', 1, 300, { price: 0, rank: 0 });
					const endless = problem.sheets.filter((s) => s.count === null);
					// as large as one to be had without end, or smaller, and dearer
					const dear = endless.map((s, i) => ({
						...s,
						id: `dear${i}`,
						length: ticks(s.length - (first ? i : 1)),
						price: s.price + 1,
						count: i % 2 === 0 ? null : 1,
					}));
					const added = [scrap, ...dear];
					const sheets = first ? [...added, ...problem.sheets] : [...problem.sheets, ...added];
					const [before, now] = [solve(problem, effort), solve({ ...problem, sheets }, effort)];
					expect(now.layouts).toEqual(before.layouts);
					expect(now.cost).toBe(before.cost);
					expect(now.bound).toEqual(before.bound);
				},
			),
			{ numRuns: runs(60) },
		);
	});

	it('lays tapered ends head to tail where that saves', () => {
		const outline = [
			{ x: 0, y: 0 },
			{ x: 60, y: 0 },
			{ x: 30, y: 40 },
			{ x: 0, y: 40 },
		];
		// two rectangles need 2 x 60 + 2; a pair needs 60 + 30 and the kerf measured along the
		// slant, 2 x 50 / 40, rounded up
		const problem = sawProblem([sheet('S', 93, 40)], [piece('end', 60, 40, 4, { outline })], {
			kerf: ticks(2),
		});
		const answer = solve(problem);
		expect(auditSheets(problem, answer)).toEqual([]);
		expect(answer.layouts).toHaveLength(2);
		expect(answer.proven).toBe(true);
		expect(answer.layouts[0]?.cuts.map((c) => c.kind)).toEqual(['slant']);
		expect(answer.layouts[0]?.placed.map((p) => p.turn)).toEqual([0, 180]);
		const narrow = { ...problem, sheets: [sheet('S', 92, 40)] };
		expect(solve(narrow).layouts).toHaveLength(4);
		const grained = { ...problem, pieces: [piece('end', 60, 40, 4, { outline, turns: 'none' })] };
		expect(solve(grained).layouts).toHaveLength(4);
	});

	it('racks the largest offcut it can and sets the fence no more often than it must', () => {
		const keep = { length: ticks(20), width: ticks(10) };
		const problem = sawProblem(
			[sheet('S', 100, 60)],
			[piece('A', 25, 20, 4), piece('B', 30, 15, 2)],
			{ keep },
		);
		const answer = solve(problem, 4000);
		const areas = answer.layouts[0]!.offcuts.map((o) => o.length * o.width);
		// the pieces cover 2900 of 6000; a full strip of 100 x 25 can be left when the rest lies in
		// 35
		expect(Math.max(...areas)).toBeGreaterThanOrEqual(2500);
		expect(auditSheets(problem, answer)).toEqual([]);
	});

	it('rips before it crosscuts when asked to', () => {
		const ask = (first: SawProblem['first']): string | undefined =>
			solve(sawProblem([sheet('S', 100, 30)], [piece('A', 40, 20, 2)], { first })).layouts[0]
				?.cuts[0]?.kind;
		expect(ask('rip')).toBe('rip');
		expect(ask('cross')).toBe('cross');
	});
});

describe('the auditor', () => {
	const problem = sawProblem(
		[sheet('S', 100, 50)],
		[piece('A', 40, 20, 3), piece('B', 30, 30, 2)],
		{
			kerf: ticks(2),
			keep: { length: ticks(10), width: ticks(10) },
		},
	);
	const good = solve(problem);
	const layout = good.layouts[0]!;
	const faulty = (change: Partial<typeof layout>): number =>
		auditSheets(problem, { ...good, layouts: [{ ...layout, ...change }, ...good.layouts.slice(1)] })
			.length;

	it('passes a good layout', () => {
		expect(auditSheets(problem, good)).toEqual([]);
	});

	it('sees a piece moved by one tick, a copy twice, a missing piece and a forbidden turn', () => {
		const [p, ...rest] = layout.placed;
		expect(faulty({ placed: [{ ...p!, x: p!.x + 1 }, ...rest] })).toBeGreaterThan(0);
		expect(faulty({ placed: [...layout.placed, p!] })).toBeGreaterThan(0);
		expect(faulty({ placed: rest })).toBeGreaterThan(0);
		expect(faulty({ placed: [{ ...p!, turn: 90 }, ...rest] })).toBeGreaterThan(0);
	});

	it('sees a cut moved, left out, out of order or with a wrong fence', () => {
		const [c, ...rest] = layout.cuts;
		expect(faulty({ cuts: [{ ...c!, at: ticks(c!.at + 1) }, ...rest] })).toBeGreaterThan(0);
		expect(faulty({ cuts: rest })).toBeGreaterThan(0);
		expect(faulty({ cuts: [...rest, c!] })).toBeGreaterThan(0);
		expect(faulty({ cuts: [{ ...c!, fence: ticks(c!.fence + 1) }, ...rest] })).toBeGreaterThan(0);
	});

	it('sees offcuts that are not there, wrong money, too many sheets and a bound above the answer', () => {
		expect(faulty({ offcuts: [] })).toBeGreaterThan(0);
		expect(auditSheets(problem, { ...good, cost: 7 })).not.toEqual([]);
		expect(
			auditSheets({ ...problem, sheets: [sheet('S', 100, 50, { count: 0 })] }, good),
		).not.toEqual([]);
		expect(auditSheets(problem, { ...good, bound: { sheets: 9, cost: 9 } })).not.toEqual([]);
	});
});
