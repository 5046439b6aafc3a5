import fc from 'fast-check';
import { runs } from '../../depth';
import { describe, expect, it } from 'vitest';
import { common, regionArea } from '../../../src/lib/geometry/shaping/clip';
import { area } from '../../../src/lib/geometry/extent';
import { circle, rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { mm, toMm } from '../../../src/lib/measure/length';
import type { Blank } from '../../../src/lib/wrap/blank';
import { wrapBox } from '../../../src/lib/wrap/wrap-box';
import type { WrapShop } from '../../../src/lib/wrap/shop';
import { wrapCovering } from '../../../src/lib/wrap/wrap-panel';
import { carpet as carpetField } from '../../../src/lib/job/box/place';
import { carpet, covering, GROOVED, outline, SHOP, sizeOf } from '../make';
import { anyCovering } from '../random-covering';
import { skin } from './skin';

const roll = (usable: number): WrapShop => ({ ...SHOP, usable: mm(usable) });
const wrap = (
	c: Parameters<typeof covering>[0],
	shop: WrapShop,
	cloth = carpet({ nap: 'one-way' }),
) => wrapCovering(covering(c), cloth, shop, ['panels', 0]);
const board = rectangle(0, 0, mm(600), mm(300));
const seamsOf = (b: Blank) => b.marks.filter((m) => m.kind === 'seam');

describe('a blank wider than the roll', () => {
	it('is left alone when it fits', () => {
		const { blanks, problems } = wrap({ outline: board }, roll(400));
		expect(blanks.map((b) => b.id)).toEqual(['tray.face']);
		expect(problems).toEqual([]);
	});

	it('is split in the middle, each part wider by half the overlap, and says so', () => {
		// 400 across; in two: 200 + 10 each.
		const { blanks, problems } = wrap({ outline: board }, roll(399));
		expect(blanks.map(sizeOf)).toEqual([
			[700, 210],
			[700, 210],
		]);
		expect(blanks.map((b) => b.label)).toEqual(['C1a', 'C1b']);
		expect(new Set(blanks.map((b) => b.lot))).toEqual(new Set(['tray.face']));
		expect(blanks.map((b) => seamsOf(b).length)).toEqual([1, 1]);
		expect(problems).toHaveLength(1);
		expect(problems[0]!.what).toContain(
			'is 400 mm wide across the roll, and the widest roll gives 399 mm',
		);
		expect(problems[0]!.kind).toBe('check');
	});

	it('shares out its reliefs and its glue', () => {
		const { blanks } = wrap({ outline: board }, roll(399));
		const whole = wrap({ outline: board }, SHOP).blanks[0]!;
		expect(blanks.map((b) => b.reliefs.corners)).toEqual([2, 2]);
		expect(blanks.reduce((sum, b) => sum + b.bonded, 0)).toBeCloseTo(whole.bonded, 3);
	});

	it('moves an offered seam off a window', () => {
		const windows = [{ outline: rectangle(mm(250), mm(100), mm(100), mm(90)), edge: GROOVED }];
		const { blanks, problems } = wrap({ outline: board, windows }, roll(320));
		// On the blank the window spans 50 + 110 to 50 + 200 across; the seam keeps 15 clear of it
		// beyond the half overlap.
		expect(blanks.map((b) => sizeOf(b)[1]).sort((a, b) => a - b)).toEqual([
			135 + 10,
			400 - 135 + 10,
		]);
		expect(problems[0]!.what).not.toContain('through');
	});

	it('says when the seam has to run through a window', () => {
		const windows = [{ outline: rectangle(mm(250), mm(20), mm(100), mm(260)), edge: GROOVED }];
		const { problems } = wrap({ outline: board, windows }, roll(300));
		expect(problems.some((p) => p.what.includes('the seam runs through a window'))).toBe(true);
	});

	it('is turned instead where the nap allows it', () => {
		const plain = carpet({ nap: 'none' });
		const tall = rectangle(0, 0, mm(300), mm(600));
		expect(wrap({ outline: tall }, roll(500), plain).blanks).toHaveLength(1);
		expect(wrap({ outline: tall }, roll(500)).blanks).toHaveLength(2);
		expect(wrap({ outline: tall, anyWay: true }, roll(500)).blanks).toHaveLength(1);
	});

	it('is refused when it would be patchwork', () => {
		const { blanks, problems } = wrap({ outline: board }, roll(60));
		expect(blanks).toEqual([]);
		expect(problems.map((p) => p.kind)).toEqual(['stop']);
	});

	it('of a box is split as well, and its seam counted', () => {
		const wish = carpetField.parse({ cloth: 'carpet', overlap: 20, margin: 40, cover: ['front'] });
		const cloth = carpet({ nap: 'one-way' });
		const { ways } = wrapBox(skin(), wish, [{ cloth, shop: roll(500) }], ['boxes', 0]);
		const band = ways.find((w) => w.way === 'band')!;
		expect(band.blanks).toHaveLength(2);
		expect(band.seams).toBe(1);
		expect(toMm(band.seamLength)).toBeCloseTo(350 + 80, 1);
	});
});

describe('a seam placed by the person', () => {
	it('is made where it was placed, seen from the back', () => {
		const seams = [
			[
				{ x: mm(200), y: 0 },
				{ x: mm(200), y: mm(300) },
			],
		] as const;
		const { blanks, problems } = wrap({ outline: board, seams }, SHOP);
		expect(problems).toEqual([]);
		expect(blanks.map((b) => sizeOf(b)[0]).sort((a, b) => a - b)).toEqual([250 + 10, 450 + 10]);
	});

	it('may run askew', () => {
		const seams = [
			[
				{ x: mm(200), y: 0 },
				{ x: mm(400), y: mm(300) },
			],
		] as const;
		const { blanks } = wrap({ outline: board, seams }, SHOP);
		const cut = blanks.reduce((sum, b) => sum + area(b.outline), 0);
		const length = Math.hypot(400, (200 * 400) / 300) * 20;
		expect(cut / 1600 ** 2).toBeCloseTo(700 * 400 + length, 0);
	});

	it('cuts through the marks', () => {
		const windows = [{ outline: circle(mm(300), mm(150), mm(60)), edge: GROOVED }];
		const seams = [
			[
				{ x: mm(300), y: 0 },
				{ x: mm(300), y: mm(300) },
			],
		] as const;
		const { blanks } = wrap({ outline: board, windows, seams }, SHOP);
		for (const b of blanks)
			for (const m of b.marks)
				for (const p of m.line) {
					expect(p.x).toBeGreaterThanOrEqual(-1);
					expect(p.x).toBeLessThanOrEqual(b.length + 1);
				}
	});
});

describe('the parts of any cloth', () => {
	it('fit the roll and lap by the overlap, no more and no less', () => {
		fc.assert(
			fc.property(anyCovering(1), fc.integer({ min: 150, max: 900 }), (c, usable) => {
				const whole = wrap(c, SHOP).blanks[0]!;
				const { blanks } = wrap(c, roll(usable));
				for (const b of blanks) expect(b.width).toBeLessThanOrEqual(mm(usable) + 2);
				if (blanks.length === 0) return;
				const sum = blanks.reduce((total, b) => total + area(b.outline), 0);
				const seams = blanks.flatMap(seamsOf).reduce((l, m) => l + lengthOf(m.line), 0) / 2;
				// The laps: seam length times overlap, but for the slant of the cloth's edge at
				// their ends.
				expect(sum).toBeGreaterThan(area(whole.outline) - mm(1) ** 2);
				expect(Math.abs(sum - area(whole.outline) - seams * mm(20))).toBeLessThan(
					0.02 * area(whole.outline),
				);
			}),
			{ numRuns: runs(60) },
		);
	});
});

const lengthOf = (line: Blank['marks'][number]['line']) =>
	Math.hypot(line[0]!.x - line.at(-1)!.x, line[0]!.y - line.at(-1)!.y);

describe('the overlap', () => {
	it('is there along the whole seam', () => {
		const { blanks } = wrap(
			{ outline: outline([0, 0], [500, 0], [500, 400], [0, 400]) },
			roll(300),
		);
		const [a, b] = blanks;
		const shift = b!.width - mm(20);
		const upper = a!.outline.map((p) => ({ x: p.x, y: p.y + shift }));
		const lap = common([upper], [b!.outline]).reduce((sum, r) => sum + regionArea(r), 0);
		expect(lap / 1600 ** 2).toBeCloseTo(600 * 20, 0);
	});
});
