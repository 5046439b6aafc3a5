import { describe, expect, test } from 'vitest';
import { runs } from '../../depth';
import { stepsOf } from '../../steps';
import fc from 'fast-check';
import { drawShape } from '../../../src/lib/design/panel/fit/draw-shape';
import type { Drawn, Undrawn } from '../../../src/lib/design/shape/drawn';
import { curveThrough } from '../../../src/lib/design/import/dxf/fit-spline';
import { nearestOnEdge, edgesOf } from '../../../src/lib/geometry/edge';
import { outlineShape } from '../../../src/lib/job/panel/outline';
import { mm, toMm } from '../../../src/lib/measure/length';
import { expectReadOrRefused, said, sizes } from './drawn-figures';
import { dxfFile, entity, polyline, section, type Pair } from '../import/dxf-text';

const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;

const block = (name: string, base: readonly [number, number], ...inside: Pair[][]): Pair[] => [
	...entity('BLOCK', 2, name, 10, base[0], 20, base[1]),
	...inside.flat(),
	...entity('ENDBLK'),
];
const insert = (name: string, x: number, y: number, ...more: Pair[]): Pair[] =>
	entity('INSERT', 2, name, 10, x, 20, y, ...more);

const file = (blocks: Pair[][], entities: Pair[][]): string =>
	dxfFile(section('BLOCKS', blocks.flat()), section('ENTITIES', entities.flat()));

const read = (text: string, more: object = {}): Drawn | Undrawn =>
	drawShape(outlineShape.parse({ kind: 'dxf', unit: 'mm', text, ...more }), MM);
const drawn = (blocks: Pair[][], entities: Pair[][], more: object = {}) =>
	read(file(blocks, entities), more);

/** A plate 100 x 40 whose right end is a half circle: not its own mirror image. */
const PLATE = polyline([0, 0], [100, 0, 1], [100, 40], [0, 40]);
const PLATE_AREA = 4000 + Math.PI * 200;

