import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm, ticks } from '../../../src/lib/measure/length';
import { judgeByHand, type HandSpot } from '../../../src/lib/nest/by-hand/judge';
import { nestSaw } from '../../../src/lib/nest/saw/saw';
import type { RouterProblem } from '../../../src/lib/nest/types';
import { runs } from '../../depth';
import { finish, piece, problems, sawProblem, sheet } from '../saw/samples';

const SHEET = sheet('S', mm(1000), mm(600));
const PIECES = [
	piece('A', mm(300), mm(200), 4, { turns: 'any' }),
	piece('G', mm(300), mm(200), 1),
	piece('L', mm(400), mm(100), 4, { turns: 'any' }),
];
const KERF = mm(3);
const problem = sawProblem([SHEET], PIECES, { kerf: KERF });
const at = (id: string, x: number, y: number, turn: HandSpot['turn'] = 0): HandSpot => ({
	...{ id, turn },
	...{ x: mm(x), y: mm(y) },
});
const said = (...spots: HandSpot[]) => judgeByHand(problem, SHEET, spots).faults.map((f) => f.what);

describe('pieces laid by hand', () => {
	it('hold where they lie inside, a blade apart, and straight cuts part them', () => {
		expect(said(at('A', 0, 0))).toEqual([]);
		expect(said(at('A', 0, 0), at('A', 303, 0))).toEqual([]);
		expect(said(at('A', 700, 400, 180))).toEqual([]);
		expect(said(at('A', 100, 50), at('L', 500, 200, 90))).toEqual([]);
	});

	it('are refused over an edge, by how much, and into the trim', () => {
		expect(said(at('A', 712.5, 0))).toEqual(['A reaches 12.5 mm over the right edge.']);
		expect(said(at('A', 0, 401))).toEqual(['A reaches 1 mm over the upper edge.']);
		const trim = { left: mm(5), right: mm(5), bottom: mm(5), top: mm(5) };
		const trimmed = { ...SHEET, trim };
		expect(judgeByHand(problem, trimmed, [at('A', 3, 5)]).faults.map((f) => f.what)).toEqual([
			'A reaches 2 mm into the trim at the left edge.',
		]);
	});

	it('are refused where they overlap or are nearer than the blade', () => {
		expect(said(at('A', 0, 0), at('L', 290, 100))).toEqual(['A and L overlap by 10 mm.']);
		expect(said(at('A', 0, 0), at('L', 302, 0))).toEqual([
			'A and L are 2 mm apart; the blade needs 3 mm.',
		]);
		expect(said(at('A', 0, 0), at('A', 0, 0))).toEqual(['A and A overlap by 200 mm.']);
	});

	it('are refused across the grain', () => {
		expect(said(at('G', 0, 0, 90))).toEqual([
			'G may not lie turned by 90°: its grain runs along the sheet.',
		]);
	});

	it('are refused where no cut from edge to edge parts them', () => {
		const wheel = [at('L', 0, 0), at('L', 403, 0, 90), at('L', 103, 403), at('L', 0, 103, 90)];
		expect(said(...wheel)).toEqual([
			'No straight cut from edge to edge parts L: each way the saw would run through one of them.',
		]);
		const routed: RouterProblem = {
			...{ bit: KERF, sheets: [SHEET], pieces: PIECES, useHoles: false },
			keep: { length: mm(100), width: mm(100) },
		};
		expect(judgeByHand(routed, SHEET, wheel).faults).toEqual([]);
	});

	it('are refused a sliver from the edge that the blade cannot skim', () => {
		expect(said(at('A', 1, 0))).toEqual([
			'Only 1 mm would be left beside A at the left, less than the blade takes: move it by 1 mm, or farther in.',
		]);
		expect(said(at('A', 3, 0))).not.toEqual([]);
		expect(said(at('A', 3.5, 0))).toEqual([]);
	});

	it('are refused where the saw may not make the cuts', () => {
		const few = { ...problem, stages: 1 };
		expect(judgeByHand(few, SHEET, [at('A', 100, 50)]).faults.map((f) => f.kind)).toEqual([
			'uncut',
		]);
	});

	it('are whatever a search has laid', () => {
		let pairs = 0;
		fc.assert(
			fc.property(problems(false), (random) => {
				for (const layout of finish(nestSaw(random, { seed: 1, effort: 3 })).layouts) {
					const sheet = random.sheets.find((s) => s.id === layout.sheet)!;
					const { faults, sheet: made } = judgeByHand(random, sheet, layout.placed);
					expect(faults).toEqual([]);
					const places = (of: readonly HandSpot[]) =>
						of.map(({ id, x, y, turn }) => `${id} ${x} ${y} ${turn}`).sort();
					expect(places(made!.layout.placed)).toEqual(places(layout.placed));
					if (layout.cuts.some((c) => c.kind === 'slant')) pairs++;
				}
			}),
			{ numRuns: runs(400) },
		);
		expect(pairs).toBeGreaterThan(5);
	});

	it('are accepted only inside the sheet and a blade apart', () => {
		const spot = fc.record({
			id: fc.constantFrom('A', 'L'),
			x: fc.integer({ min: -2, max: 30 }).map((n) => ticks(n * mm(30))),
			y: fc.integer({ min: -1, max: 18 }).map((n) => ticks(n * mm(30))),
			turn: fc.constantFrom<HandSpot['turn']>(0, 90, 180, 270),
		});
		let held = 0;
		fc.assert(
			fc.property(fc.array(spot, { minLength: 1, maxLength: 3 }), (spots) => {
				const { faults, sheet: made } = judgeByHand(problem, SHEET, spots);
				expect(made === null).toBe(faults.length > 0);
				if (!made) return;
				held++;
				const rects = spots.map(({ id, x, y, turn }) => {
					const [long, wide] = id === 'A' ? [mm(300), mm(200)] : [mm(400), mm(100)];
					return turn % 180 === 0 ? [x, y, x + long, y + wide] : [x, y, x + wide, y + long];
				}) as [number, number, number, number][];
				for (const [i, [x1, y1, x2, y2]] of rects.entries()) {
					expect(Math.min(x1, y1, SHEET.length - x2, SHEET.width - y2)).toBeGreaterThanOrEqual(0);
					for (const [a, b, c, d] of rects.slice(i + 1))
						expect(Math.max(a - x2, x1 - c, b - y2, y1 - d)).toBeGreaterThanOrEqual(KERF);
				}
			}),
			{ numRuns: runs(2000) },
		);
		expect(held).toBeGreaterThan(20);
	});
});
