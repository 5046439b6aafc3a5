import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { inches, mm, ticks } from '../../src/lib/measure/length';
import { sayRough } from '../../src/lib/design/shape/words';
import { readJob } from '../../src/lib/job/reading/read';
import { readLength } from '../../src/lib/measure/read-length';
import {
	handOf,
	printForBench,
	printLength,
	showLength,
	writeLength,
	type Ruler,
	sayLength,
} from '../../src/lib/measure/ruler';

const rulers: Ruler[] = (['mm', 'cm', 'in'] as const).flatMap((unit) =>
	([16, 32, 64] as const).flatMap((fraction) =>
		(['.', ','] as const).map((decimal) => ({ unit, fraction, decimal })),
	),
);
const millimetres: Ruler = { unit: 'mm', fraction: 32, decimal: '.' };
const thirtySeconds: Ruler = { unit: 'in', fraction: 32, decimal: '.' };

/** Ticks between two marks: 0.01 mm on a metric ruler. */
const mark = (ruler: Ruler) => (ruler.unit === 'in' ? 40_640 / ruler.fraction : 16);

describe('print then read', () => {
	law.prop([fc.constantFrom(...rulers), fc.integer({ min: -100_000, max: 4_000_000 })])(
		'a length on a mark comes back the same, and is not called rounded',
		(ruler, marks) => {
			const length = ticks(marks * mark(ruler));
			const printed = printLength(length, ruler);
			expect(printed.rounded).toBe(false);
			expect(readLength(printed.text, handOf(ruler))).toEqual({ ok: true, value: length });
			expect(readLength(showLength(length, ruler), handOf(ruler))).toEqual({
				ok: true,
				value: length,
			});
		},
	);

	law.prop([fc.constantFrom(...rulers), fc.integer({ min: -1e8, max: 1e8 })])(
		'any other length goes to the nearest mark and says so',
		(ruler, n) => {
			const printed = printLength(ticks(n), ruler);
			const back = readLength(printed.text, handOf(ruler));
			if (!back.ok) throw new Error(back.what);
			expect(Math.abs(back.value - n)).toBeLessThanOrEqual(mark(ruler) / 2);
			expect(printed.rounded).toBe(back.value !== n);
		},
	);

	law.prop([fc.constantFrom(...rulers), fc.integer({ min: -1e8, max: 1e8 })])(
		'the text of an edited field loses nothing',
		(ruler, n) => {
			const back = readLength(writeLength(ticks(n), ruler), handOf(ruler));
			expect(back).toEqual({ ok: true, value: ticks(n) });
		},
	);
});

describe('how it looks', () => {
	test.each([
		[mm(600), millimetres, '600'],
		[mm(17.65), millimetres, '17.65'],
		[mm(0), millimetres, '0'],
		[mm(-0.5), millimetres, '-0.5'],
		[mm(1000), { ...millimetres, unit: 'cm', decimal: ',' }, '100'],
		[mm(605), { ...millimetres, unit: 'cm', decimal: ',' }, '60,5'],
		[inches(23.625), thirtySeconds, '23 5/8'],
		[inches(0.625), thirtySeconds, '5/8'],
		[inches(-3.5), thirtySeconds, '-3 1/2'],
		[inches(0), thirtySeconds, '0'],
		[inches(24), thirtySeconds, '24'],
	] as const)('%s ticks', (length, ruler, text) => {
		expect(printLength(length, ruler).text).toBe(text);
	});

	test('a rounded figure is marked', () => {
		expect(showLength(inches(23.625), millimetres)).toBe('≈ 600.08 mm');
		expect(showLength(inches(23.625), thirtySeconds)).toBe('23 5/8 in');
	});

	test('18 mm is nearest 11/16 in sixteenths and 23/32 in thirty-seconds (common practice, no source)', () => {
		expect(printLength(mm(18), { ...thirtySeconds, fraction: 16 }).text).toBe('11/16');
		expect(printLength(mm(18), thirtySeconds).text).toBe('23/32');
		expect(inches(1 / 32)).toBe(mm(0.79375));
	});

	test('bench figures stop at a tenth of a millimetre', () => {
		expect(printForBench(mm(410.36), millimetres)).toEqual({ text: '410.4', rounded: true });
		expect(printForBench(mm(410.4), millimetres)).toEqual({ text: '410.4', rounded: false });
	});
});

describe('a length past any ruler is told, not thrown at', () => {
	test.each([
		['mm', 1e300, '1e+300 mm'],
		['cm', 1e300, '1e+299 cm'],
		['in', 25.4e30, '1e+30 in'],
		['in', Infinity, 'Infinity in'],
		['cm', -Infinity, '-Infinity cm'],
	] as const)('%s: %d', (unit, millimetres, told) => {
		const ruler = { unit, fraction: 32, decimal: '.' } as const;
		expect(sayLength(millimetres * 1600, ruler)).toBe(told);
		expect(sayRough(millimetres * 1600, ruler)).toBe(told);
	});

	test.each([1e300, -1e18, 1e25])('%d where the file says it', (length) => {
		for (const unit of ['mm', 'cm', 'in']) {
			const parts = [{ id: 'A', material: 'm', length, width: 5 }];
			const { problems } = readJob({ shop: { ruler: { unit } }, parts });
			expect(problems.some(({ what }) => what.endsWith(`${unit} is out of reach.`))).toBe(true);
		}
	});
});
