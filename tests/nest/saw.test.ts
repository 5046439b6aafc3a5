import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ticks } from '../../src/lib/measure/length';
import { auditSheets } from '../../src/lib/nest/audit';
import { nestSaw } from '../../src/lib/nest/saw';
import type { SawProblem, SheetsAnswer } from '../../src/lib/nest/types';
import { finish, piece, problems, sawProblem, sheet } from './saw-samples';

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
			{ numRuns: 150 },
		);
	});

	it('keeps to the limits of the saw', () => {
		fc.assert(
			fc.property(problems(true), (problem) => {
				expect(auditSheets(problem, solve(problem, 60))).toEqual([]);
			}),
			{ numRuns: 150 },
		);
	});

	it('costs the same whatever the order of the list', () => {
		fc.assert(
			fc.property(problems(false), fc.integer(), (problem, turn) => {
				const mixed = <T>(list: readonly T[]): T[] =>
					list
						.map((item, i) => ({ item, key: Math.imul(i + 1, turn | 1) }))
						.sort((a, b) => a.key - b.key)
						.map(({ item }) => item);
				const other = { ...problem, pieces: mixed(problem.pieces), sheets: mixed(problem.sheets) };
				const [a, b] = [solve(problem), solve(other)];
				expect(b.cost).toBe(a.cost);
				expect(b.layouts.length).toBe(a.layouts.length);
			}),
			{ numRuns: 60 },
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
		expect(count(6)).toEqual(['own', 'buy']); // once a sheet is bought, the offcut saves nothing
	});

	it('gives the same plan for the same seed and effort', () => {
		const sizes = [...'abcdefghijklmnopqrst'].map((id, i) =>
			piece(id, 7 + ((i * 13) % 23), 5 + ((i * 7) % 17), 2),
		);
		const problem = sawProblem([sheet('S', 60, 40)], sizes, { kerf: ticks(1) });
		expect(solve(problem, 300)).toEqual(solve(problem, 300));
	});
});
