import { describe, expect, it } from 'vitest';
import { plan } from '../../../src/lib/plan';
import type { Mark, PathMark } from '../../../src/lib/print/drawing/drawing';
import { clipped } from '../../../src/lib/print/drawing/clip';
import { circlePath, polygon, rect, type Spot } from '../../../src/lib/print/drawing/path';
import { templatePages } from '../../../src/lib/print/pack';
import { struckCircle } from '../../../src/lib/print/templates/circle';
import { toTrace } from '../../../src/lib/print/templates/features';
import { templateOf, templatesOf } from '../../../src/lib/print/templates/pages';
import { partTemplate } from '../../../src/lib/print/templates/part-template';
import { piecesOf } from '../../../src/lib/print/templates/pieces';
import { sample } from '../../plan/samples';
import { samplePlan } from '../fixture';
import { wordsOn } from '../words-on';

const EVERYWHERE = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 };
const ROOM = { width: 180, height: 213 };

/** Strokes of a path, curves as their chords. */
function strokes(mark: PathMark): (readonly [Spot, Spot])[] {
	let pen: Spot = { x: 0, y: 0 };
	return clipped(mark.steps, EVERYWHERE).flatMap(([kind, x, y]) => {
		const from = pen;
		pen = { x: Number(x), y: Number(y) };
		return kind === 'L' ? [[from, pen] as const] : [];
	});
}

function off(p: Spot, [a, b]: readonly [Spot, Spot]): number {
	const long = Math.hypot(b.x - a.x, b.y - a.y);
	const t = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / long ** 2;
	const on = Math.min(1, Math.max(0, t));
	return Math.hypot(p.x - a.x - on * (b.x - a.x), p.y - a.y - on * (b.y - a.y));
}

const isPath = (m: Mark): m is PathMark => m.kind === 'path';
const path = (steps: PathMark['steps']): PathMark => ({ kind: 'path', steps, line: 'wide' });
const made = await plan(sample('camper-bench.json'), { effort: 60, seed: 1 });
const all = templatesOf(made);

describe('what is traced', () => {
	it('is nothing of a rectangle, of long straight runs, nor of a circle', () => {
		expect(toTrace([path(rect(0, 0, 400, 300))], EVERYWHERE)).toEqual([]);
		const wedge = polygon([
			{ x: 0, y: 0 },
			{ x: 400, y: 90 },
			{ x: 350, y: 300 },
			{ x: 0, y: 300 },
		]);
		expect(toTrace([path(wedge)], EVERYWHERE)).toEqual([]);
		expect(struckCircle(path([...circlePath(50, 60, 30), ['Z']]))).toMatchObject({
			x: expect.closeTo(50, 2) as number,
			y: expect.closeTo(60, 2) as number,
			across: expect.closeTo(60, 1) as number,
		});
		expect(struckCircle(path(rect(0, 0, 60, 60)))).toBeNull();
	});

	it('is a deep notch in a long edge as well, whose sides are no short runs', () => {
		const notched = polygon([
			{ x: 0, y: 0 },
			{ x: 200, y: 0 },
			{ x: 220, y: 40 },
			{ x: 240, y: 0 },
			{ x: 650, y: 0 },
			{ x: 650, y: 777 },
			{ x: 0, y: 777 },
		]);
		expect(toTrace([path(notched)], EVERYWHERE)).toEqual([
			{ x: 188, y: -12, width: 64, height: 64 },
		]);
	});

	it('is a notch by itself, with a stub of the straight on each side', () => {
		const notched = polygon([
			{ x: 0, y: 0 },
			{ x: 200, y: 0 },
			{ x: 206, y: 20 },
			{ x: 212, y: 0 },
			{ x: 400, y: 0 },
			{ x: 400, y: 300 },
			{ x: 0, y: 300 },
		]);
		expect(toTrace([path(notched)], EVERYWHERE)).toEqual([
			{ x: 188, y: -12, width: 36, height: 44 },
		]);
	});

	it('is every curve and every short run of all templates of the sample', () => {
		let traced = 0;
		for (const template of all) {
			const windows = piecesOf(template, ROOM, 5).map((p) => p.window);
			expect(windows.length).toBeGreaterThan(0);
			for (const stroke of template.traced.flatMap(strokes)) {
				const [a, b] = stroke;
				if (Math.hypot(b.x - a.x, b.y - a.y) > 39) continue;
				traced++;
				const shown = windows.some((w) =>
					[a, b].every(
						(p) =>
							p.x >= w.x - 1e-6 &&
							p.x <= w.x + w.width + 1e-6 &&
							p.y >= w.y - 1e-6 &&
							p.y <= w.y + w.height + 1e-6,
					),
				);
				expect({ template: template.name, stroke, shown }).toMatchObject({ shown: true });
			}
		}
		expect(traced).toBeGreaterThan(500);
	});
});

