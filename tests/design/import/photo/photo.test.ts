import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
	circleThrough,
	lineThrough,
	leftOfLine,
} from '../../../../src/lib/design/import/photo/fit';
import { findPaper } from '../../../../src/lib/design/import/photo/find-paper';
import { edgesOfPaper, lensOf } from '../../../../src/lib/design/import/photo/lens';
import { readPicture } from '../../../../src/lib/design/import/photo/reading';
import { fitSides, type OutlineMark } from '../../../../src/lib/design/import/photo/sides';
import type { Point } from '../../../../src/lib/geometry/outline';
import { arcOf } from '../../../../src/lib/geometry/arc';
import { runs } from '../../../depth';
import { A4, camera, cameras, greyOf, type Camera, FRAME } from './camera';

const far = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
const between = (a: Point, b: Point, t: number): Point => ({
	x: a.x + (b.x - a.x) * t,
	y: a.y + (b.y - a.y) * t,
});

const PAPER: readonly Point[] = [
	{ x: 0, y: 297 },
	{ x: 210, y: 297 },
	{ x: 210, y: 0 },
	{ x: 0, y: 0 },
];
const ALONG = PAPER.flatMap((p, i) =>
	[0.25, 0.5, 0.75].map((t) => between(p, PAPER[(i + 1) % 4]!, t)),
);
/** Where the template's corners lie, from the paper's lower left corner. */
const TEMPLATE: readonly Point[] = [
	{ x: -160, y: -60 },
	{ x: 330, y: -40 },
	{ x: 350, y: 330 },
	{ x: -140, y: 350 },
];
type Four = readonly [Point, Point, Point, Point];
const markedBy = (camera: Camera, along = ALONG) => ({
	corners: PAPER.map(camera.sees) as unknown as Four,
	along: along.map(camera.sees),
	frame: FRAME,
	paper: A4,
});

describe('the bending of a lens', () => {
	test('is found from the edges of the paper, and taken out, whatever the view', () => {
		const law = fc.property(cameras, (view) => {
			const read = readPicture(markedBy(view));
			if (!read.squared.ok) throw new Error(read.squared.why);
			expect(read.crooked).toBeLessThan(0.05);
			for (const p of TEMPLATE) expect(far(read.squared.toMm(view.sees(p)), p)).toBeLessThan(0.3);
		});
		fc.assert(law, { numRuns: runs(60) });
	});

	test('left in, it puts a far corner off by millimetres: that is why', () => {
		const camera = cameraOf(-0.12);
		const blind = readPicture({ ...markedBy(camera), along: [] });
		if (!blind.squared.ok) throw new Error('refused');
		expect(blind.lens).toBeNull();
		const worst = Math.max(
			...TEMPLATE.map((p) => (blind.squared.ok ? far(blind.squared.toMm(camera.sees(p)), p) : 0)),
		);
		expect(worst).toBeGreaterThan(3);
	});

	test('of a lens that bends nothing is nothing, and marks by hand stay within the expected error', () => {
		const camera = cameraOf(0);
		const { corners, along } = markedBy(camera);
		expect(lensOf(edgesOfPaper(corners, along), FRAME)!.bend).toBeCloseTo(0, 6);
		const slip = (p: Point, i: number): Point => ({
			x: p.x + 0.7 * Math.cos(i * 2.4),
			y: p.y + 0.7 * Math.sin(i * 2.4),
		});
		const marked = {
			corners: corners.map(slip) as unknown as Four,
			along: along.map(slip),
			frame: FRAME,
			paper: A4,
		};
		const { squared } = readPicture(marked);
		if (!squared.ok) throw new Error(squared.why);
		for (const p of TEMPLATE) {
			const at = slip(camera.sees(p), 3);
			expect(far(squared.toMm(at), p)).toBeLessThan(squared.errorAt(at));
		}
	});

	test('needs a mark that is no corner, and a size of the picture', () => {
		const camera = cameraOf(-0.1);
		expect(readPicture(markedBy(camera, [])).lens).toBeNull();
		expect(readPicture({ ...markedBy(camera), frame: null }).lens).toBeNull();
		expect(readPicture(markedBy(camera, ALONG.slice(0, 1))).lens).not.toBeNull();
	});
});

const cameraOf = (bend: number): Camera => camera({ lean: 14, roll: -8, far: 900, bend });

describe('the paper in a picture', () => {
	test('is found to a pixel, its edges too, from many sides and through a bent lens', () => {
		const law = fc.property(cameras, fc.integer({ min: 1, max: 1e6 }), (camera, seed) => {
			const found = findPaper(greyOf(camera, seed));
			expect(found).not.toBeNull();
			const truth = PAPER.map(camera.sees);
			for (const [i, p] of truth.entries()) expect(far(found!.corners[i]!, p)).toBeLessThan(0.7);
			const read = readPicture({ ...found!, frame: FRAME, paper: A4 });
			if (!read.squared.ok) throw new Error(read.squared.why);
			for (const p of TEMPLATE) {
				const at = camera.sees(p);
				expect(far(read.squared.toMm(at), p)).toBeLessThan(read.squared.errorAt(at));
			}
		});
		fc.assert(law, { numRuns: runs(4) });
	});

	test('is not found where there is none', () => {
		const flat = new Uint8Array(200 * 100).fill(120);
		expect(findPaper({ width: 200, height: 100, shades: flat })).toBeNull();
		expect(findPaper({ width: 0, height: 0, shades: new Uint8Array(0) })).toBeNull();
		const disc = Uint8Array.from({ length: 200 * 200 }, (_, i) =>
			far({ x: i % 200, y: Math.floor(i / 200) }, { x: 100, y: 100 }) < 50 ? 240 : 60,
		);
		expect(findPaper({ width: 200, height: 200, shades: disc })).toBeNull();
	});
});

