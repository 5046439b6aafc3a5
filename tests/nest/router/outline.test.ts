import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/lib/geometry/extent';
import type { Outline } from '../../../src/lib/geometry/outline';
import { circle, rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { moved } from '../../../src/lib/geometry/turn';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import type { Piece } from '../../../src/lib/nest/types';
import { piece, route, router, sheet } from './samples';
import { stars } from '../../stars';

/** A piece of this outline, moved to its corner. */
function shaped(id: string, points: Outline, count: number, turns: Piece['turns'] = 'any'): Piece {
	const box = bounds(points);
	return {
		...piece(id, box.length, box.width, count, turns),
		outline: moved(points, -box.x, -box.y),
	};
}

const L = [
	{ x: 0, y: 0 },
	{ x: 60_000, y: 0 },
	{ x: 60_000, y: 20_000 },
	{ x: 20_000, y: 20_000 },
	{ x: 20_000, y: 60_000 },
	{ x: 0, y: 60_000 },
];

const star = stars([3000, 30_000], [3, 9]);

describe('outlines laid on sheets', () => {
	it('pass the auditor whatever they are', () => {
		const turns = fc.constantFrom('any', 'half', 'none');
		const kinds = fc.array(fc.record({ star, turns, count: fc.integer({ min: 1, max: 3 }) }), {
			minLength: 1,
			maxLength: 5,
		});
		fc.assert(
			fc.property(kinds, fc.constantFrom(0, 1600), fc.constantFrom(null, 1), (all, bit, count) => {
				const stock = [sheet(90_000, 60_000, { count }), sheet(50_000, 70_000, { price: 60 })];
				const pieces = all.map((k, i) => shaped(`star ${i}`, k.star, k.count, k.turns));
				const problem = router(stock, [...pieces, piece('plain', 9000, 7000, 2)], bit);
				expect(auditSheets(problem, route(problem, 600))).toEqual([]);
			}),
			{ numRuns: runs(25) },
		);
	}, 120_000);

	it('hook into each other where rectangles would need a second sheet', () => {
		// Two L shapes turned against each other take 80 x 60, each alone a square of 60.
		const problem = router([sheet(81_000, 61_000)], [shaped('L', L, 2)], 100);
		const answer = route(problem, 3000);
		expect(answer.layouts).toHaveLength(1);
		expect(auditSheets(problem, answer)).toEqual([]);
	});

	it('keep the grain: turned by half only, two L shapes hook; as given they do not', () => {
		const half = router([sheet(81_000, 81_000)], [shaped('L', L, 2, 'half')], 100);
		expect(route(half, 3000).layouts).toHaveLength(1);
		const none = router([sheet(81_000, 61_000)], [shaped('L', L, 2, 'none')], 100);
		expect(route(none, 3000).layouts).toHaveLength(2);
	});

	it('lay small pieces in the holes of large ones only when that is wanted', () => {
		const ring = {
			...shaped('ring', circle(50_000, 50_000, 50_000), 1),
			holes: [rectangle(25_000, 25_000, 50_000, 50_000)],
		};
		const pieces = [ring, piece('small', 40_000, 40_000, 1)];
		const stock = [sheet(100_000, 100_000)];
		const used = router(stock, pieces, 3200, true);
		expect(route(used, 3000).layouts).toHaveLength(1);
		expect(auditSheets(used, route(used, 3000))).toEqual([]);
		expect(route(router(stock, pieces, 3200, false), 3000).layouts).toHaveLength(2);
	});
});
