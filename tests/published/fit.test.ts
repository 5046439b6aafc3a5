import { describe, expect, test } from 'vitest';
import { bounds } from '../../src/lib/geometry/extent';
import { setBack } from '../../src/lib/design/panel/fit/fit';
import { edge } from '../../src/lib/job/panel/edge';
import { mm, toMm } from '../../src/lib/measure/length';
import { planned } from '../design/panel/stock';

/*
 * Fit rules of wrapped panels: common practice, no source; the arithmetic is checked by hand beside
 * each.
 */

const wrapped = (more: object) => edge.parse({ end: 'wrapped', ...more });

describe('common practice, no source', () => {
	test('size is the opening less twice cloth and clearance: 300 - 2 x (3 + 0.5) = 293', () => {
		const back = setBack(wrapped({ clearance: 0.5 }), mm(3), 0);
		expect(300 - 2 * toMm(back.board)).toBe(293);
		expect(300 - 2 * toMm(back.finished)).toBe(299);
	});

	test('two wrapped panels side by side, gap 1, cloth 3 each: 2 x 3 + 1 = 7 from board to board, 3.5 from the line each', () => {
		const back = setBack(wrapped({ clearance: 1, beside: 'panel' }), mm(3), mm(3));
		expect([toMm(back.board), toMm(back.boardGap!)]).toEqual([3.5, 7]);
		const other = setBack(wrapped({ clearance: 1, beside: 'panel' }), mm(1), mm(3));
		const mine = setBack(wrapped({ clearance: 1, beside: 'panel' }), mm(3), mm(1));
		expect(other.boardGap).toBe(mine.boardGap);
		expect(toMm(other.board + mine.board)).toBe(toMm(mine.boardGap!));
	});

	test('a wrapped ring let into a wrapped wall: rebate = ring + its cloth + the cloth of the wall', () => {
		const plan = planned({
			opening: { kind: 'rectangle', length: 300, width: 200 },
			rings: [
				{
					id: 'ring',
					outline: { shape: { kind: 'circle', diameter: 100 }, x: 150, y: 100 },
					lap: 20,
					lip: 2,
					material: 'ply-6',
					cloth: 'vinyl',
					letIn: true,
					wallCloth: 'carpet',
				},
			],
		});
		const ring = plan.detail!.rings[0]!;
		expect(toMm(ring.rebate!.depth)).toBe(6 + 1 + 3);
		// Finished 100 + 2 x 20 across, its board less by its cloth, the rebate more by the cloth
		// turned down into it.
		const across = (o: typeof ring.hole): number => toMm(bounds(o).length);
		expect([
			across(ring.finished.outer),
			across(ring.board.outer),
			across(ring.rebate!.outline),
		]).toEqual([140, 138, 146]);
		expect([across(ring.finished.inner), across(ring.board.inner)]).toEqual([96, 98]);
	});

	test('a knife groove 3 to 4 mm wide, 3 to 6 mm deep in a 12 mm board raises no doubt, a deeper one does', () => {
		const grooved = (depth: number) =>
			planned({
				opening: { kind: 'rectangle', length: 300, width: 200 },
				cloth: 'carpet',
				groove: { width: 4, depth },
			}).problems;
		expect(grooved(3)).toEqual([]);
		expect(grooved(6)).toEqual([]);
		expect(grooved(9.5).map((p) => p.kind)).toEqual(['check']);
		expect(grooved(12).map((p) => p.kind)).toEqual(['stop']);
	});

	test('clips about 6 in apart round the edge (restoration article on door panels)', () => {
		const plan = planned({
			opening: { kind: 'rectangle', length: 600, width: 400 },
			fixings: { spacing: '6 in', inset: 30 },
		});
		const clips = plan.detail!.fixings!;
		expect(toMm(clips.widest)).toBeLessThanOrEqual(152.4);
		// 599 x 399 set in 30: 539 and 339 long; 4 and 3 spaces a side.
		expect(clips.at).toHaveLength(2 * (4 + 3));
	});

	test('fixing holes of devices stand 12 mm or more from the edge (industry guide for medium density fibreboard)', () => {
		const device = (x: number) => ({
			id: 'd',
			length: 100,
			width: 50,
			x,
			y: 60,
			holes: [{ x: 2, y: 25 }],
		});
		const at = (x: number) =>
			planned({
				opening: { kind: 'rectangle', length: 300, width: 200 },
				edges: { all: { clearance: 0 } },
				devices: [device(x)],
			}).problems.map((p) => p.what);
		expect(at(10)).toEqual([]);
		expect(at(9)).toEqual(['Hole 1 of Device is 11 mm from the edge of the board.']);
	});
});
