import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../../depth';
import { bounds } from '../../../src/lib/geometry/extent';
import type { Point } from '../../../src/lib/geometry/outline';
import { moved } from '../../../src/lib/geometry/turn';
import { ticks } from '../../../src/lib/measure/length';
import { auditRoll } from '../../../src/lib/nest/audit/roll';
import type { RollPiece, RollProblem } from '../../../src/lib/nest/types';
import { FREE, ONE_WAY, TWO_WAY, lay, roll, type Turns } from './samples';

/** Corners x, y, x, y ... as a blank, moved to its corner, counter-clockwise. */
function blankOf(id: string, corners: readonly Point[], count: number, turns: Turns): RollPiece {
	const box = bounds(corners);
	const twice = corners.reduce((sum, p, i) => {
		const q = corners[(i + 1) % corners.length]!;
		return sum + p.x * q.y - q.x * p.y;
	}, 0);
	const round = twice > 0 ? corners : [...corners].reverse();
	const outline = moved(round, -box.x, -box.y);
	return { id, length: ticks(box.length), width: ticks(box.width), count, turns, outline };
}

const points = (flat: readonly number[], by = 1): Point[] =>
	Array.from({ length: flat.length / 2 }, (_, i) => ({
		x: by * flat[2 * i]!,
		y: by * flat[2 * i + 1]!,
	}));

/**
 * A rectangle of 60,000 x 40,000 cut along broken lines from edge to edge, so that the pieces hook
 * into each other and fill a roll 40,000 wide over 60,000 exactly.
 */
const JIGSAW: readonly (readonly number[])[] = [
	[0, 0, 25, 0, 20, 10, 26, 18, 0, 22],
	[25, 0, 60, 0, 60, 15, 40, 24, 26, 18, 20, 10],
	[0, 22, 26, 18, 40, 24, 34, 40, 0, 40],
	[60, 15, 60, 40, 34, 40, 40, 24],
];

function jigsaw(by: number, change: (p: Point) => Point): RollProblem {
	const pieces = JIGSAW.map((flat, i) =>
		blankOf(`part ${i}`, points(flat, by).map(change), 1, ONE_WAY),
	);
	return roll(40 * by, pieces, { by: 'outline' });
}

describe('outlines whose shortest length is known by how they were made', () => {
	const same = (p: Point): Point => p;
	it.each([
		['as cut', 1000, same],
		['mirrored along the roll', 1000, (p: Point) => ({ x: -p.x, y: p.y })],
		['mirrored across it', 1000, (p: Point) => ({ x: p.x, y: -p.y })],
		['seven times as large', 7000, same],
		['moved far from where they were drawn', 1000, (p: Point) => ({ x: p.x + 1e6, y: p.y - 3e5 })],
	])('a rectangle in four hooked parts, %s', (_, by, change) => {
		const problem = jigsaw(by, change);
		const answer = lay(problem, 6000);
		expect(auditRoll(problem, answer)).toEqual([]);
		expect(answer.bound).toBe(60 * by);
		expect(answer.length).toBeGreaterThanOrEqual(60 * by);
		expect(answer.length).toBeLessThan(60 * by * 1.01);
	});

	it('steps that hook into each other, gaps between them counted', () => {
		const step = points([0, 0, 40, 0, 40, 10, 20, 10, 20, 20, 0, 20], 1000);
		const gap = 500;
		const problem = roll(20_000 + gap + 4, [blankOf('step', step, 2, TWO_WAY)], {
			by: 'outline',
			gap: ticks(gap),
		});
		const answer = lay(problem, 6000);
		expect(auditRoll(problem, answer)).toEqual([]);
		// turned by half the second starts at the first one's step: one gap is lost each way, and
		// the two ticks that the search keeps for the grid
		expect(answer.length).toBeGreaterThanOrEqual(60_000 + gap);
		expect(answer.length).toBeLessThanOrEqual(60_000 + gap + 8);
	});

	it('the same seed and effort give the same answer, whatever ran before', () => {
		const problem = jigsaw(1000, same);
		const first = lay(problem, 1500, 7);
		lay(problem, 700, 8);
		expect(lay(problem, 1500, 7)).toEqual(first);
	});
});

describe('odd outlines', () => {
	const square = points([0, 0, 10, 0, 10, 10, 0, 10], 1000);
	const odd: readonly (readonly [string, readonly Point[], readonly number[]])[] = [
		[
			'corners on straight edges',
			[...points([0, 0, 5, 0, 10, 0, 10, 5, 10, 10, 0, 10], 1000)],
			[2],
		],
		['a sliver one tick wide', points([0, 0, 30_000, 0, 30_000, 1, 0, 1]), [3]],
		['a needle', points([0, 0, 30_000, 1, 0, 2]), [3]],
		['a piece of one tick', points([0, 0, 1, 0, 1, 1, 0, 1]), [4]],
		[
			'a comb',
			points([0, 0, 9, 0, 9, 9, 8, 9, 8, 1, 5, 1, 5, 9, 4, 9, 4, 1, 1, 1, 1, 9, 0, 9], 1000),
			[2],
		],
		[
			'a hook that nearly closes',
			points([0, 0, 9, 0, 9, 9, 1, 9, 1, 8, 8, 8, 8, 1, 0, 1], 1000),
			[2],
		],
		['identical squares', square, [9]],
	];

	it.each(odd)('%s', (name, corners, [count]) => {
		for (const gap of [0, 160])
			for (const turns of [ONE_WAY, TWO_WAY, FREE]) {
				const pieces = [blankOf(name, corners, count!, turns), blankOf('square', square, 2, turns)];
				const problem = roll(32_000, pieces, { by: 'outline', gap: ticks(gap) });
				const answer = lay(problem, 300);
				expect(auditRoll(problem, answer)).toEqual([]);
				expect(answer.unplaced).toEqual([]);
			}
	});

	it('lie side by side as closely as squares can', () => {
		const problem = roll(30_000, [blankOf('square', square, 9, FREE)], { by: 'outline' });
		const answer = lay(problem, 300);
		expect(answer.length).toBe(30_000);
		expect(answer.proven).toBe(true);
	});

	it('what is larger than the roll is left out and said, the rest is laid', () => {
		const wide = points([0, 0, 50, 0, 50, 50, 0, 40], 1000);
		const problem = roll(
			32_000,
			[blankOf('wide', wide, 1, FREE), blankOf('square', square, 2, FREE)],
			{
				by: 'outline',
			},
		);
		const answer = lay(problem, 300);
		expect(auditRoll(problem, answer)).toEqual([]);
		expect(answer.unplaced.map((u) => u.id)).toEqual(['wide']);
		expect(answer.placed).toHaveLength(2);
	});

	it('a long piece that may turn never sticks out of a strip shorter than it', () => {
		const long = points([0, 0, 28, 0, 28, 4, 14, 6, 0, 4], 1000);
		fc.assert(
			fc.property(fc.integer(), fc.integer({ min: 2, max: 6 }), (seed, count) => {
				const problem = roll(30_000, [blankOf('long', long, count, FREE)], { by: 'outline' });
				const answer = lay(problem, 200, seed);
				expect(auditRoll(problem, answer)).toEqual([]);
			}),
			{ numRuns: runs(40) },
		);
	});
});
