import { describe, expect, it } from 'vitest';
import { runs } from '../../depth';
import fc from 'fast-check';
import { area, bounds } from '../../../src/lib/geometry/extent';
import type { Outline } from '../../../src/lib/geometry/outline';
import { TICKS_PER_MM, mm } from '../../../src/lib/measure/length';
import { clipped } from '../../../src/lib/print/drawing/clip';
import { arrowhead } from '../../../src/lib/print/marks/arrowhead';
import { dimension } from '../../../src/lib/print/marks/dimension';
import { running } from '../../../src/lib/print/marks/running';
import { spread } from '../../../src/lib/print/marks/spread';
import type { PathStep } from '../../../src/lib/print/drawing/drawing';
import { hatch, type Hatch } from '../../../src/lib/print/drawing/hatch';
import {
	arc,
	circlePath,
	line,
	outlineSteps,
	polygon,
	ringPath,
	type Spot,
} from '../../../src/lib/print/drawing/path';
import { placed } from '../../../src/lib/print/drawing/place';
import { qrCode, qrMark } from '../../../src/lib/print/drawing/qr';
import { boxInRing, inRing, overlap, textBox } from '../../../src/lib/print/drawing/text-box';
import { textWidth } from '../../../src/lib/print/drawing/text-width';

const shoelace = (spots: readonly Spot[]) =>
	spots.reduce((sum, p, i) => {
		const q = spots[(i + 1) % spots.length]!;
		return sum + (p.x * q.y - q.x * p.y) / 2;
	}, 0);

const ends = (steps: readonly PathStep[]): Spot[] =>
	steps.flatMap((s) => (s[0] === 'Z' ? [] : [{ x: s.at(-2) as number, y: s.at(-1) as number }]));

/** A plate with a rounded corner and a hollow one. */
const PLATE: Outline = [
	{ x: 0, y: 0 },
	{ x: mm(60), y: 0, bulge: Math.tan(Math.PI / 8) },
	{ x: mm(80), y: mm(20) },
	{ x: mm(80), y: mm(50), bulge: -Math.tan(Math.PI / 8) },
	{ x: mm(70), y: mm(60) },
	{ x: 0, y: mm(60) },
];

describe('paths', () => {
	it('draws a half circle as cubics that stay on it within a thousandth of its radius', () => {
		const steps = arc({ x: 10, y: 0 }, { x: -10, y: 0 }, 1);
		expect(steps).toHaveLength(2);
		let pen = { x: 10, y: 0 };
		for (const step of steps) {
			if (step[0] !== 'C') throw new Error('bug: an arc of lines');
			for (let t = 0; t <= 1; t += 0.1) {
				const s = 1 - t;
				const mix = (i: number, from: number) =>
					s ** 3 * from +
					3 * s * s * t * (step[i] as number) +
					3 * s * t * t * (step[i + 2] as number) +
					t ** 3 * (step[i + 4] as number);
				expect(Math.hypot(mix(1, pen.x), mix(2, pen.y))).toBeCloseTo(10, 2);
			}
			pen = { x: step[5], y: step[6] };
		}
		expect(pen.x).toBeCloseTo(-10, 9);
		// Positive turns from +x towards +y of the paper.
		expect(steps[0]!.at(-1)).toBeCloseTo(10, 9);
	});

	it('lays an outline on paper at its scale, upside up, mirrored on demand', () => {
		const view = { x: 100, y: 200, scale: 0.5 };
		const flat = ringPath(PLATE, view);
		const mm2 = area(PLATE) / TICKS_PER_MM ** 2;
		expect(Math.abs(shoelace(flat))).toBeCloseTo(mm2 / 4, 0);
		expect(flat[0]).toEqual({ x: 100, y: 200 });
		const mirror = ringPath(PLATE, { ...view, mirror: true });
		expect(Math.abs(shoelace(mirror))).toBeCloseTo(mm2 / 4, 0);
		expect(Math.min(...mirror.map((s) => s.x))).toBeCloseTo(60, 6);
		expect(Math.max(...mirror.map((s) => s.x))).toBeCloseTo(100, 6);
	});

	it('keeps arcs inside the bounds of the outline', () => {
		const b = bounds(PLATE);
		for (const spot of ends(outlineSteps([PLATE], { x: 0, y: 0, scale: 1 }))) {
			expect(spot.x).toBeLessThanOrEqual(b.length / TICKS_PER_MM + 1e-6);
			expect(-spot.y).toBeLessThanOrEqual(b.width / TICKS_PER_MM + 1e-6);
		}
	});
});

