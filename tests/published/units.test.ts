import { describe, expect, test } from 'vitest';
import { inches, mm, toMm } from '../../src/lib/measure/length';
import { KG_PER_LB, massIn } from '../../src/lib/measure/mass';
import { readLength } from '../../src/lib/measure/read-length';
import { fromLitres, toLitres } from '../../src/lib/measure/volume';

const read = (text: string) => {
	const reading = readLength(text, { unit: 'mm', decimal: '.' });
	if (!reading.ok) throw new Error(reading.what);
	return toMm(reading.value);
};

describe('NIST SP 811 (2008), appendix B.8; the yard agreement of 1959 (from memory)', () => {
	test('an inch is 25.4 mm exactly', () => {
		expect(toMm(inches(1))).toBe(25.4);
		expect(read('1 in')).toBe(25.4);
	});

	test('a foot is 304.8 mm, a yard 914.4 mm exactly', () => {
		expect(read('1 ft')).toBe(304.8);
		expect(read('1 yd')).toBe(914.4);
		expect(read('3 ft')).toBe(read('1 yd'));
	});

	test('both rulers lie on the grid: 0.01 mm and 1/64 in are whole ticks', () => {
		expect(mm(0.01)).toBe(16);
		expect(inches(1 / 64)).toBe(635);
	});

	test('a pound is 0.45359237 kg exactly', () => {
		expect(KG_PER_LB).toBe(0.45359237);
		expect(massIn(0.45359237, 'lb')).toBe(1);
	});
});

describe('derived from the inch (recomputed)', () => {
	test('a cubic inch is 16.387064 mL, a cubic foot 28.316846592 L', () => {
		expect(toLitres(1, 'in3')).toBe(0.016387064);
		expect(toLitres(1, 'ft3')).toBe(28.316846592);
	});

	test('a litre is 61.0237440947 in3 and 0.0353146667 ft3', () => {
		expect(fromLitres(1, 'in3') / 61.0237440947).toBeCloseTo(1, 9);
		expect(fromLitres(1, 'ft3') / 0.0353146667).toBeCloseTo(1, 8);
	});

	test('a US gallon of 231 in3 is 3.785411784 L (NIST Handbook 44, appendix C), a fluid ounce a 128th of it', () => {
		expect(toLitres(231, 'in3')).toBeCloseTo(3.785411784, 12);
		expect(toLitres(231 / 128, 'in3') * 1000).toBeCloseTo(29.5735, 4);
	});
});
