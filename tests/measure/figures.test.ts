import { describe, expect, test } from 'vitest';
import { degrees, printAngle, radians } from '../../src/lib/measure/angle';
import { inches, mm, snap, ticks, toInches, toMm } from '../../src/lib/measure/length';
import { around, lastOf, nth, theOne } from '../../src/lib/measure/lists';
import { massIn, printMass, roundMass, showMass } from '../../src/lib/measure/mass';
import { money } from '../../src/lib/measure/money';
import { nearestWhole, subtractRatios } from '../../src/lib/measure/ratio';
import { readLength } from '../../src/lib/measure/read-length';
import { showMm, writeLength } from '../../src/lib/measure/ruler';
import { fromLitres, showVolume, toLitres, volumeUnit } from '../../src/lib/measure/volume';
import { wholeShares } from '../../src/lib/measure/whole-shares';

/* Single figures, each worked out by hand. */

const METRIC = { unit: 'mm', fraction: 32, decimal: '.' } as const;
const INCHES = { unit: 'in', fraction: 32, decimal: '.' } as const;

describe('ticks', () => {
	test('1600 to the millimetre, 40640 to the inch, and no part of one', () => {
		expect([mm(1), inches(1), toMm(mm(12.5))]).toEqual([1600, 40_640, 12.5]);
		expect(toInches(mm(38.1))).toBe(1.5);
		expect([snap(7.4), snap(7.5), snap(-7.6)]).toEqual([7, 8, -8]);
		expect(Object.is(ticks(-0), 0)).toBe(true);
		expect(() => ticks(0.5)).toThrow('bug: 0.5');
	});

	test('millimetres in a message, to the hundredth', () => {
		expect([showMm(mm(12.5)), showMm(mm(0.004)), showMm(24)]).toEqual(['12.5', '0', '0.02']);
	});

	test('a field that is edited keeps what lies between two marks', () => {
		// A third of an inch and a little: 13546 ticks, 8.46625 mm.
		expect(writeLength(ticks(13_546), METRIC)).toBe('8.4663');
		expect(writeLength(ticks(13_546), { ...METRIC, unit: 'cm' })).toBe('0.84662');
		expect(writeLength(ticks(13_546), { ...INCHES, decimal: ',' })).toBe('0,33332');
	});

	test('are read up to ten kilometres, and to the longest text', () => {
		const read = (text: string) => readLength(text, { unit: 'm', decimal: '.' });
		expect(read('10000')).toEqual({ ok: true, value: 16_000_000_000 });
		expect(read('-10000')).toEqual({ ok: true, value: -16_000_000_000 });
		expect(read('10000.001').ok).toBe(false);
		expect(read('-10000.001').ok).toBe(false);
		expect(read(`1${' '.repeat(118)}+`)).toMatchObject({ what: expect.stringContaining('early') });
		expect(read('1+'.repeat(59) + '12')).toEqual({ ok: true, value: 71 * 1_600_000 });
		// What stands past the longest text is never cut off unseen.
		const long = `1${' '.repeat(118)}0`;
		expect(read(long)).toMatchObject({ what: expect.stringContaining('"0"') });
		expect(read(` ${'1+'.repeat(59)}12 `)).toEqual({ ok: true, value: 71 * 1_600_000 });
		expect(read(`${'1+'.repeat(59)}12 5`)).toMatchObject({
			what: expect.stringContaining('too long'),
		});
		expect(read('1+'.repeat(60) + '1')).toMatchObject({
			what: '"1+1+1+1+1+1+1+1+1+1+…" is too long a text to read.',
		});
	});

	test('feet take inches after them, and the sum of both is of inches', () => {
		const read = (text: string, unit: 'in' | 'mm' = 'in') =>
			readLength(text, { unit, decimal: '.' });
		expect(read("1' 6 + 3")).toEqual({ ok: true, value: 21 * 40_640 });
		expect(read("1' + 6")).toEqual({ ok: true, value: 18 * 40_640 });
		expect(read("1' + 6", 'mm').ok).toBe(false);
		expect(read("1' 6 mm").ok).toBe(false);
		expect(read('2 * 3 * 4')).toEqual({ ok: true, value: 24 * 40_640 });
		expect(read('3 in * 2')).toEqual({ ok: true, value: 6 * 40_640 });
		expect(read('5 - 1/4 - 1/2')).toEqual({ ok: true, value: 4.25 * 40_640 });
		expect(read('1 8/8').ok).toBe(false);
		expect(read('1 5/0')).toMatchObject({ what: '"1 5/0" divides by nothing.' });
	});
});