describe('hatches', () => {
	const kinds: Hatch[] = [
		'plywood',
		'mdf',
		'particleboard',
		'hardboard',
		'solid',
		'plastic',
		'other',
		'pile',
		'vinyl',
		'offcut',
		'waste',
	];
	const outline = ringPath(PLATE, { x: 10, y: 90, scale: 1 });
	const hole = [
		{ x: 30, y: 50 },
		{ x: 60, y: 50 },
		{ x: 60, y: 70 },
		{ x: 30, y: 70 },
	];

	it.each(kinds)('%s stays inside its outline and out of its hole', (kind) => {
		const spots = ends(hatch(kind, [outline, hole]).steps);
		expect(spots.length).toBeGreaterThan(20);
		for (let i = 0; i + 1 < spots.length; i += 2) {
			const middle = {
				x: (spots[i]!.x + spots[i + 1]!.x) / 2,
				y: (spots[i]!.y + spots[i + 1]!.y) / 2,
			};
			expect(inRing(middle, outline)).toBe(true);
			expect(inRing(middle, hole)).toBe(false);
		}
	});

	it('are told apart without colour: no two have the same strokes', () => {
		const drawn = kinds.map((kind) => JSON.stringify(hatch(kind, [outline]).steps));
		expect(new Set(drawn).size).toBe(kinds.length);
	});
});

describe('dimensions', () => {
	it('has arrowheads of 15 degrees, about 3 to 1 or slimmer', () => {
		const [tip, a, b] = ends(arrowhead({ x: 10, y: 5 }, 0).steps);
		expect(tip).toEqual({ x: 10, y: 5 });
		const opening = Math.atan2(a!.y - 5, a!.x - 10) - Math.atan2(b!.y - 5, b!.x - 10);
		const degrees = Math.abs((opening * 180) / Math.PI);
		expect(Math.min(degrees, 360 - degrees)).toBeCloseTo(15, 6);
	});

	it('writes the figure above its line, read from the bottom or the right', () => {
		const figure = (from: Spot, to: Spot) => {
			const mark = dimension(from, to, 10, '560').find((m) => m.kind === 'text');
			if (mark?.kind !== 'text') throw new Error('bug: a dimension without a figure');
			return mark;
		};
		const level = figure({ x: 0, y: 0 }, { x: 50, y: 0 });
		expect(level).toMatchObject({ x: 25, anchor: 'middle', turn: 0 });
		expect(level.y).toBeLessThan(10);
		for (const to of [
			{ x: 0, y: -50 },
			{ x: 0, y: 50 },
		])
			expect(figure({ x: 0, y: 0 }, to).turn).toBe(90);
		expect(figure({ x: 50, y: 0 }, { x: 0, y: 0 }).turn).toBe(0);
	});

	it('puts the figure beside the line when there is no room above it', () => {
		const mark = dimension({ x: 0, y: 0 }, { x: 4, y: 0 }, 8, '23 5/8').find(
			(m) => m.kind === 'text',
		);
		expect(mark).toMatchObject({ anchor: 'start' });
		expect(mark?.kind === 'text' && mark.x).toBeGreaterThan(4);
	});

	it('spreads crowded figures: apart, in order, none far from where it must be', () => {
		fc.assert(
			fc.property(
				fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 25 }),
				(wanted) => {
					const sorted = [...wanted].sort((a, b) => a - b);
					const slots = spread(sorted, 3, [0, 100]);
					expect(slots).toHaveLength(sorted.length);
					slots.forEach((slot, i) => {
						if (i > 0) expect(slot - slots[i - 1]!).toBeGreaterThan(3 - 1e-9);
						expect(slot).toBeGreaterThan(-1e-9);
						expect(slot).toBeLessThan(100 + 1e-9);
					});
				},
			),
			{ numRuns: runs(300) },
		);
		expect(spread([10, 50], 3, [0, 100])).toEqual([10, 50]);
		expect(spread([50, 50], 4, [0, 100])).toEqual([48, 52]);
	});

	it('runs all figures from one datum, none over another', () => {
		const places = [12, 12.5, 13, 60].map((at) => ({ at, text: String(at * 10) }));
		const marks = running({ axis: 'x', datum: 0, edge: 50, offset: 3, places });
		const boxes = marks.filter((m) => m.kind === 'text').map((m) => textBox(m));
		expect(boxes).toHaveLength(4);
		boxes.forEach((a, i) =>
			boxes.slice(i + 1).forEach((b) => expect(overlap(a, b, 0.05)).toBe(false)),
		);
	});
});

