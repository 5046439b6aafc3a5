import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { solveFor, solveQuickly } from '../../../src/lib/design/box/solve/solve-step';
import { mm, ticks, type Length } from '../../../src/lib/measure/length';
import type { Asked } from './make';
import { figures, made } from './make';

const plain = (width: number | string, height: number | string, depth: number | string): Asked => ({
	shape: { kind: 'plain', width, height, depth },
});
const slanted = (width: number, bottom: number, top: number, height: number): Asked => ({
	shape: { kind: 'slanted', width, height, lean: { by: 'depths', bottom, top } },
});

describe('laws of boxes', () => {
	const side = fc.integer({ min: 250, max: 700 });

	it('solving for a volume gives that volume within the ruler', () => {
		const dimension = fc.constantFrom('width' as const, 'height' as const, 'depth' as const);
		fc.assert(
			fc.property(
				side,
				side,
				side,
				side,
				dimension,
				fc.integer({ min: 25, max: 60 }),
				(w, b, t, h, solve, litres) => {
					const f = figures({ ...slanted(w, b, t, h), target: { litres, solve } });
					// A tenth of a millimetre on the largest side that can face it: 4 m by 0.7 m.
					fc.pre(f.solved !== null);
					expect(Math.abs(f.solved.gives - f.chambers[0]!.net)).toBeLessThan(1e-9);
					expect(Math.abs(f.chambers[0]!.net - litres)).toBeLessThan(0.00005 * 4000 * 0.7);
					expect(f.solved.rounded % 160).toBe(0);
				},
			),
			{ numRuns: runs(60), seed: 7 },
		);
	});

	it('the quick steps find what the slow bracket finds, with few boxes built', () => {
		const kinds = fc.constantFrom(1, 2, 3);
		fc.assert(
			fc.property(side, kinds, fc.integer({ min: 20, max: 90 }), (start, kind, wanted) => {
				let built = 0;
				// Litres over ticks; what stands inside takes a share that grows evenly, and a
				// vent's that does not.
				const gross = (x: number): number => (x / 1600 / 600) ** kind * 60;
				const lost = (x: number): number => 2 + x / 4e5 + Math.sqrt(x) / 4000;
				const net = (x: number): number => {
					built++;
					return gross(x) - lost(x);
				};
				const mark = (x: Length): Length => ticks(Math.round(x / 160) * 160);
				const found = solveQuickly(wanted, mm(start), { net, gross, mark });
				expect(found).not.toBeNull();
				expect(built).toBeLessThanOrEqual(4);
				const slow = solveFor(wanted, mm(start), (x) => gross(x) - lost(x));
				expect(Math.abs(found! - slow!)).toBeLessThanOrEqual(2);
			}),
			{ numRuns: runs(60), seed: 11 },
		);
	});

	it('which board runs past never changes the air', () => {
		fc.assert(
			fc.property(side, side, side, side, (w, b, t, h) => {
				const net = (['level-past', 'upright-past', 'mitre'] as const).map(
					(joint) => figures({ ...slanted(w, b, t, h), joint }).chambers[0]!.net,
				);
				expect(net[1]).toBe(net[0]);
				expect(net[2]).toBe(net[0]);
			}),
			{ numRuns: runs(40), seed: 8 },
		);
	});

	it('twice the size, boards and all, holds eight times as much', () => {
		const double = {
			materials: [
				{ id: 'ply-18', name: 'Board', kind: 'other' as const, nominal: 36, measured: 36 },
			],
		};
		fc.assert(
			fc.property(side, side, side, side, (w, b, t, h) => {
				const one = figures(slanted(w, b, t, h)).chambers[0]!.net;
				const two = figures(slanted(2 * w, 2 * b, 2 * t, 2 * h), { stock: double }).chambers[0]!
					.net;
				expect(two / one / 8).toBeCloseTo(1, 6);
			}),
			{ numRuns: runs(40), seed: 9 },
		);
	});

	it('inches and millimetres give the same boards', () => {
		fc.assert(
			fc.property(side, side, side, (w, h, d) => {
				const inches = (n: number): string => `${Math.round(n / 10)} in`;
				const mm = (n: number): number => Math.round(n / 10) * 25.4;
				const a = made(plain(inches(w), inches(h), inches(d))).parts;
				const b = made(plain(mm(w), mm(h), mm(d))).parts;
				expect(a).toEqual(b);
			}),
			{ numRuns: runs(40), seed: 10 },
		);
	});

	it('solving for the depth of a slanted box keeps its slant', () => {
		const f = figures({ ...slanted(600, 400, 250, 380), target: { litres: 50, solve: 'depth' } });
		const lean = (Math.atan(150 / 380) * 180) / Math.PI;
		expect(f.leans.find((l) => l.board === 'back')!.angle).toBeCloseTo(lean, 3);
	});

	it('a profile typed clockwise is the same box', () => {
		const corners = [
			{ x: 0, y: 0 },
			{ x: 400, y: 0 },
			{ x: 300, y: 350 },
			{ x: 0, y: 350 },
		];
		const net = (list: typeof corners) =>
			figures({ shape: { kind: 'free', width: 600, corners: list } }).chambers[0]!.net;
		expect(net([...corners].reverse())).toBeCloseTo(net(corners), 9);
	});

	it('dividing takes the divider and nothing else', () => {
		const one = figures(plain(800, 400, 350)).chambers[0]!.net;
		const two = figures({ ...plain(800, 400, 350), dividers: [{ at: 300 }] }).chambers;
		expect(two.map((c) => c.number)).toEqual([1, 2]);
		expect(two[0]!.net).toBeCloseTo(300 * 364 * 314e-6, 9);
		expect(two[0]!.net + two[1]!.net + 18 * 364 * 314e-6).toBeCloseTo(one, 9);
	});

	it('orders the rods from wall to wall, for every box alike', () => {
		const rod = { kind: 'dowel' as const, diameter: 20, a: 150, b: 200 };
		const asked = { ...plain(800, 400, 350), count: 2, braces: [rod] };
		const needs = made(asked).needs.filter((n) => n.kind === 'dowel');
		expect(needs).toHaveLength(1);
		expect(needs[0]!.amount).toBeCloseTo((2 * (800 - 36)) / 1000, 9);
		expect(made(plain(800, 400, 350)).needs.filter((n) => n.kind === 'dowel')).toEqual([]);
	});
});
