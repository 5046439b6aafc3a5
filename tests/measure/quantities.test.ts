import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { printAngle } from '../../src/lib/measure/angle';
import { printMass } from '../../src/lib/measure/mass';
import {
	majorMoney,
	minorUnits,
	money,
	plainMoney,
	printMoney,
	sumMoney,
} from '../../src/lib/measure/money';
import { printVolume } from '../../src/lib/measure/volume';

describe('volume', () => {
	test('prints', () => {
		expect(printVolume(91.9314, 'L', ',')).toBe('91,93 L');
		expect(printVolume(91.9314, 'ft3')).toBe('3.247 ft³');
		expect(printVolume(91.9314, 'in3')).toBe('5610 in³');
	});
});

describe('angle, mass', () => {
	test('angles in degrees', () => {
		expect(printAngle(21.8014)).toBe('21.8°');
		expect(printAngle(-0.01)).toBe('0°');
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

	// Minor units: ISO 4217, list one (the yen has none, the dinars of Kuwait and Bahrain have
	// three decimals).
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
