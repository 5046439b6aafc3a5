import fc from 'fast-check';
import { runs } from '../../../depth';
import { describe, expect, it } from 'vitest';
import { ColumnLp, type LpColumn } from '../../../../src/lib/nest/saw/proof/column-lp';

function column(amounts: readonly number[], cost: number): LpColumn {
	const rows = [...amounts.keys()].filter((row) => amounts[row] !== 0);
	return {
		rows: Int32Array.from(rows),
		amounts: Int32Array.from(rows, (row) => amounts[row]!),
		cost,
	};
}

/**
 * Needs are shaken by some 1e-5 of themselves so that steps never tie: values are right to that.
 */
const NEAR = 3;

describe('a linear program of columns', () => {
	it('finds the value worked out by hand for bars cut to three lengths', () => {
		/*
		 * Bars of 9 cut to 20 of 4, 10 of 3 and 20 of 2. Ten bars of 4 + 3 + 2, five of 4 + 2 + 2
		 * and two and a half of 4 + 4 are 17.5; worths of 1/2, 1/4 and 1/4 pay for no set more than
		 * its bar, and 20/2 + 10/4 + 20/4 = 17.5 too.
		 */
		const lp = new ColumnLp([20, 10, 20], 3, 100);
		for (const set of [
			[2, 0, 0],
			[1, 1, 1],
			[1, 0, 2],
			[0, 3, 0],
			[0, 1, 3],
			[0, 0, 4],
		])
			lp.columns.push(column(set, 1));
		expect(lp.solve()).toBe(true);
		expect(lp.value).toBeCloseTo(17.5, NEAR);
	});

	it('keeps to limits, and says what one more would save', () => {
		// three of one need: 2 for a cost of 1, but once at most; else 1 for a cost of 1
		const lp = new ColumnLp([3, 1], 1, 50);
		lp.columns.push(column([2, 1], 1), column([1, 0], 1));
		expect(lp.solve()).toBe(true);
		expect(lp.value).toBeCloseTo(2, NEAR);
		expect([...lp.duals]).toEqual([1, -1]);
	});

	it('takes a limit back that is no longer in the way', () => {
		const lp = new ColumnLp([3, 1], 1, 50);
		lp.columns.push(column([2, 1], 1), column([1, 0], 1));
		lp.solve();
		lp.columns.push(column([3, 0], 1));
		expect(lp.solve()).toBe(true);
		expect(lp.value).toBeCloseTo(1, NEAR);
		expect(lp.duals[1]).toBeCloseTo(0, NEAR);
	});

	it('ends with worths that no column beats, and that buy just what the needs cost', () => {
		const any = fc.record({
			need: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 3 }),
			sets: fc.array(
				fc.record({
					amounts: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 3, maxLength: 3 }),
					cost: fc.integer({ min: 1, max: 12 }),
				}),
				{ maxLength: 7 },
			),
		});
		fc.assert(
			fc.property(any, ({ need, sets }) => {
				const lp = new ColumnLp(need, need.length, 40);
				need.forEach((_, row) =>
					lp.columns.push(
						column(
							need.map((_n, i) => +(i === row)),
							12,
						),
					),
				);
				for (const { amounts, cost } of sets)
					lp.columns.push(column(amounts.slice(0, need.length), cost));
				expect(lp.solve()).toBe(true);
				const worthOf = ({ rows, amounts }: LpColumn): number =>
					rows.reduce((sum, row, i) => sum + lp.duals[row]! * amounts[i]!, 0);
				for (const c of lp.columns) expect(worthOf(c)).toBeLessThanOrEqual(c.cost + 1e-6);
				expect(Math.min(...lp.duals)).toBeGreaterThan(-1e-6);
				expect(lp.value).toBeCloseTo(cheapestCorner(need, lp.columns), 2);
			}),
			{ numRuns: runs(200) },
		);
	});
});

/**
 * The least cost by trying every corner: every choice of as many columns or surpluses as there are
 * rows.
 */
function cheapestCorner(need: readonly number[], columns: readonly LpColumn[]): number {
	const m = need.length;
	const full = columns.map((c) => {
		const amounts = need.map((_, row) => c.amounts[c.rows.indexOf(row)] ?? 0);
		return { amounts, cost: c.cost };
	});
	const surplus = need.map((_, row) => ({
		amounts: need.map((_n, i) => (i === row ? -1 : 0)),
		cost: 0,
	}));
	const all = [...full, ...surplus];
	const corner = (chosen: readonly (typeof all)[number][], from: number): number => {
		if (chosen.length === m) return costAt(chosen, need);
		let best = Infinity;
		for (let i = from; i < all.length; i++)
			best = Math.min(best, corner([...chosen, all[i]!], i + 1));
		return best;
	};
	return corner([], 0);
}

/**
 * Cost of meeting the needs with just these columns; Infinity where that takes less than nothing of
 * one.
 */
function costAt(
	chosen: readonly { readonly amounts: readonly number[]; readonly cost: number }[],
	need: readonly number[],
): number {
	const whole = determinant(chosen.map((c) => c.amounts));
	if (whole === 0) return Infinity;
	// Cramer's rule
	const amounts = chosen.map(
		(_, i) => determinant(chosen.map((c, j) => (i === j ? need : c.amounts))) / whole,
	);
	if (Math.min(...amounts) < 0) return Infinity;
	return amounts.reduce((sum, amount, i) => sum + amount * chosen[i]!.cost, 0);
}

function determinant(rows: readonly (readonly number[])[]): number {
	if (rows.length === 1) return rows[0]![0]!;
	return rows[0]!.reduce((sum, first, at) => {
		const minor = rows.slice(1).map((row) => row.filter((_, i) => i !== at));
		return sum + (at % 2 === 0 ? 1 : -1) * first * determinant(minor);
	}, 0);
}
