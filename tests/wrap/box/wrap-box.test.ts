import { describe, expect, it } from 'vitest';
import { carpet as carpetField } from '../../../src/lib/job/box/place';
import { mm, toMm } from '../../../src/lib/measure/length';
import { wrapBox, type BoxWay } from '../../../src/lib/wrap/wrap-box';
import { carpet, outline, SHOP, sizeOf } from '../make';
import { skin } from './skin';

const wish = (w: object = {}) =>
	carpetField.parse({ cloth: 'carpet', overlap: 20, margin: 40, ...w });
const wrapped = (w: object = {}, s = skin()) =>
	wrapBox(s, wish(w), [{ cloth: carpet(), shop: SHOP }], ['boxes', 0, 'carpet']);
const way = (ways: readonly BoxWay[], which: BoxWay['way']) => ways.find((x) => x.way === which)!;
const byKey = (w: BoxWay, key: string) => w.blanks.find((b) => b.id === `bench.carpet.${key}`)!;
/** Front 350, top 300, back sqrt(100^2 + 350^2), bottom 400. */
const AROUND = 350 + 300 + Math.hypot(100, 350) + 400;

describe('a band round the box', () => {
	const band = way(wrapped().ways, 'band');

	it('is as long as the way round and the seam overlap, and as wide as the box and both turns', () => {
		const [length, width] = sizeOf(byKey(band, 'band'));
		expect(length).toBeCloseTo(AROUND + 20, 1);
		expect(width).toBe(600 + 2 * 40);
	});

	it('is notched on both sides at each of the four corners it goes round', () => {
		expect(byKey(band, 'band').reliefs).toEqual({ notches: 8, slits: 0, corners: 0 });
	});

	it('leaves the caps to start inside the turned cloth, lapped by the overlap', () => {
		// 350 high and 400 deep at the foot; 40 - 20 inside every edge.
		const [length, width] = sizeOf(byKey(band, 'left'));
		expect(length).toBe(350 - 2 * 20);
		// At the foot 20 are lost to the upright front; 20 above the floor the leaning back stands
		// 20 x 100 / 350 further in.
		const lean = Math.hypot(100, 350) / 350;
		expect(width).toBeCloseTo(400 - 20 - 20 * lean - (20 * 100) / 350, 1);
	});

	it('counts one seam across the band and one round each cap', () => {
		expect(band.seams).toBe(3);
		expect(toMm(band.seamLength)).toBeCloseTo(600 + 2 * AROUND, 1);
	});

	it('closes on the bottom: the seam lies away from the edges and every face is on it once', () => {
		const folds = byKey(band, 'band').marks.filter((m) => m.kind === 'fold' && m.line.length === 2);
		const across = folds.filter((m) => Math.abs(m.line[0]!.x - m.line[1]!.x) < 1);
		const xs = across.map((m) => toMm(m.line[0]!.x)).sort((a, b) => a - b);
		// The band starts in the middle of the bottom with half of the overlap before it. Nap runs
		// down the front, so the blank begins with what comes last round the box.
		expect(xs).toHaveLength(4);
		expect(xs[0]! - 10).toBeCloseTo(200, 1);
		expect(xs[1]! - xs[0]!).toBeCloseTo(Math.hypot(100, 350), 1);
		expect(xs[2]! - xs[1]!).toBeCloseTo(300, 1);
		expect(xs[3]! - xs[2]!).toBeCloseTo(350, 1);
	});

	it('carries the driver hole where the driver is', () => {
		const holes = byKey(band, 'band').marks.filter((m) => m.kind === 'hole');
		expect(holes).toHaveLength(1);
		const ys = holes[0]!.line.map((p) => toMm(p.y));
		expect((Math.max(...ys) + Math.min(...ys)) / 2).toBeCloseTo(340, 1);
		const xs = holes[0]!.line.map((p) => toMm(p.x));
		// half an overlap, half the bottom, back, top, and half of the front
		const middle = 10 + 200 + Math.hypot(100, 350) + 300 + 175;
		expect((Math.max(...xs) + Math.min(...xs)) / 2).toBeCloseTo(middle, 0);
	});
});