describe('placing', () => {
	it('moves, scales and turns marks about the corner they came with', () => {
		const [path, text] = placed(
			[
				{ kind: 'path', steps: line(0, 0, 10, 0) },
				{ kind: 'text', x: 10, y: 0, text: 'a', size: 3 },
			],
			{ x: 5, y: 5, scale: 2, turn: 90 },
		);
		const [from, to] = ends(path!.kind === 'path' ? path!.steps : []);
		expect(from).toEqual({ x: 5, y: 5 });
		expect(to!.x).toBeCloseTo(5, 9);
		expect(to!.y).toBeCloseTo(-15, 9);
		expect(text).toMatchObject({ size: 6, turn: 90 });
	});
});

describe('clipping', () => {
	const box = { x: 10, y: 10, width: 80, height: 40 };

	it('keeps what lies inside and nothing else', () => {
		fc.assert(
			fc.property(
				fc.array(
					fc.record({
						x: fc.integer({ min: -50, max: 150 }),
						y: fc.integer({ min: -50, max: 150 }),
					}),
					{ minLength: 3, maxLength: 8 },
				),
				(spots) => {
					for (const s of ends(clipped(polygon(spots), box))) {
						expect(s.x).toBeGreaterThanOrEqual(10 - 1e-9);
						expect(s.x).toBeLessThanOrEqual(90 + 1e-9);
						expect(s.y).toBeGreaterThanOrEqual(10 - 1e-9);
						expect(s.y).toBeLessThanOrEqual(50 + 1e-9);
					}
				},
			),
			{ numRuns: runs(200) },
		);
		expect(clipped(line(0, 20, 100, 20), box)).toEqual(line(10, 20, 90, 20));
		expect(clipped(line(0, 0, 100, 0), box)).toEqual([]);
	});

	it('turns curves into chords that depart by less than 0.02 mm', () => {
		for (const r of [5, 60, 300]) {
			const steps = clipped(circlePath(0, 0, r), { x: -400, y: -400, width: 800, height: 800 });
			const spots = ends(steps);
			spots.forEach((p, i) => {
				const q = spots[i + 1];
				if (q === undefined) return;
				const middle = Math.hypot((p.x + q.x) / 2, (p.y + q.y) / 2);
				expect(Math.abs(r - middle)).toBeLessThan(0.02 + r * 3e-4);
			});
		}
	});
});

describe('boxes of texts', () => {
	it('turn with the text', () => {
		const level = textBox({ kind: 'text', x: 0, y: 0, text: 'Front', size: 10 });
		const turned = textBox({ kind: 'text', x: 0, y: 0, text: 'Front', size: 10, turn: 90 });
		expect(level.width).toBeCloseTo(textWidth('Front', 10), 9);
		expect(turned.height).toBeCloseTo(level.width, 9);
		expect(turned.y + turned.height).toBeCloseTo(0, 9);
		expect(turned.x).toBeLessThan(0);
	});

	it('know whether they lie in an outline', () => {
		const wedge = [
			{ x: 0, y: 0 },
			{ x: 40, y: 20 },
			{ x: 0, y: 20 },
		];
		expect(boxInRing({ x: 1, y: 14, width: 20, height: 5 }, wedge)).toBe(true);
		expect(boxInRing({ x: 1, y: 3, width: 20, height: 5 }, wedge)).toBe(false);
	});
});

describe('the QR code', () => {
	it('leaves its quiet zone free and draws its three finders', () => {
		const mark = qrMark(qrCode('bench-box.B1'), 10, 20, 29);
		const spots = ends(mark.steps);
		// 12 letters at level M take version 1: 21 modules, 29 with the quiet zone, so a module is
		// 1 mm here.
		expect(Math.min(...spots.map((s) => s.x))).toBeCloseTo(14, 9);
		expect(Math.max(...spots.map((s) => s.x))).toBeCloseTo(35, 9);
		expect(Math.min(...spots.map((s) => s.y))).toBeCloseTo(24, 9);
		const finder = mark.steps.filter((s) => s[0] === 'M' && s[2] === 24).map((s) => s[1]);
		expect(finder[0]).toBeCloseTo(14, 9);
		expect(finder.at(-1)).toBeCloseTo(28, 9);
	});
});
