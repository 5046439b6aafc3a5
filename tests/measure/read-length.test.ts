import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { inches, mm, toMm } from '../../src/lib/measure/length';
import { readLength } from '../../src/lib/measure/read-length';
import type { Hand } from '../../src/lib/measure/reading';

const metric: Hand = { unit: 'mm', decimal: '.' };
const comma: Hand = { unit: 'mm', decimal: ',' };
const inch: Hand = { unit: 'in', decimal: '.' };

function read(text: string, as: Hand = metric): number {
	const reading = readLength(text, as);
	if (!reading.ok) throw new Error(`${reading.what} ${reading.fix}`);
	return reading.value;
}

describe('what a person writes', () => {
	test.each([
		['600', metric, mm(600)],
		[' 600 mm ', metric, mm(600)],
		['60 cm', metric, mm(600)],
		['1.5 m', metric, mm(1500)],
		['1,5 m', comma, mm(1500)],
		['.5', metric, mm(0.5)],
		['23 5/8', inch, 23 * 40_640 + 25_400],
		['23-5/8"', metric, 23 * 40_640 + 25_400],
		['1.5 in', metric, mm(38.1)],
		['1 1/2 in', metric, mm(38.1)],
		['1-1/2', inch, mm(38.1)],
		[`2' 3 1/2"`, metric, mm(698.5)],
		[`2'-3 1/2"`, metric, mm(698.5)],
		[`4' 0 3/8"`, metric, inches(48.375)],
		[`2'3`, inch, inches(27)],
		['2 ft 3 in', metric, inches(27)],
		['1 yd', metric, mm(914.4)],
		['½', inch, inches(0.5)],
		['5½″', metric, inches(5.5)],
		['2′ 6″', metric, inches(30)],
		["6''", metric, inches(6)],
		['-3 1/2', inch, inches(-3.5)],
		['60CM', metric, mm(600)],
	] as const)('%s', (text, as, length) => {
		expect(read(text, as)).toBe(length);
	});

	test('small sums and products, each term with its own unit', () => {
		expect(read('360+2*17.6')).toBe(mm(395.2));
		expect(read('360 - 2 x 17.6')).toBe(mm(324.8));
		expect(read('2x17.6 cm')).toBe(mm(352));
		expect(read('2 × 17,6', comma)).toBe(mm(35.2));
		expect(read('1 in + 1 mm')).toBe(mm(26.4));
		expect(read(`2' 3" + 1/2`, inch)).toBe(inches(27.5));
	});

	test('a third is rounded once, at the end', () => {
		expect(read('1/3 in * 3')).toBe(inches(1));
		expect(read('1/3 mm + 1/3 mm + 1/3 mm')).toBe(mm(1));
	});

	test('a hyphen inside a mixed number joins, a minus between terms parts', () => {
		expect(read('23-5/8', inch)).toBe(inches(23.625));
		expect(read('23 - 5/8', inch)).toBe(inches(22.375));
	});
});

describe('what is refused, with what was seen and what is right', () => {
	test.each([
		['', metric, 'Nothing', '600'],
		['1,5', metric, '"1,5" has a comma', '1.5'],
		['12,', metric, '"12," has a comma', 'Write 12, with'],
		['1.200', comma, '"1.200" has a point', '1,200'],
		['1,200.5', metric, '"1,200.5" has a comma', '1200.5'],
		['1.2.3', metric, 'more than one decimal sign', 'one'],
		['1 200', metric, '"200"', '600'],
		['abc', metric, '"abc"', '600'],
		['12 furlong', metric, '"furlong"', '600'],
		['1e3', metric, '"e3"', '600'],
		['5²', metric, '"²"', '600'],
		['1/0', inch, '"1/0" divides by nothing', '5/8'],
		['23 9/8', inch, '"23 9/8"', '23 5/8'],
		['2 in * 3 in', metric, 'a length by a length', 'plain number'],
		['12 + 3/4 in', metric, 'some have none', 'unit'],
		['600 +', metric, 'ends too early', '600'],
		['2 in 3', metric, '"3"', '600'],
		['999999 km', metric, '"km"', '600'],
		['99999999 m', metric, 'farther', 'unit'],
		['1'.repeat(300), metric, 'too long', '600'],
	] as const)('%s', (text, as, seen, right) => {
		const reading = readLength(text, as);
		expect(reading).toMatchObject({ ok: false });
		if (reading.ok) return;
		expect(reading.what).toContain(seen);
		expect(reading.fix).toContain(right);
	});
});

describe('laws', () => {
	law.prop([fc.string({ maxLength: 60 })])('never throws, whatever is typed', (text) => {
		const reading = readLength(text, metric);
		expect(reading.ok ? Number.isSafeInteger(reading.value) : reading.fix.length > 0).toBe(true);
	});

	law.prop([fc.stringMatching(/^[0-9 /.,'"+*x-]{1,25}$/)])(
		'nor on a text of digits and signs',
		(text) => {
			const reading = readLength(text, inch);
			expect(reading.ok ? Number.isSafeInteger(reading.value) : reading.what.length > 0).toBe(true);
		},
	);

	law.prop([fc.integer({ min: -9_999_999, max: 9_999_999 })])(
		'a hundredth of a millimetre is 16 ticks, by either decimal sign',
		(hundredths) => {
			const text = (hundredths / 100).toFixed(2);
			expect(read(text)).toBe(hundredths * 16);
			expect(read(text.replace('.', ','), comma)).toBe(hundredths * 16);
			expect(toMm(read(text))).toBeCloseTo(hundredths / 100, 9);
		},
	);
});
