import { describe, expect, it } from 'vitest';
import { distanceTo } from '../../src/lib/geometry/meeting/inside';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm, toMm } from '../../src/lib/measure/length';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { carpet, covering, outline, PLAIN, SHOP } from './make';

const QUARTER = Math.tan(Math.PI / 8);
/** A board 900 x 900 with one corner rounded to 400, the others sharp; edges 12 high. */
const bow = outline([0, 0], [900, 0], [900, 500, QUARTER], [500, 900], [0, 900]);
const EDGE = { ...PLAIN, build: mm(12) };

/** How far the points of the cuts of that kind stay away from the fold, mm; nearest first. */
function points(cloth: object, kind: 'notch' | 'slit', edge = EDGE) {
	const [blank] = wrapCovering(
		covering({ outline: bow, edges: bow.map(() => edge) }),
		carpet(cloth),
		SHOP,
		[],
	).blanks;
	const folds = blank!.marks.filter((m) => m.kind === 'fold');
	return blank!.marks
		.filter((m) => m.kind === kind && !m.corner)
		.map((m) =>
			Math.min(
				...m.line.flatMap((p) =>
					folds.map((f) => toMm(Math.round(distanceTo(p, f.line)) as never)),
				),
			),
		);
}

describe('notches along a curve', () => {
	it('stop where the edge that is seen ends, where the cloth shrinks enough', () => {
		// 12 / (400 + 12) = 2.91 %
		const spared = points({ shrink: 3 }, 'notch');
		expect(spared.length).toBeGreaterThan(5);
		spared.forEach((d) => expect(d).toBeCloseTo(12, 0));
		const cut = points({ shrink: 2.9 }, 'notch');
		expect(cut).toHaveLength(spared.length);
		cut.forEach((d) => expect(d).toBeCloseTo(3, 0));
	});

	it('are none where nothing of the cloth lies on the back', () => {
		const onlyEdge = { ...EDGE, margin: mm(0) };
		expect(points({ shrink: 3 }, 'notch', onlyEdge)).toEqual([]);
		expect(points({ shrink: 2.9 }, 'notch', onlyEdge).length).toBeGreaterThan(5);
	});

	it('leave sharp corners as they are: nothing shrinks round those', () => {
		const [blank] = wrapCovering(
			covering({ outline: bow }),
			carpet({ shrink: 50 }),
			SHOP,
			[],
		).blanks;
		expect(blank!.reliefs.corners).toBe(3);
	});
});

describe('a relief cut at a step', () => {
	const board = rectangle(0, 0, mm(600), mm(300));
	const cuts = (
		raised: boolean,
		cloth: object,
		at = rectangle(mm(200), mm(100), mm(200), mm(100)),
	) => {
		const [blank] = wrapCovering(
			covering({ outline: board, steps: [{ outline: at, height: mm(10), raised }] }),
			carpet({ relief: 1, ...cloth }),
			SHOP,
			[],
		).blanks;
		return blank!;
	};

	it('is drawn at each outside corner the cloth does not take, down to the foot', () => {
		const flat = cuts(true, { shrink: 100 });
		const cut = cuts(true, { shrink: 5 });
		expect(flat.reliefs.corners).toBe(4);
		expect(cut.reliefs.corners).toBe(8);
		// Lower left corner of the layer on the blank: 50 + 10 + 200, and from the back up is down.
		const step = cut.marks.find((m) => m.kind === 'step')!;
		const corner = {
			x: Math.min(...step.line.map((p) => p.x)),
			y: Math.min(...step.line.map((p) => p.y)),
		};
		const near = cut.marks.filter(
			(m) =>
				m.kind === 'notch' &&
				m.line.some((p) => Math.hypot(p.x - corner.x, p.y - corner.y) < mm(5)),
		);
		expect(near).toHaveLength(1);
		const points = near[0]!.line.map((p) => [
			toMm((p.x - corner.x) as never),
			toMm((p.y - corner.y) as never),
		]);
		// From 3 mm off the corner to where both sides, 10 mm high, meet in the flat.
		expect(points).toContainEqual([-3, -3]);
		expect(points).toContainEqual([-10, -10]);
	});

	it('is a slit at an inside corner, and none where the cloth stretches round it', () => {
		expect(cuts(false, { stretchAlong: 5, stretchAcross: 5 }).reliefs.slits).toBe(4);
		const round = outline(
			[230, 100],
			[370, 100, QUARTER],
			[400, 130],
			[400, 170, QUARTER],
			[370, 200],
			[230, 200, QUARTER],
			[200, 170],
			[200, 130, QUARTER],
		);
		// 10 / (30 - 10) = 50 %
		expect(cuts(false, { stretchAlong: 50, stretchAcross: 50 }, round).reliefs.slits).toBe(0);
		expect(
			cuts(false, { stretchAlong: 49, stretchAcross: 50 }, round).reliefs.slits,
		).toBeGreaterThan(3);
	});

	it('is left to the edge where the step ends there', () => {
		const strip = rectangle(mm(200), 0, mm(200), mm(300));
		expect(cuts(true, { shrink: 5 }, strip).reliefs).toEqual({ notches: 0, slits: 0, corners: 4 });
	});
});
