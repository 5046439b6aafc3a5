import { describe, expect, it } from 'vitest';
import { mm, ticks } from '../../../src/lib/measure/length';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { packets } from '../../../src/lib/nest/packets';
import { offcutSheets, withPinned } from '../../../src/lib/nest/pinned';
import { nearMisses } from '../../../src/lib/nest/savings';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import { finish, piece, sawProblem, sheet } from './samples';

const budget = { seed: 1, effort: 2000 };

describe('what would save a sheet', () => {
	it('finds the millimetre that is missing', () => {
		// 598.4 + 3.2 + 600 is 1.6 mm more than the sheet is long
		const problem = sawProblem(
			[sheet('S', mm(1200), mm(600), { price: 40 })],
			[piece('A', mm(598.4), mm(600), 1), piece('B', mm(600), mm(600), 1)],
			{ kerf: mm(3.2) },
		);
		const answer = finish(nestSaw(problem, budget));
		expect(answer.cost).toBe(80);
		const found = finish(nearMisses(problem, answer, budget));
		expect(found.map((f) => f.what)).toContain('Make A 2 mm shorter.');
		expect(found.map((f) => f.what)).toContain('Use a blade with a kerf of 1.6 mm.');
		expect(found.map((f) => f.what)).not.toContain('Make A 1 mm shorter.');
		for (const f of found) expect(f.saving).toBe(40);
	});

	it('finds the grain that costs a sheet, and nothing where the plan is proven', () => {
		const problem = sawProblem([sheet('S', 100, 50)], [piece('A', 60, 50), piece('B', 50, 40)]);
		const answer = finish(nestSaw(problem, budget));
		expect(answer.cost).toBe(2);
		const found = finish(nearMisses(problem, answer, budget));
		expect(found).toEqual([
			{ kind: 'grain', pieces: ['B'], what: 'Let B lie across the grain.', saving: 1, sheets: 1 },
			expect.objectContaining({ what: 'Let every piece lie either way of the grain.' }),
		]);
		const tight = sawProblem([sheet('S', 100, 50)], [piece('A', 100, 50, 2)]);
		expect(finish(nearMisses(tight, finish(nestSaw(tight, budget)), budget))).toEqual([]);
	});

	it('tries a size of sheet that is not in the stock', () => {
		const problem = sawProblem([sheet('S', 100, 50, { price: 10 })], [piece('A', 60, 30, 2)]);
		const answer = finish(nestSaw(problem, budget));
		const other = sheet('T', 120, 50, { price: 12 });
		const found = finish(nearMisses(problem, answer, budget, [other]));
		expect(found).toMatchObject([{ kind: 'sheet', saving: 8, sheets: 1 }]);
	});
});

describe('pinned layouts', () => {
	it('leave the rest to be planned, their offcuts first', () => {
		const problem = sawProblem(
			[sheet('S', 100, 50, { price: 10, count: 2 })],
			[piece('A', 60, 50, 2), piece('B', 30, 50, 1)],
		);
		const pinned = finish(nestSaw({ ...problem, pieces: [piece('A', 60, 50, 1)] }, budget)).layouts;
		expect(offcutSheets(pinned[0]!)).toMatchObject([{ length: 40, width: 50, rank: 0, price: 0 }]);
		const rest = withPinned(problem, pinned);
		const answer = finish(nestSaw(rest, budget));
		expect(auditSheets(rest, answer)).toEqual([]);
		expect(answer.unplaced).toEqual([]);
		expect(answer.layouts).toHaveLength(1);
		expect(answer.cost).toBe(10);
		const small = withPinned(
			{ ...problem, pieces: [piece('A', 60, 50, 1), piece('B', 30, 50, 1)] },
			pinned,
		);
		expect(finish(nestSaw(small, budget)).cost).toBe(0);
	});
});

describe('packets', () => {
	it('stack equal sheets no higher than the saw takes, and none unless asked', () => {
		const problem = sawProblem(
			[sheet('S', 100, 50)],
			[piece('A', 50, 50, 10), piece('B', 100, 30)],
		);
		const { layouts } = finish(nestSaw(problem, budget));
		const stacked = packets(layouts, ticks(18), ticks(40));
		expect(stacked.map((p) => p.stacks)).toContainEqual([2, 2, 1]);
		expect(stacked.flatMap((p) => p.layouts).sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5]);
		expect(packets(layouts, ticks(18)).every((p) => p.stacks.every((n) => n === 1))).toBe(true);
	});
});
