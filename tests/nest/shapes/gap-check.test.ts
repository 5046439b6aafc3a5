import { runs } from '../../depth';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ticks } from '../../../src/lib/measure/length';
import { auditOutlines } from '../../../src/lib/nest/audit/outline';
import { GapCheck, type LaidPiece } from '../../../src/lib/nest/shapes/gap-check';
import type { Placed } from '../../../src/lib/nest/types';

const TURNS = [0, 90, 180, 270] as const;
const SHAPES = [
	{ id: 'rectangle', length: 40, width: 20 },
	{ id: 'wedge', length: 40, width: 30, corners: [0, 0, 40, 0, 0, 30] },
	{ id: 'angle', length: 40, width: 40, corners: [0, 0, 40, 0, 40, 10, 10, 10, 10, 40, 0, 40] },
	{ id: 'ring', length: 60, width: 60, hole: [15, 15, 15, 45, 45, 45, 45, 15] },
].map(({ corners, hole, ...box }) => ({
	...box,
	count: 2,
	turns: TURNS,
	...(corners ? { outline: points(corners) } : {}),
	...(hole ? { holes: [points(hole)] } : {}),
}));

function points(flat: readonly number[]): { x: number; y: number }[] {
	return Array.from({ length: flat.length / 2 }, (_, i) => ({
		x: flat[2 * i]!,
		y: flat[2 * i + 1]!,
	}));
}

function placed({ piece, turn, x, y }: LaidPiece, copy: number): Placed {
	const { id, length, width } = SHAPES[piece]!;
	const quarter = turn === 90 || turn === 270;
	const [l, w] = quarter ? [width, length] : [length, width];
	return { id, copy, x: ticks(x), y: ticks(y), length: ticks(l), width: ticks(w), turn };
}

const faults = (laid: readonly LaidPiece[], gap: number): number =>
	auditOutlines(laid.map(placed), SHAPES, gap).length;

const anyLaid = fc.record({
	piece: fc.integer({ min: 0, max: SHAPES.length - 1 }),
	turn: fc.constantFrom(...TURNS),
	x: fc.integer({ min: 0, max: 90 }),
	y: fc.integer({ min: 0, max: 90 }),
});

describe("the free search's own check", () => {
	it('passes nothing that the auditor finds wrong, and holds back little that it does not', () => {
		const seen = { passed: 0, held: 0 };
		fc.assert(
			fc.property(
				fc.array(anyLaid, { minLength: 2, maxLength: 4 }),
				fc.integer({ min: 1, max: 8 }),
				(laid, gap) => {
					const passes = new GapCheck(SHAPES, gap).passes(laid);
					if (passes) expect(faults(laid, gap)).toBe(0);
					else expect(faults(laid, gap + 2)).toBeGreaterThan(0);
					seen[passes ? 'passed' : 'held']++;
				},
			),
			{ numRuns: runs(600, 200), seed: 1 },
		);
		expect(seen.passed).toBeGreaterThan(50);
		expect(seen.held).toBeGreaterThan(50);
	});

	const two = (x: number, y: number, piece = 0): LaidPiece[] => [
		{ piece: 3, turn: 0, x: 0, y: 0 },
		{ piece, turn: 0, x, y },
	];

	it('knows the gap to the tick, along, across and past a corner', () => {
		expect(new GapCheck(SHAPES, 5).passes(two(65, 0))).toBe(true);
		expect(new GapCheck(SHAPES, 5).passes(two(64, 0))).toBe(false);
		expect(new GapCheck(SHAPES, 5).passes(two(63, 64))).toBe(true);
		expect(new GapCheck(SHAPES, 5).passes(two(63, 63))).toBe(false);
	});

	it('lets pieces touch where no gap is asked for, and lie in a hole', () => {
		expect(new GapCheck(SHAPES, 0).passes(two(60, 0))).toBe(true);
		expect(new GapCheck(SHAPES, 0).passes(two(59, 0))).toBe(false);
		const small = [...SHAPES, { id: 'small', length: 20, width: 20, count: 1, turns: TURNS }];
		expect(new GapCheck(small, 5).passes(two(20, 20, 4))).toBe(true);
		expect(new GapCheck(small, 5).passes(two(19, 20, 4))).toBe(false);
		expect(new GapCheck(small, 6).passes(two(20, 20, 4))).toBe(false);
	});
});
