import { describe, expect, test } from 'vitest';
import { panelSectionOf } from '../../../src/lib/design/panel/layers/section';
import { mm, toMm } from '../../../src/lib/measure/length';
import { planned } from './stock';

/*
 * Section A-A of a panel 600 x 400 in 12 mm under cloth 3 mm thick, clear of the opening by 0.5:
 * the board goes from 3.5 to 596.5.
 */

const rect = (length: number, width: number) => ({ kind: 'rectangle', length, width }) as const;
const at = (x: number, y: number, length: number, width: number) => ({
	shape: rect(length, width),
	x,
	y,
});
const STEP = { id: 'step', name: 'Step', outline: at(100, 100, 400, 200), material: 'ply-6' };
const sectionOf = (panel: Parameters<typeof planned>[0]) =>
	panelSectionOf(planned({ ...panel, opening: rect(600, 400) }).detail!);
const stretches = (s: NonNullable<ReturnType<typeof sectionOf>>) =>
	s.boards.map((b) => [b.name, ...[b.from, b.to, b.low, b.high].map((n) => toMm(n))]);

/** Area of the cloth in the cut, square millimetres. */
function clothArea(s: NonNullable<ReturnType<typeof sectionOf>>): number {
	const ring = (points: readonly { x: number; y: number }[]): number =>
		points.reduce((sum, p, i) => {
			const q = points[(i + 1) % points.length]!;
			return sum + (p.x * q.y - q.x * p.y) / 2;
		}, 0);
	const all = s.cloths.flatMap((c) => c.regions.flatMap((r) => [r.outline, ...r.holes]));
	return Math.abs(all.reduce((sum, o) => sum + ring(o), 0)) / mm(1) ** 2;
}

describe('a section', () => {
	test('is none of a flat panel', () => {
		expect(sectionOf({ opening: rect(600, 400), cloth: 'carpet' })).toBe(null);
	});

	test('goes through the middle of a layer, which stands on the board', () => {
		const s = sectionOf({ opening: rect(600, 400), cloth: 'carpet', layers: [STEP] })!;
		expect(toMm(s.y)).toBe(200);
		expect(stretches(s)).toEqual([
			['Board', 3.5, 596.5, 0, 12],
			['Step', 100, 500, 12, 18],
		]);
	});

	test('has the cloth 3 mm thick over everything, and under the back as far as its groove', () => {
		const s = sectionOf({ opening: rect(600, 400), cloth: 'carpet', layers: [STEP] })!;
		expect(s.cloths.map((c) => c.cloth)).toEqual(['carpet']);
		const box = s.cloths[0]!.regions.flatMap((r) => r.outline);
		const [xs, ys] = [box.map((p) => p.x), box.map((p) => p.y)];
		const reach = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
		expect(reach.map((n) => toMm(n))).toEqual([0.5, 599.5, -3, 21]);
		// Top 599 x 3; sides of the step 6 x 3; edges 12 x 3; under the back 3 and the
		// 12 + 4 to the far side of the groove.
		const under = 3 + 12 + 4;
		expect(clothArea(s)).toBeCloseTo(599 * 3 + 2 * 6 * 3 + 2 * 12 * 3 + 2 * under * 3, 6);
	});

	test('ends flush on the side that is left bare', () => {
		// Edges from the bottom round: the left one is the fourth.
		const edges = { own: [{ edge: 4, end: 'bare' as const }] };
		const s = sectionOf({ opening: rect(600, 400), cloth: 'carpet', layers: [STEP], edges })!;
		const [board] = s.boards;
		const box = s.cloths[0]!.regions.flatMap((r) => r.outline);
		const [low, high] = [Math.min(...box.map((p) => p.x)), Math.max(...box.map((p) => p.x))];
		expect(low).toBe(board!.from);
		expect(high).toBe(board!.to + mm(3));
		// Over the face, round the right edge, 16 under it, and both sides of the step.
		const long = toMm(board!.to - board!.from);
		expect(clothArea(s)).toBeCloseTo((long + 3) * 3 + 12 * 3 + (3 + 16) * 3 + 2 * 6 * 3, 6);
	});

	test('has the cloth of a cover over the cover, down its sides, and not under it', () => {
		const cover = { id: 'c', name: 'Cover', outline: at(200, 100, 200, 100), gap: 2 };
		const ledge = { material: 'ply-6', outside: 20, inside: 15 };
		const covers = [{ ...cover, cloth: 'vinyl', ledge }];
		const s = sectionOf({ opening: rect(600, 400), covers })!;
		const [own] = s.boards.filter((b) => b.of === 'cover');
		// 200 less the gap, 1 on each side, and the vinyl, 1 thick.
		expect([own!.from, own!.to].map((n) => toMm(n))).toEqual([202, 398]);
		const high = toMm(own!.high - own!.low);
		expect(s.cloths.map((c) => c.cloth)).toEqual(['vinyl']);
		expect(clothArea(s)).toBeCloseTo(198 + 2 * high, 6);
	});

	test('without cloth shows the boards alone', () => {
		const s = sectionOf({ opening: rect(600, 400), layers: [STEP] })!;
		expect(clothArea(s)).toBe(0);
		expect(stretches(s).map(([name]) => name)).toEqual(['Board', 'Step']);
	});

	test('lies where it meets most: two layers side by side rather than one above', () => {
		const layers = [
			{ ...STEP, id: 'high', name: 'High', outline: at(100, 300, 400, 60) },
			{ ...STEP, id: 'left', name: 'Left', outline: at(50, 60, 200, 100) },
			{ ...STEP, id: 'right', name: 'Right', outline: at(350, 80, 200, 100) },
		];
		const s = sectionOf({ opening: rect(600, 400), layers })!;
		expect(toMm(s.y)).toBeGreaterThan(80);
		expect(toMm(s.y)).toBeLessThan(160);
		expect(stretches(s).map(([name]) => name)).toEqual(['Board', 'Left', 'Right']);
	});

	test('has a gap in the board where a window is', () => {
		const windows = [{ id: 'w', name: 'Hatch', outline: at(200, 150, 150, 100) }];
		const s = sectionOf({ opening: rect(600, 400), windows })!;
		const [left, right, ...more] = stretches(s);
		expect(more).toEqual([]);
		expect([left!.slice(3), right!.slice(3)]).toEqual([
			[0, 12],
			[0, 12],
		]);
		// Bare and clear by 0.5 as any edge of the board.
		expect([left![2], right![1]]).toEqual([200, 350]);
	});
});

describe('glue of a cover', () => {
	test('is the ledge where it laps behind the board', () => {
		const covers = [
			{
				...{ id: 'c', name: 'Cover', outline: at(100, 100, 200, 100), gap: 2 },
				ledge: { material: 'ply-6', outside: 20, inside: 15 },
			},
		];
		const { needs } = planned({ opening: rect(600, 400), covers });
		// The hole is 1 larger all round, the ledge 20 more.
		const bonded = 242 * 142 - 202 * 102;
		const glue = needs.find((n) => n.kind === 'wood-glue');
		expect(glue!.amount).toBeCloseTo(bonded / 1e6, 9);
	});
});
