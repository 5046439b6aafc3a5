import { describe, expect, test } from 'vitest';
import { runs } from '../../depth';
import fc from 'fast-check';
import { alongEdge, edgesOf, nearestOnEdge } from '../../../src/lib/geometry/edge';
import { area, bounds } from '../../../src/lib/geometry/extent';
import { distanceTo, whereIs } from '../../../src/lib/geometry/meeting/inside';
import { mm, toMm } from '../../../src/lib/measure/length';
import { planned } from './stock';

const rect = (length: number, width: number) => ({ kind: 'rectangle', length, width }) as const;

describe('fit', () => {
	test('opening 300, cloth 3, clearance 0.5 gives a board of 293 (common practice, no source)', () => {
		const plan = planned({ opening: rect(300, 300), cloth: 'carpet' });
		expect(plan.problems).toEqual([]);
		const fit = plan.detail!.fit;
		expect([toMm(fit.sizes.board.length), toMm(fit.sizes.finished.length)]).toEqual([293, 299]);
		expect([toMm(plan.parts[0]!.length), toMm(plan.parts[0]!.width)]).toEqual([293, 293]);
	});

	test('two wrapped panels on one line: board gap 7, each set back 3.5 (common practice, no source)', () => {
		const shared = { edge: 2, beside: 'panel', clearance: 1, neighbourCloth: 'carpet' } as const;
		const plan = planned({
			opening: rect(300, 200),
			cloth: 'carpet',
			edges: { all: { clearance: 0.5 }, own: [shared] },
		});
		const right = plan.detail!.fit.edges.find((e) => e.edge === 2)!;
		expect([right.setIn, right.boardGap, right.gap]).toEqual([mm(3.5), mm(7), mm(1)]);
	});

	test('a neighbour still to be wrapped takes its own cloth off', () => {
		const plan = planned({
			opening: rect(300, 200),
			cloth: 'vinyl',
			edges: { all: { beside: 'unwrapped', neighbourCloth: 'carpet' } },
		});
		expect(toMm(plan.detail!.fit.sizes.board.length)).toBe(300 - 2 * (1 + 0.5 + 3));
	});

	test('bare edges give up the clearance only, tucked ones go behind their neighbour', () => {
		const plan = planned({
			opening: rect(300, 200),
			cloth: 'carpet',
			edges: {
				own: [
					{ edge: 1, end: 'bare' },
					{ edge: 3, end: 'tucked', tuck: 15 },
				],
			},
		});
		const box = plan.detail!.fit.sizes.board;
		expect([toMm(box.y), toMm(box.y + box.width)]).toEqual([0.5, 215]);
		expect(plan.detail!.fit.boardEdges).toEqual(['bare', 'wrapped', 'tucked', 'wrapped']);
	});

	test('an edge that differs says only in what: the rest is as every edge', () => {
		const all = { clearance: 0.2, beside: 'unwrapped', neighbourCloth: 'carpet', tuck: 9 } as const;
		const plan = planned({
			opening: rect(730.4, 400),
			cloth: 'carpet',
			edges: {
				all: { ...all, end: 'bare' },
				own: [
					{ edge: 1, beside: 'fixed' },
					{ edge: 2, neighbourCloth: null },
					{ edge: 3, end: 'tucked' },
				],
			},
		});
		const set = plan.detail!.fit.edges.map((e) => [e.end, toMm(e.setIn)]);
		expect(set).toEqual([
			['bare', 0.2],
			['bare', 0.2],
			['tucked', -9],
			['bare', 3.2],
		]);
	});

	test('opening 730.4 with 0.2 all round and bare ends: a board of 730', () => {
		const bare = [2, 4].map((edge) => ({ edge, end: 'bare' as const }));
		const plan = planned({
			opening: rect(730.4, 400),
			cloth: 'carpet',
			edges: { all: { clearance: 0.2 }, own: bare },
		});
		expect(toMm(plan.detail!.fit.sizes.board.length)).toBe(730);
	});

	test('a window grows by the cloth turned in, the gap and the cloth of what goes in', () => {
		const plan = planned({
			opening: rect(300, 200),
			cloth: 'carpet',
			windows: [
				{
					id: 'w',
					outline: { shape: rect(80, 40), x: 100, y: 80 },
					clearance: 0.5,
					thingCloth: 'vinyl',
				},
			],
		});
		const w = plan.detail!.windows[0]!;
		expect(toMm(bounds(w.finished).length)).toBe(83);
		expect(toMm(bounds(w.hole).length)).toBe(89);
		expect(plan.parts[0]!.holes).toHaveLength(1);
	});

	test('a radius that vanishes and a neck that closes are reported', () => {
		const small = planned({
			opening: { ...rect(300, 200), corners: { radius: 2 } },
			cloth: 'carpet',
		});
		expect(small.problems.map((p) => p.kind)).toEqual(['check', 'check', 'check', 'check']);
		const bone = planned({
			cloth: 'carpet',
			opening: {
				kind: 'polyline',
				points: [
					[0, 0],
					[100, 0],
					[100, 45],
					[200, 45],
					[200, 0],
					[300, 0],
					[300, 100],
					[200, 100],
					[200, 51],
					[100, 51],
					[100, 100],
					[0, 100],
				].map(([x, y]) => ({ x: x!, y: y! })),
			},
		});
		expect(bone.problems[0]?.kind).toBe('stop');
		expect(bone.problems[0]?.what).toContain('close up');
		expect(bone.parts).toEqual([]);
	});

	test('a rounding between a wrapped edge and a tucked one is a whole cloth wider than the board', () => {
		const fit = planned({
			opening: {
				kind: 'polyline',
				points: [
					{ x: 0, y: 0, cut: { radius: 25 } },
					{ x: 660, y: 0, cut: { radius: 25 } },
					{ x: 600, y: 400, cut: { radius: 40 } },
					{ x: 60, y: 400, cut: { radius: 40 } },
				],
			},
			cloth: 'carpet',
			edges: { all: { clearance: 0.5 }, own: [{ edge: 1, end: 'tucked', tuck: 12 }] },
		}).detail!.fit;
		const { board, finished } = fit.sizes;
		// Both sides are wrapped in 3 mm, the roundings below with them; at the bottom the board
		// ends bare behind its neighbour.
		expect(toMm(finished.length) - toMm(board.length)).toBeCloseTo(6, 1);
		expect([toMm(board.y), toMm(finished.y)]).toEqual([-12, -12]);
		expect(toMm(finished.width) - toMm(board.width)).toBe(3);
		// Nowhere does the finished edge stand farther out than its cloth, nor inside the board.
		for (const e of edgesOf(fit.finished))
			for (const part of [0, 0.25, 0.5, 0.75]) {
				const off = toMm(distanceTo(alongEdge(e, part), fit.board));
				expect(off).toBeLessThan(3.05);
				expect(whereIs(alongEdge(e, part), fit.board)).not.toBe('inside');
			}
	});

	test('finished edge plus clearance is the opening, for any outline and any mix of edges', () => {
		const ends = fc.constantFrom<'wrapped' | 'bare'>('wrapped', 'bare');
		const edge = fc.record({ end: ends, clearance: fc.integer({ min: 0, max: 3 }) });
		const step = fc.record({
			gap: fc.integer({ min: 30, max: 100 }),
			r: fc.integer({ min: 150, max: 300 }),
			bulge: fc.integer({ min: -20, max: 30 }),
		});
		fc.assert(
			fc.property(
				fc.array(step, { minLength: 3, maxLength: 9 }),
				fc.array(edge, { minLength: 9, maxLength: 9 }),
				(steps, edges) => {
					const sum = steps.reduce((a, s) => a + s.gap, 0);
					let turn = 0;
					const corners = steps.map((s) => {
						turn += (s.gap / sum) * 2 * Math.PI;
						return { x: s.r * Math.cos(turn), y: s.r * Math.sin(turn), bulge: s.bulge / 100 };
					});
					const own = edges.slice(0, steps.length).map((e, i) => ({ edge: i + 1, ...e }));
					const plan = planned({
						opening: { kind: 'corners', corners },
						cloth: 'carpet',
						edges: { own },
					});
					const fit = plan.detail?.fit;
					if (!fit || plan.problems.length > 0) return;
					const opening = edgesOf(fit.opening);
					// Every finished edge lies its own clearance from its edge of the opening, the
					// board a cloth farther in.
					for (const [outline, cloth] of [
						[fit.finished, 0],
						[fit.board, mm(3)],
					] as const)
						for (const e of edgesOf(outline)) {
							const off = opening.map((o) => nearestOnEdge(alongEdge(e, 0.5), o).distance);
							const fits = own.some((o, i) => {
								const want = mm(o.clearance) + (o.end === 'wrapped' ? cloth : 0);
								return Math.abs(off[i]! - want) < 3;
							});
							const jog = Math.hypot(e.to.x - e.from.x, e.to.y - e.from.y) < mm(6.1);
							expect(fits || jog).toBe(true);
						}
					expect(area(fit.board)).toBeLessThanOrEqual(area(fit.opening) + 1);
				},
			),
			{ numRuns: runs(80) },
		);
	});
});