describe('a printed piece', () => {
	it('is the template at full size where its frame says it lies', () => {
		let seen = 0;
		for (const template of all) {
			const lines = template.marks.flatMap(strokes);
			const rows = templateOf(made, template)
				.flatMap((leaf) => leaf.blocks)
				.map(({ later, marks }) => ({ marks: later?.() ?? marks }))
				.filter((b) => wordsOn(b.marks).some((t) => t.startsWith('left edge at')));
			for (const { marks } of rows) {
				marks.forEach((mark, i) => {
					if (mark.kind !== 'text' || !mark.text.startsWith('left edge at')) return;
					// The frame of a piece stands before its words, its strokes before the frame.
					const frame = marks[i - 2] as PathMark;
					const [left, low] = mark.text.match(/-?[\d.]+/g)!.map(Number) as [number, number];
					const [, x, y] = frame.steps[0] as readonly ['M', number, number];
					const high = (frame.steps[2] as readonly ['L', number, number])[2] - y;
					for (const from of piece(marks.slice(0, i - 2))
						.flatMap(strokes)
						.flat()) {
						const at = { x: from.x - x + left, y: template.height - low - high + (from.y - y) };
						const near = Math.min(...lines.map((l) => off(at, l)));
						expect(near).toBeLessThan(0.1);
						seen++;
					}
				});
			}
		}
		expect(seen).toBeGreaterThan(500);
	});

	/** The strokes since the last words. */
	function piece(marks: readonly Mark[]): PathMark[] {
		const last = marks.findLastIndex((m) => m.kind === 'text');
		return marks
			.slice(last + 1)
			.filter(isPath)
			.filter((m) => m.ink === undefined && !m.fill);
	}

	it('goes by the steps of the ruler: quarters of an inch in an inch shop', () => {
		for (const template of all) {
			for (const { name, window } of piecesOf(template, ROOM, 6.35)) {
				if (name === '') continue;
				const low = template.height - window.y - window.height;
				for (const n of [window.x, low]) {
					expect(n).toBeGreaterThan(-1e-9);
					expect(Math.abs(n / 6.35 - Math.round(n / 6.35))).toBeLessThan(1e-9);
				}
				expect(window.x + window.width).toBeLessThan(template.width + 1e-9);
				expect(window.y).toBeGreaterThan(-1e-9);
			}
		}
	});
});

it('a rectangle with sharp corners has no template, one with a rounded corner has', () => {
	const plain = samplePlan();
	const named = (of: typeof plain) => templatesOf(of).map((t) => t.id);
	expect(named(plain)).toContain('cover.C1');
	const { parts } = plain;
	const sharp = parts.map(({ outline: _, ...part }) => ({ ...part, holes: [] }));
	expect(named({ ...plain, parts: sharp, blanks: [] })).toEqual([]);
	expect(partTemplate(sharp[0]!).traced).toHaveLength(1);
});

it('every page of templates has both bars and says what its lines are', () => {
	for (const page of templatePages(made)) {
		const words = wordsOn(page.marks);
		expect(words).toEqual(expect.arrayContaining(['100 mm', '4 in']));
	}
	expect(templatePages(made).length).toBeLessThan(25);
});
