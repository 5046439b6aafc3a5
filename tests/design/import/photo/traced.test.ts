import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { squareUp } from '../../../../src/lib/design/import/photo/square-up';
import { drawShape } from '../../../../src/lib/design/panel/fit/draw-shape';
import { planPanel } from '../../../../src/lib/design/panel/plan-panel';
import { readJob } from '../../../../src/lib/job/reading/read';
import { outlineShape } from '../../../../src/lib/job/panel/outline';
import { OUTLINE_SEEN, PAPER_SEEN, picture, seen, TRUE_OUTLINE } from '../../panel/picture';
import { bounds } from '../../../../src/lib/geometry/extent';
import type { Point } from '../../../../src/lib/geometry/outline';

const MM = { unit: 'mm', fraction: 32, decimal: '.' } as const;

const A4 = { width: 210, height: 297 };
type Four = readonly [Point, Point, Point, Point];
const far = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

describe('squaring up a picture', () => {
	test('marks without a fault give the true places back', () => {
		const paper = [
			[150, 332],
			[360, 332],
			[360, 35],
			[150, 35],
		].map(([x, y]) => seen({ x: x!, y: y! }));
		const squared = squareUp(paper as unknown as Four, A4);
		if (!squared.ok) throw new Error(squared.why);
		for (const p of TRUE_OUTLINE)
			expect(far(squared.toMm(seen(p)), { x: p.x - 150, y: p.y - 35 })).toBeLessThan(1e-6);
		// Leaning by 24 degrees a circle looks cos 24 as high as wide, a little more or less off
		// the middle.
		expect(squared.squash).toBeGreaterThan(0.8);
		expect(squared.squash).toBeLessThan(0.95);
	});

	test('marks on whole pixels stay within the expected error', () => {
		const squared = squareUp(PAPER_SEEN as unknown as Four, A4);
		if (!squared.ok) throw new Error(squared.why);
		TRUE_OUTLINE.forEach((p, i) => {
			const off = far(squared.toMm(OUTLINE_SEEN[i]!), { x: p.x - 150, y: p.y - 35 });
			expect(off).toBeLessThan(squared.errorAt(OUTLINE_SEEN[i]!));
		});
	});

	test('the expected error grows away from the paper and with a smaller paper in the picture', () => {
		const squared = squareUp(PAPER_SEEN as unknown as Four, A4);
		const half = squareUp(
			PAPER_SEEN.map((p) => ({ x: p.x / 2, y: p.y / 2 })) as unknown as Four,
			A4,
		);
		if (!squared.ok || !half.ok) throw new Error('refused');
		const middle = { x: 790, y: 620 };
		const corner = OUTLINE_SEEN[2]!;
		expect(squared.errorAt(corner)).toBeGreaterThan(squared.errorAt(middle));
		const ratio = half.errorAt({ x: corner.x / 2, y: corner.y / 2 }) / squared.errorAt(corner);
		expect(ratio).toBeCloseTo(2, 1);
	});

	test('a picture taken too flat, or corners in the wrong order, are refused', () => {
		const flat: Four = [
			{ x: 300, y: 400 },
			{ x: 600, y: 400 },
			{ x: 700, y: 520 },
			{ x: 200, y: 520 },
		];
		expect(squareUp(flat, A4)).toMatchObject({ ok: false, why: 'oblique' });
		const [a, b, c, d] = PAPER_SEEN as unknown as Four;
		expect(squareUp([a, c, b, d], A4)).toMatchObject({ ok: false, why: 'corners' });
		expect(squareUp([a, d, c, b], A4)).toMatchObject({ ok: false, why: 'corners' });
		expect(squareUp([a, a, c, d], A4)).toMatchObject({ ok: false, why: 'corners' });
	});
});

describe('the traced sample', () => {
	const file: unknown = JSON.parse(readFileSync('shared/jobs/panel-traced-pocket.json', 'utf8'));

	test('its picture is the one the project makes', () => {
		expect(readFileSync('shared/jobs/panel-traced-template.svg', 'utf8')).toBe(picture());
	});

	test('plans the outline of the template, its expected error told', () => {
		const { job, problems } = readJob(file);
		expect(problems).toEqual([]);
		const plan = planPanel(job.panels[0]!, job, ['panels', 0]);
		const [error, lens, ...more] = plan.problems;
		expect(error!.what).toMatch(/expect the outline to be off by up to \d(\.\d)? mm/);
		expect(lens).toMatchObject({ kind: 'note', what: expect.stringMatching(/lens/) });
		expect(more).toEqual([]);
		const cuts = [{ chamfer: 15 }, ...Array.from({ length: 5 }, () => ({ radius: 22 }))];
		const points = TRUE_OUTLINE.map((p, i) => ({ ...p, cut: cuts[i] }));
		const truth = bounds(drawShape(outlineShape.parse({ kind: 'polyline', points }), MM).outline!);
		const box = plan.detail!.fit.sizes.opening;
		expect(Math.abs(box.length - truth.length) / 1600).toBeLessThan(1.5);
		expect(Math.abs(box.width - truth.width) / 1600).toBeLessThan(1.5);
	});

	test('a known length that does not fit is told', () => {
		const traced = (file as { panels: [{ opening: Record<string, unknown> }] }).panels[0].opening;
		const wrong = drawShape(outlineShape.parse({ ...traced, paper: 'letter' }), MM);
		expect(wrong.complaints.map((c) => c.what).join(' ')).toContain('The known length is 520 mm');
	});
});
