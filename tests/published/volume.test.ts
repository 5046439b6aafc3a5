import { describe, expect, test } from 'vitest';
import { prismatoid } from '../../src/lib/design/box/solid/six';
import { figures } from '../design/box/make';

const thick = (l: number | string) => ({
	stock: {
		materials: [{ id: 'ply-18', name: 'Board', kind: 'other' as const, nominal: l, measured: l }],
	},
});

describe('prismatoids', () => {
	test('Moscow papyrus, problem 14: 16 and 4 six apart hold 56', () => {
		expect(prismatoid(16, 9, 4, 6)).toBe(56);
	});

	test('square frustum from a textbook exercise: 10 to 7, six high, holds 438', () => {
		expect(prismatoid(100, 72.25, 49, 6)).toBe(438);
	});

	test('a double-tapered box holds what the prismatoid formula says', () => {
		const f = figures({
			shape: {
				kind: 'tapered',
				front: { width: 600, height: 400 },
				back: { width: 500, height: 250 },
				depth: 300,
			},
			sizes: 'inner',
		});
		const litres = prismatoid(600 * 400, 550 * 325, 500 * 250, 300) / 1e6;
		expect(f.chambers[0]!.gross).toBeCloseTo(litres, 6);
	});
});

describe('boxes', () => {
	test('slant-front box 34 x 15 x 8/14 in: 5610 in3, 3.24653 ft3, 91.9314 L (Cavalieri)', () => {
		const f = figures({
			shape: {
				kind: 'slanted',
				width: '34 in',
				height: '15 in',
				face: 'front',
				lean: { by: 'depths', bottom: '14 in', top: '8 in' },
			},
			sizes: 'inner',
		});
		const litres = f.chambers[0]!.gross;
		expect(litres / 0.016387064 / 5610).toBeCloseTo(1, 6);
		expect(litres / 28.316846592).toBeCloseTo(3.24653, 4);
		expect(litres).toBeCloseTo(91.9314, 3);
	});

	const outside = { kind: 'plain' as const, width: '36 in', height: '16.5 in', depth: '15.5 in' };

	test('outside 36 x 16.5 x 15.5 in in 0.75 in board: 7245 in3 = 4.19271 ft3', () => {
		const litres = figures({ shape: outside }, thick('0.75 in')).chambers[0]!.gross;
		expect(litres / 0.016387064).toBeCloseTo(7245, 3);
		expect(litres / 28.316846592).toBeCloseTo(4.19271, 4);
	});

	test('the same measured at 0.703 in: 4.25888 ft3, 1.58 % more', () => {
		const nominal = figures({ shape: outside }, thick('0.75 in')).chambers[0]!.gross;
		const measured = figures({ shape: outside }, thick('0.703 in')).chambers[0]!.gross;
		expect(measured / 28.316846592).toBeCloseTo(4.25888, 4);
		expect((measured / nominal - 1) * 100).toBeCloseTo(1.58, 2);
	});
});