describe('where the seams lie', () => {
	it('keeps the closing seam off show faces and off holes', () => {
		const shown = way(wrapped({ show: ['bottom', 'front', 'top'] }).ways, 'band');
		const folds = byKey(shown, 'band').marks.filter((m) => m.kind === 'fold');
		// It closes on the back: the first fold comes half the back after the overlap.
		const xs = folds
			.filter((m) => Math.abs(m.line[0]!.x - m.line.at(-1)!.x) < 1)
			.map((m) => toMm(m.line[0]!.x));
		expect(Math.min(...xs) - 10).toBeCloseTo(Math.hypot(100, 350) / 2, 1);
		expect(shown.problems).toEqual([]);
	});

	it('turns a show end over on to faces that are not shown', () => {
		const shown = way(wrapped({ show: ['left'] }).ways, 'band');
		expect(sizeOf(byKey(shown, 'left'))[0]).toBe(350 + 2 * 40);
		// The band turns on to the right end only and starts 20 inside the left edge.
		expect(sizeOf(byKey(shown, 'band'))[1]).toBe(600 - 20 + 40);
	});

	it('runs along the edge between two show faces and says so', () => {
		const both = way(wrapped({ show: ['front', 'left'] }).ways, 'band');
		expect(both.problems.map((p) => p.what)).toEqual([
			'Carpeted as a band, a seam runs along the edge between Left end and Front, and both are show faces.',
		]);
	});

	it('says so when every face round the box is a show face', () => {
		const all = way(wrapped({ show: ['front', 'top', 'back', 'bottom'] }).ways, 'band');
		expect(all.problems.map((p) => p.kind)).toEqual(['check']);
	});
});

describe('faces left bare', () => {
	it('get the turn-under of their neighbours and no cloth of their own', () => {
		const made = way(wrapped({ cover: ['front', 'top', 'back'] }).ways, 'band');
		expect(made.blanks.map((b) => b.id)).toEqual(['bench.carpet.band']);
		const [length, width] = sizeOf(made.blanks[0]!);
		expect(length).toBeCloseTo(350 + 300 + Math.hypot(100, 350) + 2 * 40, 1);
		expect(width).toBe(680);
		expect(made.seams).toBe(0);
		expect(made.blanks[0]!.reliefs).toEqual({ notches: 4, slits: 0, corners: 4 });
	});

	it('make two bands when the covered ones lie apart', () => {
		const made = way(wrapped({ cover: ['front', 'back'] }).ways, 'band');
		expect(made.blanks.map((b) => b.covers)).toEqual(['Back', 'Front']);
	});
});

describe('face by face', () => {
	const faces = way(wrapped().ways, 'faces');

	it('makes a blank of each face and counts a seam for each edge', () => {
		expect(faces.blanks.map((b) => b.covers)).toEqual([
			'Front',
			'Top',
			'Back',
			'Bottom',
			'Left end',
			'Right end',
		]);
		expect(faces.seams).toBe(12);
		expect(toMm(faces.seamLength)).toBeCloseTo(4 * 600 + 2 * AROUND, 1);
	});

	it('lets the front go round all four edges and the bottom under its neighbours', () => {
		expect(sizeOf(byKey(faces, 'front'))).toEqual([350 + 80, 600 + 80]);
		expect(sizeOf(byKey(faces, 'bottom'))).toEqual([400 - 40, 600 + 80]);
	});

	it('glues less cloth than it cuts by no more than the laps', () => {
		const skinArea = 600 * AROUND + 2 * 350 * 350 - Math.PI * 120 * 120;
		const bonded = faces.blanks.reduce((sum, b) => sum + b.bonded, 0);
		expect(bonded).toBeGreaterThan(skinArea);
		// Every seam is lapped by 20 mm.
		expect(bonded).toBeLessThan(skinArea + 20 * toMm(faces.seamLength) + 20 * 20 * 24);
	});
});

