import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Outline, Point } from '../../src/lib/geometry/outline';
import { moved, turned } from '../../src/lib/geometry/turn';
import { ticks } from '../../src/lib/measure/length';
import { auditSheets } from '../../src/lib/nest/audit';
import { nestSaw } from '../../src/lib/nest/saw';
import { finish, piece, sawProblem, sheet } from './saw-samples';

/** A trapezoid or triangle that fills its rectangle, its parallel sides along x or along y. */
const tapers = fc
	.record({
		long: fc.integer({ min: 20, max: 90 }),
		deep: fc.integer({ min: 5, max: 60 }),
		left: fc.integer({ min: 0, max: 9 }),
		right: fc.integer({ min: 0, max: 9 }),
		atNear: fc.boolean(),
		upright: fc.boolean(),
	})
	.filter(({ left, right }) => left + right > 0)
	.map(({ long, deep, left, right, atNear, upright }) => {
		const whole = [0, long] as const;
		const short = [left, long - right] as const;
		const [near, far] = atNear ? [short, whole] : [whole, short];
		const flat: Outline = [
			{ x: near[0], y: 0 },
			{ x: near[1], y: 0 },
			{ x: far[1], y: deep },
			{ x: far[0], y: deep },
		];
		const outline = upright ? flat.map(({ x, y }) => ({ x: y, y: x })).reverse() : flat;
		return upright
			? piece('T', deep, long, 1, { outline, turns: 'any' })
			: piece('T', long, deep, 1, { outline, turns: 'any' });
	});

const key = (p: Point, q: Point): string => [`${p.x},${p.y}`, `${q.x},${q.y}`].sort().join(' to ');

/** Is a point inside an outline without hollow corners? */
function holds(outline: Outline, at: Point): boolean {
	const sides = outline.map((p, i) => {
		const q = outline[(i + 1) % outline.length]!;
		return (q.x - p.x) * (at.y - p.y) - (q.y - p.y) * (at.x - p.x);
	});
	return sides.every((s) => s >= 0) || sides.every((s) => s <= 0);
}

describe('a tapered piece alone in its rectangle', () => {
	it('has each slanted side cut, the waste named on the side where it falls', () => {
		fc.assert(
			fc.property(tapers, fc.boolean(), (asked, across) => {
				// Longer than the piece, and too narrow for it the other way about half of the time.
				const board = across ? sheet('S', asked.width + 3, 120) : sheet('S', 120, asked.width + 3);
				const problem = sawProblem([board], [asked], { kerf: ticks(1) });
				const answer = finish(nestSaw(problem, { seed: 1, effort: 20 }));
				expect(auditSheets(problem, answer)).toEqual([]);
				const [placed] = answer.layouts[0]!.placed;
				const shift = placed!.turn === 90 ? asked.width : 0;
				const lain = moved(turned(asked.outline!, placed!.turn), placed!.x + shift, placed!.y);
				const slanted = lain.flatMap((p, i) => {
					const q = lain[(i + 1) % lain.length]!;
					return p.x !== q.x && p.y !== q.y ? [key(p, q)] : [];
				});
				const cuts = answer.layouts[0]!.cuts.filter((c) => c.kind === 'slant');
				expect(cuts.map((c) => key(c.from!, c.to!)).sort()).toEqual(slanted.sort());
				for (const cut of cuts) {
					const before = cut.gives[0].kind === 'waste';
					const probe = {
						x: (cut.from!.x + cut.to!.x) / 2 - (cut.runs === 'y' ? 0.01 : 0),
						y: (cut.from!.y + cut.to!.y) / 2 - (cut.runs === 'x' ? 0.01 : 0),
					};
					expect(before).toBe(!holds(lain, probe));
				}
			}),
			{ numRuns: 200 },
		);
	});
});