describe('blocks of a drawing', () => {
	test('are put in where the insert says, by their base point', () => {
		const d = drawn([block('plate', [50, 20], PLATE)], [insert('PLATE', 500, 300)]);
		expect(sizes(d)).toEqual({ length: 120, width: 40, area: expect.closeTo(PLATE_AREA, 3) });
		expect(d.complaints).toEqual([]);
		// Beside a line that meets it the place counts: base 50, 20 at 500, 300 puts its corner at
		// 450, 280.
		const pieces = entity('LINE', 10, 0, 20, 0, 11, 100, 21, 0);
		const joined = drawn(
			[block('edge', [50, 20], pieces)],
			[
				insert('edge', 500, 300),
				entity('LINE', 10, 550, 20, 280, 11, 550, 21, 380),
				entity('LINE', 10, 550, 20, 380, 11, 450, 21, 280),
			],
		);
		expect(sizes(joined)).toEqual({ length: 100, width: 100, area: 5000 });
	});

	test('turned, scaled and mirrored, with their arcs kept as arcs', () => {
		const put = (...more: Pair[]) =>
			drawn([block('p', [0, 0], PLATE)], [insert('p', 7, 9, ...more)]);
		expect(sizes(put(50, 90))).toEqual({
			length: 40,
			width: 120,
			area: expect.closeTo(PLATE_AREA, 3),
		});
		expect(sizes(put(41, 2, 42, 2))).toEqual({
			length: 240,
			width: 80,
			area: expect.closeTo(4 * PLATE_AREA, 2),
		});
		for (const over of [
			[41, -1],
			[230, -1],
		]) {
			const d = put(...over);
			expect(sizes(d)).toEqual({ length: 120, width: 40, area: expect.closeTo(PLATE_AREA, 3) });
			expect(d.outline!.filter((c) => c.bulge)).toHaveLength(1);
			// The round end has come to the left.
			const left = edgesOf(d.outline!).find((e) => e.bulge !== 0)!;
			expect(toMm(Math.max(left.from.x, left.to.x))).toBe(20);
		}
	});

	test('drawn out in one direction, circles becoming ellipses', () => {
		const ring = entity('CIRCLE', 10, 0, 20, 0, 40, 50);
		const d = drawn([block('ring', [0, 0], ring)], [insert('ring', 0, 0, 41, 3, 42, 1)]);
		const { length, width, area: size } = sizes(d);
		expect([length, width]).toEqual([expect.closeTo(300, 1), expect.closeTo(100, 1)]);
		expect(size / (Math.PI * 150 * 50)).toBeCloseTo(1, 4);
	});

	test('in one another, and in rows and columns', () => {
		const blocks = [
			block('plate', [0, 0], PLATE),
			block('pair', [0, 0], insert('plate', 0, 0), insert('plate', 0, 100, 41, 2, 42, 2)),
		];
		const d = drawn(blocks, [insert('pair', 10, 10, 50, 180, 41, 0.5, 42, 0.5)]);
		expect(sizes(d)).toEqual({ length: 120, width: 40, area: expect.closeTo(PLATE_AREA, 3) });
		expect(said(d)).toContain('1 smaller outline');
		const many = drawn(blocks, [insert('plate', 0, 0, 70, 3, 71, 2, 44, 200, 45, 60)]);
		expect(said(many)).toContain('5 smaller outlines');
	});

	test('on the layer of the insert when they are drawn on layer 0', () => {
		const other = [0, 'CIRCLE', 8, 'holes', 10, 0, 20, 0, 40, 300];
		const blocks = [block('plate', [0, 0], PLATE, other)];
		const put = [0, 'INSERT', 8, 'boards', 2, 'plate', 10, 0, 20, 0];
		expect(sizes(drawn(blocks, [put], { layer: 'Boards' })).length).toBe(120);
		expect(sizes(drawn(blocks, [put], { layer: 'holes' })).length).toBe(600);
		expect(sizes(drawn(blocks, [put])).length).toBe(600);
	});

	test('that are missing, hold themselves or each other are left out in words', () => {
		const here = drawn(
			[block('a', [0, 0], PLATE, insert('a', 0, 0))],
			[insert('a', 0, 0), insert('b', 0, 0)],
		);
		expect(sizes(here).length).toBe(120);
		expect(said(here)).toContain('hold itself or lies too deep: a');
		expect(said(here)).toContain('not held by the file: b');
		const round = [
			block('a', [0, 0], insert('b', 0, 0)),
			block('b', [0, 0], insert('a', 0, 0), PLATE),
		];
		expect(sizes(drawn(round, [insert('a', 0, 0)])).length).toBe(120);
	});

	test('that stand for billions of lines are refused after a look at some hundred thousand', () => {
		const levels = Array.from({ length: 7 }, (_, i) =>
			block(`b${i}`, [0, 0], ...Array.from({ length: 30 }, (_, k) => insert(`b${i + 1}`, k, 0))),
		);
		const laughs = [...levels, block('b7', [0, 0], PLATE)];
		const grid = insert('b7', 0, 0, 70, 32767, 71, 32767, 44, 1, 45, 1);
		const empty = [block('none', [0, 0])];
		for (const draw of [
			() => drawn(laughs, [insert('b0', 0, 0)]),
			() => drawn(laughs, [grid]),
			() => drawn(empty, [insert('none', 0, 0, 70, 1e12, 71, 1e12)]),
		]) {
			const steps = stepsOf(() => expect(said(draw())).toContain('too many'));
			expect(steps).toBeLessThan(1e7);
		}
	});

	test('of any make come out as an outline or in words', () => {
		const number = fc.constantFrom(0, 1, -1, 0.5, 1e-9, 1e9, NaN, 1e308, -0);
		const name = fc.constantFrom('a', 'b', 'c', '', '__proto__', 'constructor');
		const put = fc
			.record({ name, x: number, sx: number, sy: number, turn: number, n: number, over: number })
			.map((i) =>
				insert(
					i.name,
					i.x,
					0,
					41,
					i.sx,
					42,
					i.sy,
					50,
					i.turn,
					70,
					i.n,
					71,
					i.n,
					44,
					i.x,
					230,
					i.over,
				),
			);
		const one = fc.oneof(
			put,
			fc.constant(PLATE),
			number.map((r) => entity('CIRCLE', 40, r)),
		);
		const blocks = fc.array(
			fc
				.record({ name, inside: fc.array(one, { maxLength: 3 }) })
				.map((b) => block(b.name, [1, 2], ...b.inside)),
			{ maxLength: 4 },
		);
		fc.assert(
			fc.property(blocks, fc.array(one, { maxLength: 4 }), (of, entities) => {
				const d = drawn(of, entities);
				expectReadOrRefused(d);
			}),
			{ numRuns: runs(150) },
		);
	});
});

