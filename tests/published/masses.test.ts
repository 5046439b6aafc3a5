import { describe, expect, test } from 'vitest';
import { kg } from '../../src/lib/design/box/board/part-of';
import { inches, mm } from '../../src/lib/measure/length';
import { made } from '../design/box/make';

const POUND = 0.45359237; // kg, exact: NIST SP 811
const sheet = (thick: number, density: number, length = inches(96), width = inches(48)): number =>
	kg(length * width * thick, density);

describe('mass of sheets', () => {
	test('4 x 8 ft of 19.05 mm at 750 kg/m3: 42.475 kg, 93.64 lb; 49 x 97 in: 96.59 lb', () => {
		expect(sheet(mm(19.05), 750)).toBeCloseTo(42.475, 3);
		expect(sheet(mm(19.05), 750) / POUND).toBeCloseTo(93.64, 2);
		expect(sheet(mm(19.05), 750, inches(97), inches(49)) / POUND).toBeCloseTo(96.59, 2);
	});

	test('3/4 in MDF, 4 x 8 ft, at 48.5 lb/ft3: 97 lb (trade text)', () => {
		expect(sheet(inches(0.75), 48.5 * 16.0184634) / POUND).toBeCloseTo(97, 3);
	});

	test('softwood plywood, 3.0 lb/ft2 and inch: 3/4 in 4 x 8 ft is 72 lb at most (engineering rule)', () => {
		expect(sheet(inches(0.75), 36 * 16.0184634) / POUND).toBeCloseTo(72, 3);
	});

	test('study boards of 673, 769 and 833 kg/m3 (Cai, Muehl and Winandy) weigh in that order', () => {
		const masses = [673, 769, 833].map((d) => sheet(mm(18), d));
		expect(masses).toEqual([...masses].sort((a, b) => a - b));
	});

	test('a plain box weighs its boards: volume of wood times density', () => {
		const plan = made({ shape: { kind: 'plain', width: 500, height: 400, depth: 300 } });
		const wood = 0.5 * 0.4 * 0.3 - 0.464 * 0.364 * 0.264;
		expect(plan.mass).toBeCloseTo(wood * 680, 6);
	});
});
