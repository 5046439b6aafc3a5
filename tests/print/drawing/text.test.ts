import { describe, expect, it, test } from 'vitest';
import { runs } from '../../depth';
import fc from 'fast-check';
import { readAdvances } from '../../../src/setup/faces/ttf';
import { advances, faceRuns, type Face } from '../../../src/lib/print/drawing/faces';
import { shortened, textWidth, wrapped } from '../../../src/lib/print/drawing/text-width';
import { FONTS } from '../fixture';

describe('the width table', () => {
	test.each(['regular', 'semibold', 'fallback'] as Face[])('is the one of the %s font', (face) => {
		const { unitsPerEm, width } = readAdvances(FONTS[face]);
		const table = advances(face);
		expect(table.size).toBe(width.size);
		expect(table.size).toBeGreaterThan(600);
		for (const [code, units] of width)
			expect(table.get(code)).toBeCloseTo((units * 1000) / unitsPerEm, 9);
	});

	it('has figures of one width, so that columns of them line up', () => {
		const digits = [...'0123456789'].map((d) => textWidth(d, 10));
		expect(new Set(digits.map((w) => w.toFixed(6))).size).toBe(1);
	});
});

describe('runs of faces', () => {
	it('keeps Latin with its marks, fractions and arrows in the condensed face', () => {
		expect(faceRuns('Łódź ½″ Größe € → ≤', 'regular')).toEqual([
			{ face: 'regular', text: 'Łódź ½″ Größe € → ≤' },
		]);
	});

	it('sets Greek and Cyrillic in the fallback, and comes back', () => {
		expect(faceRuns('A Ελένη B', 'semibold').map((r) => r.face)).toEqual([
			'semibold',
			'fallback',
			'semibold',
		]);
		expect(faceRuns('Кириллица', 'regular')).toEqual([{ face: 'fallback', text: 'Кириллица' }]);
	});

	it('joins accents to their letters', () => {
		expect(faceRuns('Lo\u0301dz\u0301', 'regular')).toEqual([{ face: 'regular', text: 'Lódź' }]);
	});

	it('shows an empty box for a letter no face has, and never loses the rest of the line', () => {
		expect(
			faceRuns('a\u{1f600}b\u4e2d', 'regular')
				.map((r) => r.text)
				.join(''),
		).toBe('a□b□');
	});

	it('keeps all letters, whatever the text', () => {
		fc.assert(
			fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (text) => {
				const joined = faceRuns(text, 'regular')
					.map((r) => r.text)
					.join('');
				expect([...joined].length).toBe(
					[...text.normalize('NFC').replace(/\p{Cc}+/gu, ' ')].length,
				);
			}),
			{ numRuns: runs(200) },
		);
	});
});

describe('wrapping and shortening', () => {
	const words = fc.array(fc.stringMatching(/^[a-zA-Z0-9]{1,24}$/), { maxLength: 30 });

	it('keeps every line inside its width and every word in order', () => {
		fc.assert(
			fc.property(words, fc.double({ min: 12, max: 90, noNaN: true }), (list, width) => {
				const lines = wrapped(list.join(' '), width, 3.2);
				for (const line of lines) expect(textWidth(line, 3.2)).toBeLessThanOrEqual(width);
				expect(lines.join('').replaceAll(' ', '')).toBe(list.join(''));
			}),
			{ numRuns: runs(200) },
		);
	});

	it('shortens with an ellipsis only what does not fit', () => {
		expect(shortened('Front', 50, 3)).toBe('Front');
		const short = shortened('Brace with a long name', 20, 3);
		expect(short).toMatch(/^Brace.*…$/);
		expect(textWidth(short, 3)).toBeLessThanOrEqual(20);
		expect(shortened('Brace', 0.5, 3)).toBe('');
	});
});
