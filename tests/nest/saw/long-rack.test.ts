import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../../depth';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { sawModel } from '../../../src/lib/nest/saw/model';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import { kindsToOpen } from '../../../src/lib/nest/saw/search/openable';
import { finish, piece, sawProblem, sheet } from './samples';

/* A rack of more remnants than the search looks at one by one. */

const size = fc.tuple(fc.integer({ min: 10, max: 99 }), fc.integer({ min: 10, max: 60 }));
const remnants = (sizes: readonly (readonly [number, number])[]) =>
	sizes.map(([length, width], i) => sheet(`o${i}`, length, width, { price: 0, count: 1, rank: 0 }));
const WHOLE = sheet('S', 100, 70, { price: 40 });

describe('a long rack', () => {
	it('of a few hundred is looked at whole', () => {
		const rack = remnants(Array.from({ length: 255 }, (_, i) => [10 + (i % 90), 10 + (i % 50)]));
		const model = sawModel(sawProblem([...rack, WHOLE], [piece('A', 10, 10)]));
		expect([...kindsToOpen(model)]).toEqual([...model.kinds.keys()]);
	});

	it('keeps for each piece the cheapest that holds it, some larger, and what can be bought', () => {
		fc.assert(
			fc.property(
				fc.array(size, { minLength: 600, maxLength: 900 }),
				fc.array(size, { minLength: 1, maxLength: 5 }),
				(sizes, pieces) => {
					const asked = pieces.map(([length, width], i) => piece(`P${i}`, length, width));
					const { kinds, types, ...rest } = sawModel(
						sawProblem([...remnants(sizes), WHOLE], asked),
					);
					const chosen = new Set(kindsToOpen({ ...rest, kinds, types }));
					const all = [...kinds.keys()];
					const endless = (i: number) => kinds[i]!.count === Infinity;
					for (const i of all) if (endless(i)) expect(chosen).toContain(i);
					for (const { w, h } of types) {
						const fit = all.filter((i) => !endless(i) && kinds[i]!.w >= w && kinds[i]!.h >= h);
						for (const i of fit.slice(0, 8)) expect(chosen).toContain(i);
						if (fit.length > 8) expect(chosen).toContain(fit.at(-1));
					}
					if (kinds.length > 256) expect(chosen.size).toBeLessThanOrEqual(1 + 33 * types.length);
				},
			),
			{ numRuns: runs(30) },
		);
	});

	it('buys nothing where remnants hold every piece, however long it is', () => {
		const rack = remnants(Array.from({ length: 2000 }, (_, i) => [30 + (i % 60), 20 + (i % 40)]));
		const problem = sawProblem(
			[...rack, WHOLE],
			[piece('A', 60, 40, 6), piece('B', 25, 15, 9), piece('C', 100, 70)],
		);
		const answer = finish(nestSaw(problem, { seed: 1, effort: 2000 }));
		expect(auditSheets(problem, answer)).toEqual([]);
		expect(answer.unplaced).toEqual([]);
		expect(answer.cost).toBe(40); // C alone is as large as a whole sheet
	});
});