describe('a line or a circle through many marks', () => {
	test('of marks without a fault is that line or circle', () => {
		const line = lineThrough([0, 1, 5, 9].map((t) => ({ x: 3 + 4 * t, y: 7 - 3 * t })));
		expect(leftOfLine(line, { x: 3 + 400, y: 7 - 300 })).toBeCloseTo(0, 9);
		expect(Math.abs(leftOfLine(line, { x: 3 + 3, y: 7 + 4 }))).toBeCloseTo(5, 9);
		const law = fc.property(
			fc.double({ min: -500, max: 500, noNaN: true }),
			fc.double({ min: 5, max: 2000, noNaN: true }),
			fc.double({ min: 0.5, max: 6, noNaN: true }),
			(x, radius, sweep) => {
				const points = [0, 0.3, 0.45, 0.8, 1].map((t) => ({
					x: x + radius * Math.cos(t * sweep),
					y: 40 + radius * Math.sin(t * sweep),
				}));
				const circle = circleThrough(points)!;
				expect(far(circle.centre, { x, y: 40 })).toBeLessThan(1e-4 * radius);
				expect(Math.abs(circle.radius - radius)).toBeLessThan(1e-4 * radius);
			},
		);
		fc.assert(law, { numRuns: runs(100) });
		expect(circleThrough([0, 1, 2, 3].map((x) => ({ x, y: 2 * x })))).toBeNull();
	});

	/*
	 * Six points and the circle with the least sum of squared distances, from W. Gander, G. H.
	 * Golub, R. Strebel, "Least-squares fitting of circles and ellipses", BIT 34 (1994) 558-578:
	 * centre (4.7398, 2.9835), radius 4.7142. From memory.
	 */
	test('is the published one', () => {
		const points = [
			[1, 7],
			[2, 6],
			[5, 8],
			[7, 7],
			[9, 5],
			[3, 7],
		].map(([x, y]) => ({ x: x!, y: y! }));
		const { centre, radius } = circleThrough(points)!;
		expect(centre.x).toBeCloseTo(4.7398, 3);
		expect(centre.y).toBeCloseTo(2.9835, 3);
		expect(radius).toBeCloseTo(4.7142, 3);
	});
});

describe('sides through marks', () => {
	const mark = (x: number, y: number, lies: OutlineMark['lies'] = 'corner'): OutlineMark => ({
		x,
		y,
		lies,
	});

	test('corners alone stay where they were clicked', () => {
		const marks = [mark(0, 0), mark(100, 3), mark(50, 80)];
		expect(fitSides(marks)).toEqual({
			corners: marks.map(({ x, y }) => ({ x, y })),
			off: [0, 0, 0],
		});
	});

	test('a straight side is the one closest to its marks, and the corners go with it', () => {
		const tops = [10, 30, 50, 70, 90].map((x, i) =>
			mark(x, 60 + (i % 2 === 0 ? 0.4 : -0.6), 'side'),
		);
		const marks = [mark(0, 0), mark(100, 0), mark(100, 61), ...[...tops].reverse(), mark(0, 60)];
		const { corners, off } = fitSides(marks)!;
		expect(corners).toHaveLength(4);
		expect(corners[2]!.x).toBeCloseTo(100, 9);
		expect(Math.abs(corners[2]!.y - 60.2)).toBeLessThan(0.3);
		expect(Math.max(...off)).toBeLessThan(1);
	});

	test('a curved side is the arc closest to its marks', () => {
		const law = fc.property(
			fc.double({ min: -1.2, max: 1.2, noNaN: true }).filter((b) => Math.abs(b) > 0.02),
			(bulge) => {
				const [a, b] = [mark(0, 0), mark(200, 0)];
				const arc = arcOf(a, b, bulge);
				const on = [0.2, 0.4, 0.7].map((t) => {
					const angle = arc.start + t * arc.sweep;
					const { x, y } = arc.centre;
					return mark(x + arc.radius * Math.cos(angle), y + arc.radius * Math.sin(angle), 'curve');
				});
				const { corners, off } = fitSides([a, ...on, b, mark(120, 300)])!;
				expect(corners[0]!.bulge).toBeCloseTo(bulge, 5);
				expect(Math.max(...off)).toBeLessThan(1e-3);
			},
		);
		fc.assert(law, { numRuns: runs(100) });
	});

	test('a curve all round is a circle, and what encloses nothing is refused', () => {
		const round = [0, 1, 2, 3, 4, 5].map((i) => mark(50 * Math.cos(i), 50 * Math.sin(i), 'curve'));
		const { corners } = fitSides(round)!;
		expect(corners.map((c) => c.bulge)).toEqual([1, 1]);
		expect(far(corners[0]!, corners[1]!)).toBeCloseTo(100, 6);
		expect(fitSides([mark(0, 0), ...round.slice(1)])).toBeNull();
		expect(fitSides([mark(0, 0), mark(9, 0), mark(5, 0, 'side')])).toBeNull();
		expect(fitSides([0, 1, 2].map((x) => mark(x, x, 'curve')))).toBeNull();
		// A half disc: two corners, one straight side and one curve.
		expect(fitSides([mark(-50, 0), mark(50, 0), mark(0, 50, 'curve')])!.corners).toEqual([
			{ x: -50, y: 0 },
			{ x: 50, y: 0, bulge: expect.closeTo(1, 6) },
		]);
	});
});