describe('a spline given only by the points it passes through', () => {
	const onRing = (n: number, r = 100) =>
		Array.from({ length: n }, (_, i) => {
			const a = (2 * Math.PI * i) / n;
			return { x: r * Math.cos(a), y: r * Math.sin(a) };
		});
	const spline = (points: { x: number; y: number }[], ...more: Pair[]): Pair[] =>
		entity(
			'SPLINE',
			70,
			1,
			71,
			3,
			74,
			points.length,
			...points.flatMap((p) => [11, p.x, 21, p.y]),
			...more,
		);

	test('is followed where its points lie close, and says how certain it is', () => {
		const d = drawn([], [spline(onRing(48))]);
		expect(sizes(d).area / (Math.PI * 1e4)).toBeCloseTo(1, 4);
		expect(d.complaints).toEqual([]); // evenly spaced, the usual ways to draw it are one
		const uneven = onRing(120).filter((_, i) => i % 5 !== 2);
		const e = drawn([], [spline(uneven)]);
		expect(sizes(e).area / (Math.PI * 1e4)).toBeCloseTo(1, 4);
		expect(said(e)).toMatch(/given only by points .* certain to 0\.0\d mm/);
		// Nothing of it lies farther from the ring than it says, and what curves are followed to.
		const middle = { x: mm(100), y: mm(100) };
		for (const edge of edgesOf(e.outline!))
			expect(Math.abs(nearestOnEdge(middle, edge).distance - mm(100))).toBeLessThan(mm(0.12));
	});

	test('is left out where they lie far apart, with the figure', () => {
		const few = onRing(9).filter((_, i) => i !== 2 && i !== 6);
		const d = drawn([], [spline(few)]);
		expect(d.outline).toBe(null);
		expect(said(d)).toMatch(/1 curve left out, given only by points .* up to \d+(\.\d+)? mm apart/);
		expect(said(d)).toContain('control points');
	});

	test('grows less certain in a block that is scaled up', () => {
		const uneven = onRing(120).filter((_, i) => i % 5 !== 2);
		const put = (scale: number) =>
			drawn([block('s', [0, 0], spline(uneven))], [insert('s', 0, 0, 41, scale, 42, scale)]);
		expect(put(1).outline).not.toBe(null);
		expect(said(put(100))).toContain('left out');
	});

	test('passes through its points, and starts and ends as told', () => {
		fc.assert(
			fc.property(
				fc.array(
					fc.record({ x: fc.integer({ min: 1, max: 40 }), y: fc.integer({ min: -30, max: 30 }) }),
					{
						minLength: 2,
						maxLength: 12,
					},
				),
				fc.boolean(),
				(steps, headed) => {
					let x = 0;
					const points = steps.map((s) => ({ x: (x += s.x), y: s.y }));
					const starts = headed ? { x: 0, y: 1 } : null;
					const guess = curveThrough({ points, closed: false, starts, ends: null })!;
					points.forEach((p, i) => {
						const q = guess.curve(i / (points.length - 1));
						expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeLessThan(1e-6);
					});
					if (!headed) return;
					const soon = guess.curve(1e-6);
					expect(Math.abs(soon.x - points[0]!.x)).toBeLessThan(
						1e-3 * Math.abs(soon.y - points[0]!.y),
					);
					expect(soon.y).toBeGreaterThan(points[0]!.y);
				},
			),
			{ numRuns: runs(100) },
		);
	});

	test('through points of a parabola drawn from a given heading is near to it', () => {
		const points = Array.from({ length: 21 }, (_, i) => ({ x: i * 5, y: (i * 5) ** 2 / 200 }));
		const guess = curveThrough({
			points,
			closed: false,
			starts: { x: 1, y: 0 },
			ends: { x: 1, y: 1 },
		})!;
		for (let t = 0; t <= 1; t += 0.013) {
			const p = guess.curve(t);
			expect(Math.abs(p.y - p.x ** 2 / 200)).toBeLessThan(0.002);
		}
		expect(guess.doubt).toBeLessThan(0.01);
	});

	test('bends at no point: the slope runs on through each', () => {
		const points = [
			{ x: 0, y: 0 },
			{ x: 30, y: 20 },
			{ x: 70, y: -10 },
			{ x: 120, y: 5 },
		];
		const { curve } = curveThrough({ points, closed: true, starts: null, ends: null })!;
		for (const k of [1, 2, 3, 4]) {
			const h = 1e-5;
			const [a, b, c] = [curve(k / 4 - h), curve(k / 4 - 1e-12), curve((k / 4 + h) % 1)];
			const [before, after] = [Math.atan2(b.y - a.y, b.x - a.x), Math.atan2(c.y - b.y, c.x - b.x)];
			expect(Math.abs(Math.sin(after - before))).toBeLessThan(2e-3);
		}
	});
});