describe('what cannot be', () => {
	it('has no band for a box that leans both ways', () => {
		expect(wrapped({}, skin({ across: null })).ways.map((w) => w.way)).toEqual(['faces']);
	});

	it('knows the neighbours of its upright faces: at every seam one cloth laps the other', () => {
		// Front 600 x 350, back 500 x 300, 400 deep: each face a trapezoid from its lower left
		// corner on.
		const face = (key: string, foot: number, head: number, high: number) => {
			const inset = (foot - head) / 2;
			const shape = outline([0, 0], [foot, 0], [foot - inset, high], [inset, high]);
			return { key, name: key, outline: shape, holes: [] };
		};
		const round = [
			face('front', 600, 600, 350),
			face('top', 600, 500, 404),
			face('back', 500, 500, 300),
			face('bottom', 500, 600, 404),
		];
		const ends = [face('left', 403, 403, 330), face('right', 403, 403, 330)];
		const [made] = wrapped({ cover: ['front', 'top'] }, skin({ across: null, round, ends })).ways;
		// The top starts 20 inside its front edge, where the front goes round on to it, and turns
		// over the other three.
		expect(made!.seams).toBe(1);
		expect(toMm(made!.seamLength)).toBeCloseTo(600, 6);
		expect(sizeOf(made!.blanks[0]!)).toEqual([350 + 80, 600 + 80]);
		expect(sizeOf(made!.blanks[1]!)[0]).toBe(404 - 20 + 40);
	});

	it('asks back about a face the box does not have', () => {
		const { problems } = wrapped({ show: ['step-top'] });
		expect(problems).toHaveLength(1);
		expect(problems[0]!.path).toEqual(['boxes', 0, 'carpet', 'show', 0]);
		expect(problems[0]!.fix).toContain('front, top, back, bottom, left, right');
	});

	it('slits the band where the profile turns inwards', () => {
		// A step at the lower back: front, top, back, step top, step face, bottom.
		const stepped = skin();
		const high = [350, 400, 250, 150, 100, 250];
		const keys = ['front', 'top', 'back', 'step-top', 'step-face', 'bottom'];
		const round = keys.map((key, i) => ({
			...stepped.round[0]!,
			key,
			name: key,
			holes: [],
			outline: outline([0, 0], [600, 0], [600, high[i]!], [0, high[i]!]),
		}));
		const side = outline([0, 0], [250, 0], [250, 100], [400, 100], [400, 350], [0, 350]);
		const flip = [...side].reverse().map((p) => ({ x: mm(400) - p.x, y: p.y }));
		const ends = [
			{ key: 'left', name: 'Left end', outline: flip, holes: [] },
			{ key: 'right', name: 'Right end', outline: side, holes: [] },
		];
		const band = way(wrapped({}, skin({ round, ends })).ways, 'band');
		expect(byKey(band, 'band').reliefs).toEqual({ notches: 10, slits: 2, corners: 0 });
	});
});

describe('the sizes of laps and turn-unders', () => {
	const said = (w: object) =>
		wrapped(w).problems.map((p) => `${p.kind} ${p.path.slice(2).join('.')}: ${p.what}`);

	it('are said where no face has room for them, or a lap is too narrow to be cut', () => {
		expect(said({})).toEqual([]);
		expect(said({ overlap: 160 })[0]).toMatch(/^check carpet.overlap: The seam overlap is 160 mm/);
		expect(said({ margin: 900 })[0]).toMatch(
			/^check carpet.margin: The turn-under of the carpet is/,
		);
		expect(said({ overlap: 0 })).toEqual([
			'note carpet.overlap: The seam overlap is 0 mm: too little to cut through both layers in one stroke.',
		]);
		expect(said({ overlap: 5 })).toEqual([]);
	});
});
