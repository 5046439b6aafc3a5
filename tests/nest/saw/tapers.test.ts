import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import type { Outline, Point } from '../../../src/lib/geometry/outline';
import { moved, turned } from '../../../src/lib/geometry/turn';
import { ticks } from '../../../src/lib/measure/length';
import { auditSheets } from '../../../src/lib/nest/audit/audit';
import { taperOf } from '../../../src/lib/nest/saw/pairs';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import type { Piece, Placed } from '../../../src/lib/nest/types';
import { finish, piece, sawProblem, sheet } from './samples';

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

function shapeOf({ outline, length, width }: Piece, { x, y, turn }: Placed): Outline {
	const shift = { 0: [0, 0], 90: [width, 0], 180: [length, width], 270: [0, length] }[turn];
	return moved(turned(outline!, turn), x + shift[0]!, y + shift[1]!);
}

function slantsOf(lain: Outline): string[] {
	return lain.flatMap((p, i) => {
		const q = lain[(i + 1) % lain.length]!;
		return p.x !== q.x && p.y !== q.y ? [key(p, q)] : [];
	});
}

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
				// Longer than the piece, and too narrow for it the other way about half of the
				// time.
				const board = across ? sheet('S', asked.width + 3, 120) : sheet('S', 120, asked.width + 3);
				const problem = sawProblem([board], [asked], { kerf: ticks(1) });
				const answer = finish(nestSaw(problem, { seed: 1, effort: 20 }));
				expect(auditSheets(problem, answer)).toEqual([]);
				const [placed] = answer.layouts[0]!.placed;
				const lain = shapeOf(asked, placed!);
				const slanted = slantsOf(lain);
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
			{ numRuns: runs(200) },
		);
	});
});

describe('two tapered pieces head to tail', () => {
	it('are parted by one slanted cut, and their other slanted sides are cut afterwards', () => {
		fc.assert(
			fc.property(tapers, fc.boolean(), (asked, across) => {
				// The rectangle of the pair is the only one that fits this sheet, whichever way its
				// long side runs.
				const pair = taperOf(asked)!.pair(asked, 1)!;
				fc.pre(pair.length * pair.width < 2 * asked.length * asked.width);
				const [long, wide] = across ? [pair.width, pair.length] : [pair.length, pair.width];
				const problem = sawProblem(
					[sheet('S', long, wide, { count: 1 })],
					[{ ...asked, count: 2 }],
					{ kerf: ticks(1) },
				);
				const answer = finish(nestSaw(problem, { seed: 1, effort: 20 }));
				expect(answer.unplaced).toEqual([]);
				expect(auditSheets(problem, answer)).toEqual([]);
				const { placed, cuts } = answer.layouts[0]!;
				const edges = placed.map((p) => slantsOf(shapeOf(asked, p)));
				const slants = cuts.filter((c) => c.kind === 'slant').map((c) => key(c.from!, c.to!));
				// The parting cut runs along the first piece; the second piece's side lies one kerf
				// beside it.
				expect(slants).toHaveLength(edges.flat().length - 1);
				expect(new Set(slants).size).toBe(slants.length);
				for (const slant of slants) expect(edges.flat()).toContain(slant);
			}),
			{ numRuns: runs(200) },
		);
	});

	it('may be cut without a kerf too, where both halves and what is left of each share a rectangle', () => {
		const outline: Outline = [
			{ x: 0, y: 204 },
			{ x: 374, y: 0 },
			{ x: 456, y: 0 },
		];
		const asked = piece('T', 456, 204, 2, { outline, turns: 'any' });
		const problem = sawProblem([sheet('S', 456, 204, { count: 1 })], [asked], { kerf: ticks(0) });
		const answer = finish(nestSaw(problem, { seed: 1, effort: 20 }));
		expect(answer.unplaced).toEqual([]);
		expect(answer.layouts[0]!.cuts.filter(({ kind }) => kind === 'slant')).toHaveLength(3);
		expect(auditSheets(problem, answer)).toEqual([]);
	});
});