test('a hole for a fixing as deep as the board is said, one less deep is not', () => {
	const at = (depth: number | null) =>
		planned({
			opening: rect(600, 400),
			edges: { all: { end: 'bare' } },
			fixings: { kind: 'clips', spacing: 150, inset: 25, hole: 8, depth },
		});
	const said = (depth: number | null) =>
		at(depth).problems.filter((p) => p.path.join('.') === 'panels.0.fixings.depth');
	// The board is 12 thick.
	expect(said(12)).toHaveLength(1);
	expect(said(40)[0]?.what).toContain('40 mm deep go through the board, which is 12 mm thick');
	for (const depth of [null, 0.5, 11.9]) expect(said(depth)).toEqual([]);
	expect(at(9).detail!.fixings!.depth).toBe(mm(9));
	expect(at(null).detail!.fixings!.depth).toBeNull();
});

test('fixings so near the edge that the board breaks there are said, with where they may be', () => {
	const said = (kind: 'clips' | 'screws', inset: number, hole: number): string[] =>
		planned({
			opening: rect(600, 400),
			edges: { all: { end: 'bare' } },
			fixings: { kind, spacing: 150, inset, hole },
		})
			.problems.filter((p) => p.path.join('.') === 'panels.0.fixings.inset')
			.map((p) => `${p.kind}: ${p.fix}`);
	expect(said('clips', 8, 8)).toEqual([]);
	expect(said('clips', 7.9, 8)).toEqual(['check: Set them 8 mm or more from the edge.']);
	expect(said('screws', 12, 5)).toEqual([]);
	expect(said('screws', 11.9, 5)).toEqual(['check: Set them 12 mm or more from the edge.']);
	expect(said('screws', 12, 20)).toEqual(['check: Set them 14 mm or more from the edge.']);
});

test('fixings a hair apart are said to run into one another, and planned a hole and its rim apart', () => {
	const plan = planned({
		opening: rect(600, 400),
		edges: { all: { end: 'bare' } },
		fixings: { kind: 'clips', spacing: 0.01, inset: 25, hole: 8 },
	});
	expect(plan.problems.map((p) => p.path.join('.'))).toContain('panels.0.fixings.spacing');
	// 550 x 350 less the clearance, walked round at 12 mm: nowhere near the 180,000 asked for.
	const count = plan.detail!.fixings!.at.length;
	expect(count).toBeGreaterThan(140);
	expect(count).toBeLessThan(155);
});
