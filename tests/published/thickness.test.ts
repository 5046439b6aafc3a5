import { describe, expect, test } from 'vitest';
import { offNominal } from '../../src/lib/job/stock/thickness';
import { inches, mm, type Length } from '../../src/lib/measure/length';

const off = (kind: 'plywood' | 'mdf', nominal: Length, measured: Length) =>
	offNominal({ kind, nominal, measured }) !== null;

/** The band a plywood is sold in is the wider of the two standards at each end. */
describe('measured against nominal', () => {
	test.each([
		// EN 315:2000, sanded: t +(0.2+0.03t) / -(0.4+0.03t)
		[18, 0.74, 0.94],
		[12, 0.56, 0.76],
		[15, 0.65, 0.85],
	])('EN 315, %s mm: +%s / -%s', (nominal, over, under) => {
		const high = Math.max(over, 25.4 / 32); // US PS 1 allows 1/32 in
		const low = Math.max(under, 25.4 / 32);
		expect(off('plywood', mm(nominal), mm(nominal + high))).toBe(false);
		expect(off('plywood', mm(nominal), mm(nominal + high + 0.02))).toBe(true);
		expect(off('plywood', mm(nominal), mm(nominal - low))).toBe(false);
		expect(off('plywood', mm(nominal), mm(nominal - low - 0.02))).toBe(true);
	});

	test.each([
		// US PS 1, unsanded and touch-sanded performance categories
		['1/4', 0.25, 0.219, 0.281],
		['15/32', 15 / 32, 0.438, 0.5],
		['1/2', 0.5, 0.469, 0.531],
		['5/8', 0.625, 0.594, 0.656],
		['23/32', 23 / 32, 0.688, 0.75],
		['3/4', 0.75, 0.719, 0.781],
	])('US PS 1, category %s', (_, nominal, low, high) => {
		expect(off('plywood', inches(nominal), inches(low))).toBe(false);
		expect(off('plywood', inches(nominal), inches(high))).toBe(false);
		expect(off('plywood', inches(nominal), inches(nominal - 0.06))).toBe(true);
		expect(off('plywood', inches(nominal), inches(nominal + 0.06))).toBe(true);
	});

	test('MDF: 0.2 mm to 19 mm, 0.3 mm above (EN 622-1, from memory)', () => {
		expect(off('mdf', mm(18), mm(18.2))).toBe(false);
		expect(off('mdf', mm(18), mm(18.21))).toBe(true);
		expect(off('mdf', mm(25), mm(24.7))).toBe(false);
		expect(off('mdf', mm(25), mm(24.69))).toBe(true);
	});
});
