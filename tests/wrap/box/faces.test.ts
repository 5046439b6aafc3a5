import { describe, expect, it } from 'vitest';
import type { BoxSkin } from '../../../src/lib/design/covering';
import type { Outline } from '../../../src/lib/geometry/outline';
import { circle, rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { carpet as carpetField } from '../../../src/lib/job/box/place';
import { mm, toMm } from '../../../src/lib/measure/length';
import { boxFaces } from '../../../src/lib/wrap/box/faces';
import { wrapBox } from '../../../src/lib/wrap/wrap-box';
import { carpet, outline, SHOP, sizeOf } from '../make';
import { skin } from './skin';

const wish = (w: object = {}) =>
	carpetField.parse({ cloth: 'carpet', overlap: 20, margin: 40, ...w });
const bandOf = (s: BoxSkin, w: object = {}) =>
	wrapBox(s, wish(w), [{ cloth: carpet(), shop: SHOP }], []).ways.find((x) => x.way === 'band')!;
const blankOf = (s: BoxSkin, w: object = {}) =>
	bandOf(s, w).blanks.find((b) => b.id.endsWith('band'))!;

/** Where the cloth bends from face to face, from where the blank begins, mm. */
const bends = (s: BoxSkin, w: object = {}) =>
	blankOf(s, w)
		.marks.filter((m) => m.kind === 'fold' && Math.abs(m.line[0]!.x - m.line.at(-1)!.x) < 1)
		.map((m) => toMm(m.line[0]!.x))
		.sort((a, b) => a - b);

const face = (key: string, high: number) => ({
	key,
	name: key,
	outline: rectangle(0, 0, mm(600), mm(high)),
	holes: [],
});

/** 400 deep and 350 high, its back stepped in by 200 at a height of 200. */
const stepped: BoxSkin = skin({
	round: [
		face('front', 350),
		face('top', 200),
		face('step-face', 150),
		face('step-top', 200),
		face('back', 200),
		face('bottom', 400),
	],
	ends: [
		{
			key: 'left',
			name: 'Left end',
			outline: outline([0, 0], [400, 0], [400, 350], [200, 350], [200, 200], [0, 200]),
			holes: [],
		},
		{
			key: 'right',
			name: 'Right end',
			outline: outline([0, 0], [400, 0], [400, 200], [200, 200], [200, 350], [0, 350]),
			holes: [],
		},
	],
});

describe('what lies beside what', () => {
	it('an end meets the faces of its own edges, seen from outside', () => {
		const { ends } = boxFaces(skin(), wish());
		expect(ends.map(({ beside }) => beside)).toEqual([
			['bottom', 'front', 'top', 'back'],
			['bottom', 'back', 'top', 'front'],
		]);
	});

	it('a face meets the one before, the right end, the one after, the left end', () => {
		const { round } = boxFaces(skin(), wish());
		expect(round.map(({ beside }) => beside)).toEqual([
			['bottom', 'right', 'top', 'left'],
			['front', 'right', 'back', 'left'],
			['top', 'right', 'bottom', 'left'],
			['back', 'right', 'front', 'left'],
		]);
	});

	it.each(['left', 'right'])('the turns of the profile, read off the %s end alone', (key) => {
		const leaning = skin();
		const ends = leaning.ends.filter((e) => e.key === key);
		const lean = (Math.atan2(100, 350) * 180) / Math.PI;
		const turns = boxFaces({ ...leaning, ends }, wish()).turns.map((t) => (t * 180) / Math.PI);
		// The back leans: blunter at the top, sharper at the foot.
		[90, 90 - lean, 90 + lean, 90].forEach((turn, i) => expect(turns[i]).toBeCloseTo(turn, 6));
		const inner = boxFaces({ ...stepped, ends: stepped.ends.filter((e) => e.key === key) }, wish());
		expect(inner.turns.map((t) => Math.round((t * 180) / Math.PI))).toEqual([
			...[90, 90, -90, 90, 90, 90],
		]);
	});

	it('a square box: lengths fit everywhere, the way the faces look decides', () => {
		const square = outline([0, 0], [300, 0], [300, 300], [0, 300]);
		const ends = ['left', 'right'].map((key) => ({ key, name: key, outline: square, holes: [] }));
		const round = ['front', 'top', 'back', 'bottom'].map((key) => face(key, 300));
		const made = boxFaces(skin({ round, ends }), wish());
		expect(made.ends.map(({ beside }) => beside)).toEqual([
			['bottom', 'front', 'top', 'back'],
			['bottom', 'back', 'top', 'front'],
		]);
	});
});

describe('the sides of a band on a stepped box', () => {
	const blank = blankOf(stepped);

	it('are notched at five corners and slit at the one that goes in', () => {
		expect(blank.reliefs).toEqual({ notches: 10, slits: 2, corners: 0 });
	});

	it('are slit from one cloth off the edge of the box to the edge of the cloth', () => {
		const slits = blank.marks.filter((m) => m.kind === 'slit');
		const across = slits.map((m) => m.line.map((p) => toMm(p.y)).sort((a, b) => a - b));
		// 40 are turned on to each end; the box is 600 wide; the cloth 3 thick.
		expect(across.sort((a, b) => a[0]! - b[0]!)).toEqual([
			[0, 37],
			[643, 680],
		]);
		// All at the inner corner: 10 of lap, then what comes last round the box.
		const along = slits.flatMap((m) => m.line.map((p) => toMm(p.x)));
		along.forEach((x) => expect(x).toBeCloseTo(10 + 200 + 200 + 200, 1));
	});
});

describe('where a band is closed on the bottom', () => {
	const withHole = (hole: Outline) => {
		const { round } = skin();
		return skin({ round: round.map((f) => (f.key === 'bottom' ? { ...f, holes: [hole] } : f)) });
	};

	it.each([
		['a round hole above its middle', circle(mm(300), mm(250), mm(50)), 250 - 50 - 20],
		['a round hole below its middle', circle(mm(300), mm(150), mm(50)), 150 + 50 + 20],
		['a square hole', rectangle(mm(200), mm(160), mm(90), mm(90)), 160 - 20],
		['a hole far from it', circle(mm(300), mm(80), mm(50)), 200],
	])('beside %s: 10 clear of it and half a lap', (_, hole, at) => {
		const made = bends(withHole(hole));
		expect(made).toHaveLength(4);
		expect(made[0]! - 10).toBeCloseTo(at, 1);
	});

	it('at its edge where a hole leaves no room on it', () => {
		// From the back, which comes last round the box, to the bottom.
		const made = bends(withHole(rectangle(mm(200), mm(30), mm(90), mm(345))));
		expect(made.map((x) => Math.round(x - 10))).toEqual([364, 664, 1014]);
		const [length] = sizeOf(blankOf(withHole(rectangle(mm(200), mm(30), mm(90), mm(345)))));
		expect(length).toBeCloseTo(350 + 300 + Math.hypot(100, 350) + 400 + 20, 1);
	});

	it('between its first face and its last where all of them show', () => {
		const show = ['front', 'top', 'back', 'bottom'];
		expect(bandOf(skin(), { show }).problems.map((p) => p.what)).toEqual([
			'Carpeted as a band, a seam runs along the edge between Bottom and Front, and both are show faces.',
		]);
	});
});