describe('fractions of whole numbers', () => {
	test('a half goes away from zero', () => {
		const rounded = [5n, 4n, -5n, -4n, 7n, 0n].map((n) => nearestWhole({ n, d: 2n }));
		expect(rounded).toEqual([3n, 2n, -3n, -2n, 4n, 0n]);
		expect(nearestWhole({ n: 10n, d: 3n })).toBe(3n);
		expect(subtractRatios({ n: 3n, d: 4n }, { n: 2n, d: 3n })).toEqual({ n: 1n, d: 12n });
	});
});

describe('angles, volumes, masses', () => {
	test('a half turn is pi', () => {
		expect(radians(180)).toBe(Math.PI);
		expect(degrees(Math.PI / 2)).toBe(90);
		expect([printAngle(12.25, ','), printAngle(-12.5), printAngle(0.05)]).toEqual([
			...['12,3°', '-12.5°', '0.1°'],
		]);
	});

	// A cubic foot is 28.316846592 L: NIST SP 811 (2008) appendix B.8, from the inch.
	test('litres, cubic feet and inches', () => {
		expect(toLitres(2, 'ft3')).toBe(56.633693184);
		expect(fromLitres(56.633693184, 'ft3')).toBe(2);
		expect(toLitres(1000, 'in3')).toBeCloseTo(16.387064, 12);
		expect([volumeUnit(INCHES), volumeUnit(METRIC)]).toEqual(['ft3', 'L']);
		expect(showVolume(56.633693184, INCHES)).toBe('2.000 ft³');
		expect(showVolume(56.633693184, { ...METRIC, decimal: ',' })).toBe('56,63 L');
	});

	// A pound is 0.45359237 kg: NIST SP 811 (2008) appendix B.8.
	test('kilograms and pounds, by the ruler; two places below one', () => {
		expect(massIn(10, 'lb')).toBeCloseTo(22.046226, 6);
		expect([showMass(10, INCHES), showMass(10, METRIC)]).toEqual(['22.0 lb', '10.0 kg']);
		expect([roundMass(27.4, METRIC), roundMass(27.4, INCHES)]).toEqual(['27 kg', '60 lb']);
		expect([printMass(1, 'kg'), printMass(0.5, 'kg'), printMass(-0.5, 'kg')]).toEqual([
			...['1.0 kg', '0.50 kg', '-0.50 kg'],
		]);
	});
});

describe('money', () => {
	test('rounds half away from zero, and is never below nothing by a sign alone', () => {
		expect([money(2.5), money(2.4), money(-2.5), money(-2.4)]).toEqual([3, 2, -3, -2]);
		expect(Object.is(money(-0.2), 0)).toBe(true);
		expect(() => money(NaN)).toThrow('bug: NaN');
	});

	test('is shared out in ones: the largest rests first, earlier ones on a tie', () => {
		expect(wholeShares([1.2, 1.7, 1.1], 4)).toEqual([1, 2, 1]);
		expect(wholeShares([0.5, 0.5, 1], 2)).toEqual([1, 0, 1]);
		// Two too many: the smallest rests give up one each, the last of a tie first.
		expect(wholeShares([2.5, 2.1, 2.1], 4)).toEqual([2, 1, 1]);
		expect(wholeShares([2.5, 2.1, 2.1], 5)).toEqual([2, 2, 1]);
		expect(wholeShares([], 3)).toEqual([]);
		expect(() => wholeShares([1], 1.5)).toThrow('bug: 0.5');
	});
});

describe('places of a list', () => {
	const list = ['a', 'b', 'c'];
	test('first, last, the one meant, and round and round', () => {
		expect([nth(list, 0), nth(list, 2), lastOf(list)]).toEqual(['a', 'c', 'c']);
		expect(theOne(list, (x) => x > 'a')).toBe('b');
		expect([-4, -1, 0, 3, 5].map((i) => around(list, i))).toEqual(['c', 'c', 'a', 'a', 'c']);
	});

	test('beside it is a bug of ours', () => {
		expect(() => nth(list, 3)).toThrow('bug: no entry 3 in a list of 3');
		expect(() => lastOf([])).toThrow('bug: no entry -1');
		expect(() => around([], 0)).toThrow('bug:');
		expect(() => theOne(list, () => false)).toThrow('bug: not in a list of 3');
	});
});
