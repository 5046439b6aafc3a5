import { describe, expect, it } from 'vitest';
import { area } from '../../src/lib/geometry/extent';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mirrored } from '../../src/lib/geometry/turn';
import { mm, toMm } from '../../src/lib/measure/length';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { BARE, carpet, covering, GROOVED, outline, PLAIN, SHOP, sizeOf } from './make';

const board = rectangle(0, 0, mm(600), mm(300));
const wrap = (c: Parameters<typeof covering>[0], cloth = carpet()) =>
	wrapCovering(covering(c), cloth, SHOP, ['panels', 0]);
const one = (c: Parameters<typeof covering>[0], cloth = carpet()) => wrap(c, cloth).blanks[0]!;

describe('the size of a blank', () => {
	it('is the board plus edge, groove offset, groove depth and grip all round', () => {
		// 600 + 2 x (18 + 12 + 5 + 15) = 700; 300 + 100 = 400
		expect(sizeOf(one({ outline: board }))).toEqual([700, 400]);
	});

	it('is the board plus edge and plain margin where there is no groove', () => {
		// 600 + 2 x (18 + 40) = 716
		const edges = board.map(() => PLAIN);
		expect(sizeOf(one({ outline: board, edges }))).toEqual([716, 416]);
	});

	it('adds twice each step along the direction it is climbed in', () => {
		const island = {
			outline: rectangle(mm(100), mm(60), mm(300), mm(150)),
			height: mm(6),
			raised: true,
		};
		const bar = { outline: rectangle(mm(480), 0, mm(40), mm(300)), height: mm(4), raised: false };
		expect(sizeOf(one({ outline: board, steps: [island] }))).toEqual([712, 412]);
		// The bar runs over the whole height: across it the cloth goes in and out again, along it
		// not at all.
		expect(sizeOf(one({ outline: board, steps: [island, bar] }))).toEqual([720, 412]);
	});

	it('climbs a step at the edge of the board once: its other side is part of the edge', () => {
		const step = { outline: rectangle(mm(400), 0, mm(200), mm(300)), height: mm(6), raised: true };
		expect(sizeOf(one({ outline: board, steps: [step] }))).toEqual([706, 400]);
	});

	it('keeps only the grip at a bare edge', () => {
		const edges = [GROOVED, BARE, GROOVED, GROOVED];
		expect(sizeOf(one({ outline: board, edges }))).toEqual([600 + 50 + 15, 400]);
	});

	it('says the tape as a sum', () => {
		const island = {
			outline: rectangle(mm(100), mm(60), mm(300), mm(150)),
			height: mm(6),
			raised: true,
		};
		const { girth } = one({ outline: board, steps: [island] });
		expect(girth!.along).toEqual({
			face: mm(600),
			climbs: mm(12),
			ends: [mm(50), mm(50)],
			total: mm(712),
		});
		expect(girth!.across.total).toBe(mm(412));
	});

	it('turns with the nap, which points along the roll', () => {
		const down = one({ outline: board, nap: -90 });
		expect(sizeOf(down)).toEqual([400, 700]);
	});
});

describe('the corners of a blank', () => {
	const blank = one({ outline: board });

	it('gets a notch at each outside corner, its point one cloth short of the fold', () => {
		expect(blank.reliefs).toEqual({ notches: 0, slits: 0, corners: 4 });
		const notches = blank.marks.filter((m) => m.kind === 'notch');
		expect(notches).toHaveLength(4);
		// Corner of the board at 50, 50 on the blank; the cloth is 3 mm pressed, so the point lies
		// 3 mm outside both folds.
		const tips = notches.map((m) => m.line.map((p) => `${toMm(p.x)},${toMm(p.y)}`));
		expect(tips.some((line) => line.includes('47,47'))).toBe(true);
	});

	it('leaves the edge its cloth and mitres the back', () => {
		const corner = blank.marks
			.filter((m) => m.kind === 'notch')
			.find((m) => m.line.some((p) => toMm(p.x) === 47 && toMm(p.y) === 47))!;
		// Down the edge, 18 mm, the flap reaches 3 mm round the corner; from there the cut runs at
		// 45 degrees to the cloth's edge.
		const points = corner.line.map((p) => [toMm(p.x), toMm(p.y)]);
		expect(points).toContainEqual([47, 32]);
		expect(points).toContainEqual([47 + 32, 0]);
		expect(points).toContainEqual([32, 47]);
		expect(points).toContainEqual([0, 47 + 32]);
		expect(points).toContainEqual([0, 0]);
	});

	it('gets a slit at an inside corner', () => {
		const ell = outline([0, 0], [600, 0], [600, 200], [300, 200], [300, 400], [0, 400]);
		const { reliefs, marks } = one({ outline: ell });
		expect(reliefs).toEqual({ notches: 0, slits: 1, corners: 5 });
		const slit = marks.find((m) => m.kind === 'slit')!;
		// Seen from the back the inside corner of the board lies at 350, 500 - 250 of the blank (up
		// is down).
		const points = slit.line.map((p) => [toMm(p.x), toMm(p.y)]);
		expect(points[0]).toEqual([353, 247]);
		expect(points[1]).toEqual([400, 200]);
	});
});

describe('glue', () => {
	it('counts face, edges and back, on both faces', () => {
		const { blanks, needs } = wrap({ outline: board });
		const bonded = 600 * 300 + 2 * (600 + 300) * (18 + 12 + 5);
		expect(blanks[0]!.bonded).toBeCloseTo(bonded, 6);
		expect(needs).toEqual([
			{ kind: 'contact-adhesive', amount: (2 * bonded) / 1e6, for: 'both faces of Tray face' },
		]);
	});
});

describe('left and right', () => {
	it('makes mirror images of a mirrored pair', () => {
		const left = outline([0, 0], [600, 0], [560, 220], [200, 300], [0, 240]);
		const a = one({ outline: left, nap: -90 });
		const b = one({ outline: mirrored(left, mm(300)), nap: -90 });
		expect([b.length, b.width]).toEqual([a.length, a.width]);
		// Along the roll both run the same way; across it one is the other turned over.
		const key = (p: { x: number; y: number }) => `${p.x},${p.y}`;
		const flipped = new Set(a.outline.map((p) => key({ x: p.x, y: a.width - p.y })));
		expect(b.outline.map(key).filter((k) => !flipped.has(k))).toEqual([]);
		expect(area(b.outline)).toBeCloseTo(area(a.outline), 0);
		expect(b.outline.map(key).sort()).not.toEqual(a.outline.map(key).sort());
	});
});
