import fc from 'fast-check';
import { runs } from '../../../depth';
import { describe, expect, it } from 'vitest';
import { ticks } from '../../../../src/lib/measure/length';
import { Patterns } from '../../../../src/lib/nest/saw/proof/patterns';
import { SetTable } from '../../../../src/lib/nest/saw/proof/set-table';
import { sawModel } from '../../../../src/lib/nest/saw/model';
import { Cutter } from './proof-check';
import { piece, sawProblem, sheet } from '../samples';

const whole = (min: number, max: number) => fc.integer({ min, max }).map(ticks);

const jobs = fc
	.record({
		kerf: whole(0, 2),
		length: whole(6, 12),
		width: whole(5, 9),
		pieces: fc.array(
			fc.record({
				length: whole(1, 7),
				width: whole(1, 5),
				count: fc.constantFrom(1, 1, 2, 3),
				turns: fc.constantFrom<'any' | 'half'>('any', 'half'),
			}),
			{ minLength: 1, maxLength: 4 },
		),
	})
	.map(({ kerf, length, width, pieces }) =>
		sawProblem(
			[sheet('S', length, width)],
			pieces.map((p, i) => piece(`p${i}`, p.length, p.width, p.count, { turns: p.turns })),
			{ kerf },
		),
	);

/** Every set of up to five pieces, as types in rising order. */
function setsOf(demand: Int32Array): Int32Array[] {
	let sets: number[][] = [[]];
	demand.forEach((n, type) => {
		sets = sets.flatMap((set) =>
			Array.from({ length: n + 1 }, (_, k) => [...set, ...Array<number>(k).fill(type)]),
		);
	});
	return sets.filter((s) => s.length > 0 && s.length <= 5).map((s) => Int32Array.from(s));
}

describe('sets of pieces for one sheet', () => {
	it('are those that can be cut from it when every cut is tried', () => {
		fc.assert(
			fc.property(jobs, (problem) => {
				const model = sawModel(problem);
				fc.pre(model.impossible.length === 0);
				const { w, h } = model.kinds[0]!;
				const patterns = new Patterns(model, w, h);
				const seen = { yes: 0, no: 0 };
				for (const types of setsOf(model.demand)) {
					const singles = [...types].map((t) => model.types[t]!.pieces[0]!);
					const cutter = new Cutter(singles, problem.kerf);
					const { length, width } = problem.sheets[0]!;
					const can = cutter.cuts((1 << types.length) - 1, length, width);
					expect(patterns.fits(types, types.length)).toBe(can);
					seen[can ? 'yes' : 'no']++;
				}
				// Every job is compared; only those count that have some sets of either kind.
				fc.pre(Math.min(seen.yes, seen.no) >= 2);
			}),
			{ numRuns: runs(40) },
		);
	});

	it('have as their front the smallest rectangles, none within another', () => {
		// side by side 7 x 4, one on the other 5 x 7; turned, 2 x 4 beside 5 x 3 is no smaller
		const model = sawModel(sawProblem([sheet('S', 20, 20)], [piece('A', 5, 3), piece('B', 2, 4)]));
		const front = new Patterns(model, 20, 20).rectangles(Int32Array.of(0, 1));
		expect([...front]).toEqual([7, 4, 5, 7]);
		// on a sheet 6 long the first is no way
		expect([...new Patterns(model, 6, 20).rectangles(Int32Array.of(0, 1))]).toEqual([5, 7]);
	});

	it('put off a long question and come to the same answer in the end', () => {
		const pieces = Array.from({ length: 9 }, (_, i) => piece(`p${i}`, 3 + i, 12 - i));
		const model = sawModel(sawProblem([sheet('S', 30, 23)], pieces));
		const all = Int32Array.from(model.types.keys());
		const ask = (allowed: number): { answer: boolean; times: number; work: number } => {
			const patterns = new Patterns(model, 30, 23);
			for (let times = 1; ; times++) {
				patterns.pauseAfter(allowed);
				const answer = patterns.fits(all, all.length);
				if (answer !== null) return { answer, times, work: patterns.work };
			}
		};
		const once = ask(Infinity);
		const often = ask(200);
		expect(once.times).toBe(1);
		expect(often.times).toBeGreaterThan(10);
		expect(often.answer).toBe(once.answer);
	});
});

describe('a table of sets', () => {
	it('holds what a map of the same keys holds', () => {
		const key = fc.oneof(
			fc.integer({ min: 1, max: 300 }),
			fc.maxSafeInteger().filter((n) => n > 0),
		);
		fc.assert(
			fc.property(fc.array(key, { maxLength: 8000, size: 'max' }), (keys) => {
				const table = new SetTable();
				const map = new Map<number, number>();
				for (const k of keys) {
					expect(table.get(k)).toBe(map.get(k) ?? -1);
					if (map.has(k)) continue;
					map.set(k, map.size);
					table.add(k, table.size);
				}
				expect(table.size).toBe(map.size);
				for (const [k, value] of map) expect(table.get(k)).toBe(value);
			}),
			{ numRuns: runs(5) },
		);
	});
});
