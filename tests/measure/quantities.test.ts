import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { printAngle, readAngle } from '../../src/lib/measure/angle';
import { areaIn, printArea } from '../../src/lib/measure/area';
import { mm } from '../../src/lib/measure/length';
import { printMass } from '../../src/lib/measure/mass';
import {
	majorMoney,
	minorUnits,
	money,
	plainMoney,
	printMoney,
	sumMoney,
} from '../../src/lib/measure/money';
import { printVolume, readVolume, toLitres } from '../../src/lib/measure/volume';

const litres = { unit: 'L', decimal: '.' } as const;

describe('volume', () => {
	test('reads litres, cubic feet and cubic inches', () => {
		expect(readVolume('92', litres)).toEqual({ ok: true, value: 92 });
		expect(readVolume('92,5 l', { unit: 'L', decimal: ',' })).toEqual({ ok: true, value: 92.5 });
		expect(readVolume('1 ft3', litres)).toEqual({ ok: true, value: 28.316846592 });
		expect(readVolume('1 cu ft', litres)).toEqual({ ok: true, value: 28.316846592 });
		expect(readVolume('1728 in3', litres)).toEqual({ ok: true, value: 28.316846592 });
		expect(readVolume('2', { unit: 'ft3', decimal: '.' })).toEqual({
			ok: true,
			value: 56.633693184,
		});
	});

	test('refuses in words', () => {
		expect(readVolume('92 mm', litres)).toMatchObject({
			ok: false,
			what: expect.stringContaining('"mm"'),
		});
		expect(readVolume('-4', litres)).toMatchObject({
			ok: false,
			what: expect.stringContaining('"-4"'),
		});
	});

	test('prints', () => {
		expect(printVolume(91.9314, 'L', ',')).toBe('91,93 L');
		expect(printVolume(91.9314, 'ft3')).toBe('3.247 ft3');
		expect(printVolume(91.9314, 'in3')).toBe('5610 in3');
	});

	law.prop([fc.constantFrom('L', 'ft3', 'in3' as const), fc.integer({ min: 0, max: 100_000 })])(
		'what is printed reads back within its last place',
		(unit, hundredths) => {
			const value = toLitres(hundredths / 100, unit);
			const back = readVolume(printVolume(value, unit), litres);
			if (!back.ok) throw new Error(back.what);
			const place = { L: 0.005, ft3: 0.015, in3: 0.009 }[unit];
			expect(Math.abs(back.value - value)).toBeLessThanOrEqual(place);
		},
	);
});

describe('angle, area, mass', () => {
	test('angles in degrees', () => {
		expect(readAngle('21,8°', ',')).toEqual({ ok: true, value: 21.8 });
		expect(readAngle('90 - 68.2 deg', '.')).toMatchObject({ ok: true });
		expect(readAngle('900', '.')).toMatchObject({ ok: false });
		expect(readAngle('steep', '.')).toMatchObject({ ok: false });
		expect(printAngle(21.8014)).toBe('21.8°');
		expect(printAngle(-0.01)).toBe('0°');
	});

	test('a sheet of 2440 x 1220', () => {
		const area = mm(2440) * mm(1220);
		expect(areaIn(area, 'm2')).toBeCloseTo(2.9768, 12);
		expect(areaIn(area, 'mm2')).toBe(2_976_800);
		expect(printArea(area, 'm2', ',')).toBe('2,98 m2');
		expect(printArea(mm(2438.4) * mm(1219.2), 'ft2')).toBe('32.0 ft2');
	});

	test('mass', () => {
		expect(printMass(12.44, 'kg')).toBe('12.4 kg');
		expect(printMass(0.444, 'kg', ',')).toBe('0,44 kg');
		expect(printMass(0.45359237, 'lb')).toBe('1.0 lb');
	});
});

describe('money', () => {
	test('is printed with the code of its currency, by the decimal sign chosen', () => {
		expect(printMoney(money(123_450), 'EUR')).toBe('EUR 1,234.50');
		expect(printMoney(money(123_450), 'EUR', ',')).toBe('1.234,50 EUR');
		expect(printMoney(money(-5), 'USD')).toBe('-USD 0.05');
		expect(plainMoney(money(123_450), 'EUR', ',')).toBe('1234,50');
	});

	// Minor units: ISO 4217, list one (the yen has none, the dinars of Kuwait and Bahrain have three decimals).
	test('has the decimals of its currency', () => {
		expect(printMoney(money(1500), 'JPY')).toBe('JPY 1,500');
		expect(printMoney(money(1500), 'JPY', ',')).toBe('1.500 JPY');
		expect(printMoney(money(1255), 'KWD')).toBe('KWD 1.255');
		expect(plainMoney(money(1500), 'JPY')).toBe('1500');
		expect(plainMoney(money(1255), 'BHD', ',')).toBe('1,255');
		expect([minorUnits('EUR'), minorUnits('JPY'), minorUnits('KWD')]).toEqual([100, 1, 1000]);
		expect(majorMoney(money(1255), 'KWD')).toBe(1.255);
	});

	law.prop([fc.array(fc.integer({ min: -1e9, max: 1e9 }), { maxLength: 30 })])(
		'sums are whole and exact',
		(amounts) => {
			expect(sumMoney(amounts.map(money))).toBe(amounts.reduce((a, b) => a + b, 0) + 0);
		},
	);
});
