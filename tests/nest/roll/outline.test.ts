import { Clipper, FillRule } from 'clipper2-ts';
import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/lib/geometry/extent';
import type { Point } from '../../../src/lib/geometry/outline';
import { circle } from '../../../src/lib/geometry/shaping/tidy';
import { moved } from '../../../src/lib/geometry/turn';
import { ticks } from '../../../src/lib/measure/length';
import { auditRoll } from '../../../src/lib/nest/audit/roll';
import type { Placed, RollAnswer, RollPiece, RollProblem } from '../../../src/lib/nest/types';
import { FREE, ONE_WAY, TWO_WAY, lay, roll } from './samples';
import type { Turns } from './samples';
import { stars } from '../../stars';

/** A blank of this outline, moved to its corner. */
function shaped(id: string, points: readonly Point[], count: number, turns: Turns): RollPiece {
	const box = bounds(points);
	const outline = moved(points, -box.x, -box.y);
	return { id, length: ticks(box.length), width: ticks(box.width), count, turns, outline };
}

const star = stars([3000, 30_000], [3, 9]);

const outlineRoll: fc.Arbitrary<RollProblem> = fc
	.record({
		stars: fc.array(star, { minLength: 1, maxLength: 5 }),
		turns: fc.constantFrom(ONE_WAY, TWO_WAY, FREE),
		gap: fc.constantFrom(0, 1600),
		limit: fc.constantFrom(null, ticks(150_000)),
		width: fc.integer({ min: 40_000, max: 120_000 }),
	})
	.map(({ stars, turns, gap, limit, width }) =>
		roll(
			width,
			stars.map((points, i) => shaped(`star ${i}`, points, 2, turns)),
			{ gap: ticks(gap), limit, by: 'outline' },
		),
	);

/**
 * The corners of a laid blank, worked out here: turned about 0,0, then its bounding corner moved to
 * x, y.
 */
function corners(piece: RollPiece, placed: Placed): Point[] {
	const turn = (p: Point): Point =>
		({
			0: { x: p.x, y: p.y },
			90: { x: -p.y, y: p.x },
			180: { x: -p.x, y: -p.y },
			270: { x: p.y, y: -p.x },
		})[placed.turn];
	const all = piece.outline!.map(turn);
	const left = Math.min(...all.map((p) => p.x));
	const low = Math.min(...all.map((p) => p.y));
	return all.map((p) => ({ x: p.x - left + placed.x, y: p.y - low + placed.y }));
}

function deepestOverlap(problem: RollProblem, answer: RollAnswer): number {
	const paths = answer.placed.map((p) =>
		corners(
			problem.pieces.find((q) => q.id === p.id)!,
			p,
		),
	);
	let most = 0;
	paths.forEach((a, i) =>
		paths.slice(i + 1).forEach((b) => {
			const shared = Clipper.intersect([a], [b], FillRule.NonZero);
			most = Math.max(most, ...shared.map((path) => Math.abs(Clipper.area(path))), 0);
		}),
	);
	return most;
}

describe('outlines laid on a roll', () => {
	it('never overlap, pass the auditor, and need no more than their rectangles', () => {
		fc.assert(
			fc.property(outlineRoll, fc.integer(), (problem, seed) => {
				const answer = lay(problem, 1200, seed);
				expect(auditRoll(problem, answer)).toEqual([]);
				expect(deepestOverlap(problem, answer)).toBe(0);
				// the share rectangles get
				const plain = lay({ ...problem, by: 'rectangle' }, 180, seed);
				const left = (a: RollAnswer) => a.unplaced.reduce((n, u) => n + u.count, 0);
				expect(left(answer)).toBeLessThanOrEqual(left(plain));
				if (left(answer) === left(plain)) expect(answer.length).toBeLessThanOrEqual(plain.length);
			}),
			{ numRuns: runs(25) },
		);
	}, 120_000);

	it('lie head to tail where that is shorter: two triangles in one rectangle', () => {
		const triangle = [
			{ x: 0, y: 0 },
			{ x: 80_000, y: 0 },
			{ x: 0, y: 50_000 },
		];
		const problem = roll(50_000, [shaped('wedge', triangle, 2, TWO_WAY)], { by: 'outline' });
		const answer = lay(problem, 3000);
		expect(answer.length).toBeGreaterThanOrEqual(80_000);
		expect(answer.length).toBeLessThan(81_000);
		expect(answer.placed.map((p) => p.turn).sort((a, b) => a - b)).toEqual([0, 180]);
		const oneWay = { ...problem, pieces: [shaped('wedge', triangle, 2, ONE_WAY)] };
		expect(lay(oneWay, 3000).length).toBeGreaterThan(100_000);
	});

	it('keep the gap between round blanks', () => {
		const disc = circle(20_000, 20_000, 20_000);
		const piece: RollPiece = {
			id: 'disc',
			length: ticks(40_000),
			width: ticks(40_000),
			count: 3,
			turns: FREE,
			outline: disc,
		};
		const problem = roll(70_000, [piece], { by: 'outline', gap: ticks(800) });
		const answer = lay(problem, 3000);
		expect(auditRoll(problem, answer)).toEqual([]);
		const centres = answer.placed.map((p) => ({ x: p.x + 20_000, y: p.y + 20_000 }));
		centres.forEach((a, i) =>
			centres.slice(i + 1).forEach((b) => {
				expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(40_800);
			}),
		);
		expect(answer.length).toBeLessThan(3 * 40_000);
	});

	it('start on the pattern, and lie into each other as far as that lets them', () => {
		const triangle = [
			{ x: 0, y: 0 },
			{ x: 80_000, y: 0 },
			{ x: 0, y: 50_000 },
		];
		const problem = roll(50_000, [shaped('wedge', triangle, 2, TWO_WAY)], {
			by: 'outline',
			repeat: ticks(64_000),
		});
		const answer = lay(problem);
		expect(auditRoll(problem, answer)).toEqual([]);
		// As rectangles they would start at 0 and 128,000.
		expect(answer.placed.map((p) => p.x)).toEqual([0, 64_000]);
	});

	it('on any pattern never overlap, pass the auditor, and need no more than their rectangles', () => {
		const pattern = fc.record({
			repeat: fc.constantFrom(0, 9000, 16_001),
			across: fc.constantFrom(0, 7000, 20_000),
			drops: fc.boolean(),
			along: fc.integer({ min: 0, max: 20_000 }),
		});
		fc.assert(
			fc.property(outlineRoll, pattern, (plain, { repeat, across, drops, along }) => {
				const phase = { along: ticks(along), across: ticks(along >> 1) };
				const problem: RollProblem = {
					...plain,
					pieces: plain.pieces.map((p, i) => (i % 2 === 0 ? p : { ...p, phase })),
					repeat: ticks(repeat),
					...(drops ? { drop: { across: ticks(across) } } : { across: ticks(across) }),
				};
				const answer = lay(problem, 60);
				expect(auditRoll(problem, answer)).toEqual([]);
				expect(deepestOverlap(problem, answer)).toBeLessThan(1);
				// the share rectangles get
				const straight = lay({ ...problem, by: 'rectangle' }, 2);
				const left = (a: RollAnswer): number => a.unplaced.reduce((n, u) => n + u.count, 0);
				expect(left(answer)).toBeLessThanOrEqual(left(straight));
				if (left(answer) === left(straight))
					expect(answer.length).toBeLessThanOrEqual(straight.length);
			}),
			{ numRuns: runs(100) },
		);
	});
});
