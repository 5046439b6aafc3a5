import { describe, expect, it } from 'vitest';
import { carpet as carpetField } from '../../../src/lib/job/box/place';
import { mm, toMm } from '../../../src/lib/measure/length';
import { wrapBox, type BoxWay } from '../../../src/lib/wrap/wrap-box';
import { carpet, SHOP, sizeOf } from '../make';
import { skin } from './skin';

/* One or more faces of a box in another cloth than the rest. */

const main = carpet();
const vinyl = { ...carpet({ nap: 'none' }), id: 'vinyl', name: 'Vinyl' };
const cloths = [main, vinyl].map((cloth) => ({ cloth, shop: SHOP }));
const wrapped = (wish: object, on = cloths) =>
	wrapBox(skin(), carpetField.parse({ cloth: 'carpet', overlap: 20, margin: 40, ...wish }), on, [
		'boxes',
		0,
		'carpet',
	]);
const way = (ways: readonly BoxWay[], which: BoxWay['way']) => ways.find((w) => w.way === which)!;
const byKey = (w: BoxWay, key: string) => w.blanks.find((b) => b.id === `bench.carpet.${key}`)!;
const front = { other: [{ face: 'front', cloth: 'vinyl' }] };
const LEAN = Math.hypot(100, 350);

describe('a front in another cloth', () => {
	it('ends the band where it begins, and is a band of its own', () => {
		const band = way(wrapped(front).ways, 'band');
		expect(band.blanks.map((b) => b.cloth).sort()).toEqual(['carpet', 'carpet', 'carpet', 'vinyl']);
		// Neither is looked at: the front, first in the order, goes round both its edges by 40, and
		// the rest starts 20 inside them.
		expect(sizeOf(byKey(band, 'band-1'))).toEqual([350 + 2 * 40, 600 + 2 * 40]);
		expect(byKey(band, 'band-2').cloth).toBe('carpet');
		const [length, width] = sizeOf(byKey(band, 'band-2'));
		expect(length).toBeCloseTo(300 + LEAN + 400 - 2 * 20, 1);
		expect(width).toBe(600 + 2 * 40);
	});

	it('has its seams on the faces behind it where it is looked at', () => {
		const band = way(wrapped({ ...front, show: ['front'] }).ways, 'band');
		const plain = way(wrapped(front).ways, 'band');
		expect(sizeOf(byKey(band, 'band-1'))).toEqual(sizeOf(byKey(plain, 'band-1')));
		expect(band.problems).toEqual([]);
	});

	it('starts inside its own edges where the faces beside it are looked at', () => {
		const band = way(wrapped({ ...front, show: ['top', 'bottom', 'back'] }).ways, 'band');
		expect(sizeOf(byKey(band, 'band-1'))[0]).toBe(350 - 2 * 20);
		expect(sizeOf(byKey(band, 'band-2'))[0]).toBeCloseTo(300 + LEAN + 400 + 2 * 40, 1);
		expect(band.problems).toEqual([]);
	});

	it('meets at the edge itself, and says so, where both are looked at', () => {
		const band = way(wrapped({ ...front, show: ['front', 'top'] }).ways, 'band');
		// 10 past the edge at the top, 40 round the bottom one.
		expect(sizeOf(byKey(band, 'band-1'))[0]).toBe(350 + 10 + 40);
		expect(band.problems.map((p) => p.what)).toEqual([
			'Carpeted as a band, a seam runs along the edge between Front and Top, and both are show faces.',
		]);
	});

	it('counts the seams at both its edges and round both caps, and no closing one', () => {
		const band = way(wrapped(front).ways, 'band');
		expect(band.seams).toBe(4);
		expect(toMm(band.seamLength)).toBeCloseTo(2 * 600 + 2 * (350 + 300 + LEAN + 400), 1);
	});

	it('is one blank of its cloth face by face, all seams as in one cloth', () => {
		const faces = way(wrapped(front).ways, 'faces');
		const plain = way(wrapped({}).ways, 'faces');
		expect(faces.blanks.map((b) => [b.id, b.cloth])).toEqual(
			plain.blanks.map((b) => [b.id, b.id.endsWith('front') ? 'vinyl' : 'carpet']),
		);
		expect(faces.blanks.map(sizeOf)).toEqual(plain.blanks.map(sizeOf));
		expect(faces.seamLength).toBe(plain.seamLength);
	});

	it('keeps to its own roll', () => {
		const narrow = [cloths[0]!, { cloth: vinyl, shop: { ...SHOP, usable: mm(400) } }];
		const oneWay = { ...vinyl, nap: 'one-way' as const };
		const band = way(wrapped(front, [narrow[0]!, { ...narrow[1]!, cloth: oneWay }]).ways, 'band');
		const parts = band.blanks.filter((b) => b.cloth === 'vinyl');
		expect(parts).toHaveLength(2);
		expect(parts.every((b) => toMm(b.width) <= 400)).toBe(true);
	});
});

describe('which faces get which cloth', () => {
	it('in the same cloth after all: one band as ever', () => {
		const same = wrapped({ other: [{ face: 'front', cloth: 'carpet' }] });
		expect(same).toEqual(wrapped({}));
	});

	it('an end in another cloth leaves the band whole', () => {
		const band = way(wrapped({ other: [{ face: 'left', cloth: 'vinyl' }] }).ways, 'band');
		expect(band.blanks.map((b) => [b.id, b.cloth])).toEqual([
			['bench.carpet.band', 'carpet'],
			['bench.carpet.left', 'vinyl'],
			['bench.carpet.right', 'carpet'],
		]);
	});

	it('is covered even where others are named to cover', () => {
		const band = way(wrapped({ ...front, cover: ['top'] }).ways, 'band');
		expect(band.blanks.map((b) => [sizeOf(b)[0], b.cloth])).toEqual([
			[350 + 40 + 40, 'vinyl'],
			[300 - 20 + 40, 'carpet'],
		]);
		expect(band.seams).toBe(1);
	});

	it('two faces beside each other in it share a band', () => {
		const other = ['front', 'top'].map((face) => ({ face, cloth: 'vinyl' }));
		const band = way(wrapped({ other }).ways, 'band');
		expect(band.blanks.filter((b) => b.cloth === 'vinyl').map((b) => sizeOf(b)[0])).toEqual([
			350 + 300 + 2 * 40,
		]);
	});

	it('all faces in it: the main cloth is not needed', () => {
		const keys = ['front', 'top', 'back', 'bottom', 'left', 'right'];
		const other = keys.map((face) => ({ face, cloth: 'vinyl' }));
		const { ways } = wrapped({ other });
		expect(ways.flatMap((w) => w.blanks.map((b) => b.cloth))).not.toContain('carpet');
		expect(way(ways, 'band').seamLength).toBe(way(wrapped({}).ways, 'band').seamLength);
	});

	it('a face the box does not have, and a face given two cloths, are said', () => {
		const { problems } = wrapped({
			other: [
				{ face: 'front', cloth: 'vinyl' },
				{ face: 'cut', cloth: 'vinyl' },
				{ face: 'front', cloth: 'carpet' },
			],
		});
		expect(problems.map((p) => [p.path.slice(3), p.kind])).toEqual([
			[['other', 1, 'face'], 'check'],
			[['other', 2, 'face'], 'check'],
		]);
	});

	it('a cloth the rack does not hold leaves its face without a blank and the rest as it is', () => {
		const band = way(wrapped(front, [cloths[0]!]).ways, 'band');
		const whole = way(wrapped(front).ways, 'band');
		expect(band.blanks).toEqual(whole.blanks.filter((b) => b.cloth === 'carpet'));
	});
});
