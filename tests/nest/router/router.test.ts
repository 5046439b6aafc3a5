import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { checkRouter } from './check';
import { anyRouter, piece, route, router, sheet } from './samples';

describe('a router layout of rectangles', () => {
	it('holds for any problem, possible or not', () => {
		fc.assert(
			fc.property(anyRouter, fc.integer(), (problem, seed) => {
				checkRouter(problem, route(problem, 120, seed));
			}),
			{ numRuns: runs(300) },
		);
	});

	it('is the same for the same seed and effort', () => {
		fc.assert(
			fc.property(anyRouter, (problem) => {
				expect(route(problem, 60, 3)).toEqual(route(problem, 60, 3));
			}),
			{ numRuns: runs(30) },
		);
	});

	it('never costs more when there is more of a sheet to buy', () => {
		const pieces = [piece('a', 30, 20, 5), piece('b', 25, 25, 4), piece('c', 50, 10, 6)];
		const some = route(router([sheet(60, 60, { count: 4 })], pieces, 1), 2000);
		const many = route(router([sheet(60, 60)], pieces, 1), 2000);
		expect(some.unplaced).toEqual([]);
		expect(many.cost).toBeLessThanOrEqual(some.cost);
	});
});

describe('what a router layout must respect', () => {
	it('keeps one bit between pieces and none at the edge of the sheet', () => {
		const three = route(router([sheet(32, 10)], [piece('a', 10, 10, 3)], 1));
		expect(three.layouts).toHaveLength(1);
		expect(three.layouts[0]!.placed.map((p) => p.x)).toEqual([0, 11, 22]);
		expect(route(router([sheet(31, 10)], [piece('a', 10, 10, 3)], 1)).layouts).toHaveLength(2);
	});

	it('takes the trim off before anything is laid', () => {
		const two = ticks(2);
		const trim = { left: two, right: two, bottom: two, top: two };
		const answer = route(router([sheet(24, 14, { trim })], [piece('a', 20, 10)]));
		expect(answer.layouts[0]!.placed[0]).toMatchObject({ x: 2, y: 2 });
		expect(route(router([sheet(23, 14, { trim })], [piece('a', 20, 10)])).unplaced).toHaveLength(1);
	});

	it('lays what only free placement can: five pieces round a pinwheel', () => {
		const wheel = [piece('a', 2, 1, 4), piece('hub', 1, 1)];
		const answer = route(router([sheet(3, 3)], wheel));
		expect(answer.layouts).toHaveLength(1);
		expect(answer.proven).toBe(true);
	});

	it('keeps the grain, and says so when that is why a piece cannot be laid', () => {
		const answer = route(
			router([sheet(20, 40)], [piece('a', 30, 10, 1, 'half'), piece('b', 30, 10)]),
		);
		expect(answer.layouts[0]!.placed.map((p) => [p.id, p.turn])).toEqual([['b', 90]]);
		expect(answer.unplaced).toEqual([{ id: 'a', count: 1, why: expect.stringMatching(/grain/) }]);
	});

	it('uses what is owned before it buys, and the offcut before the sheet', () => {
		const offcut = sheet(20, 20, { id: 'offcut', price: 0, count: 1, rank: 0 });
		const owned = sheet(40, 40, { id: 'owned', price: 0, count: 1, rank: 1 });
		const bought = sheet(40, 40, { id: 'bought' });
		const one = route(router([bought, owned, offcut], [piece('a', 20, 20)]));
		expect(one.layouts.map((l) => l.sheet)).toEqual(['offcut']);
		const two = route(router([bought, owned, offcut], [piece('a', 20, 20), piece('b', 40, 40)]));
		expect(two.layouts.map((l) => l.sheet).sort()).toEqual(['offcut', 'owned']);
		expect(two.cost).toBe(0);
	});

	it('buys the cheaper of two kinds, and a small one for the rest', () => {
		const large = sheet(40, 40, { id: 'large', price: 100 });
		const small = sheet(20, 20, { id: 'small', price: 40 });
		const answer = route(router([large, small], [piece('a', 20, 20, 5)]), 2000);
		expect(answer.layouts.map((l) => l.sheet).sort()).toEqual(['large', 'small']);
		expect(answer.cost).toBe(140);
	});

	it('names the free rectangle worth keeping', () => {
		const answer = route(router([sheet(40, 30)], [piece('a', 40, 10, 1, 'none')], 2));
		expect(answer.layouts[0]!.offcuts).toEqual([{ x: 0, y: 12, length: 40, width: 18 }]);
	});

	it('handles no piece, no sheet and hundreds of equal pieces', () => {
		expect(route(router([sheet(10, 10)], []))).toMatchObject({
			layouts: [],
			cost: 0,
			proven: true,
		});
		expect(route(router([], [piece('a', 5, 5)])).unplaced[0]!.why).toMatch(/no sheet/);
		const many = route(router([sheet(100, 100)], [piece('a', 10, 10, 600)]));
		expect(many).toMatchObject({ proven: true, cost: 600 });
	});
});
