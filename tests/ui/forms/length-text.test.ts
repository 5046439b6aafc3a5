import { fc, test } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import { mm, ticks } from '../../../src/lib/measure/length';
import { handOf, writeLength, type Ruler } from '../../../src/lib/measure/ruler';
import { readLength } from '../../../src/lib/measure/read-length';
import {
	lengthStored,
	resultOf,
	showStored,
	storeLength,
} from '../../../src/lib/ui/fields/length-text';

const rulers = fc.record({
	unit: fc.constantFrom('mm' as const, 'cm' as const, 'in' as const),
	fraction: fc.constantFrom(16 as const, 32 as const, 64 as const),
	decimal: fc.constantFrom('.' as const, ',' as const),
});
const MM: Ruler = { unit: 'mm', fraction: 32, decimal: '.' };
const INCH: Ruler = { unit: 'in', fraction: 32, decimal: '.' };
const COMMA: Ruler = { unit: 'mm', fraction: 32, decimal: ',' };

describe('a length typed into a field', () => {
	test.prop([fc.integer({ min: -1e8, max: 1e8 }), rulers])(
		'is the same length in the file, to the tick, on every ruler',
		(n, ruler) => {
			const stored = storeLength(writeLength(ticks(n), ruler), ruler);
			expect(lengthStored(stored)).toEqual({ ok: true, value: n });
		},
	);

	test.prop([fc.integer({ min: 0, max: 1e8 }), rulers, rulers])(
		'shown and typed again is the same length, even after the ruler was changed',
		(n, before, after) => {
			const stored = storeLength(writeLength(ticks(n), before), before);
			const again = storeLength(showStored(stored, after), after);
			expect(lengthStored(again)).toEqual({ ok: true, value: n });
		},
	);

	test.prop([fc.stringMatching(/^[0-9 .,/"'+*a-z-]{1,14}$/), rulers])(
		'is refused by the file whenever the ruler refuses it, and shown as it was typed',
		(text, ruler) => {
			fc.pre(!readLength(text.trim(), handOf(ruler)).ok && text.trim() !== '');
			const stored = storeLength(text, ruler);
			expect(lengthStored(stored)?.ok ?? false).toBe(false);
			expect(showStored(stored, ruler)).toBe(text.trim());
		},
	);

	test.prop([fc.stringMatching(/^[0-9]{1,3}( [1-7]\/8)?( ?(mm|cm|in))?$/), rulers])(
		'means the same to the file as to the ruler',
		(text, ruler) => {
			const read = readLength(text, handOf(ruler));
			fc.pre(read.ok);
			expect(lengthStored(storeLength(text, ruler))).toEqual(read);
		},
	);
});

it('keeps a sum as it was typed and shows what it comes to', () => {
	expect(storeLength('360+2*17.6', MM)).toBe('360+2*17.6');
	expect(resultOf('360+2*17.6', MM)).toBe('= 395.2');
	expect(resultOf('395.2', MM)).toBe('');
});

it('writes a plain figure as a number of millimetres and others with their unit', () => {
	expect(storeLength('600', MM)).toBe(600);
	expect(storeLength('23 5/8', INCH)).toBe('23 5/8 in');
	expect(showStored('23 5/8 in', INCH)).toBe('23 5/8');
	expect(storeLength('12,5', COMMA)).toBe(12.5);
});

it('never lets a point under a decimal comma pass as another length', () => {
	const stored = storeLength('1.5', COMMA);
	expect(lengthStored(stored)?.ok).toBe(false);
	expect(showStored(stored, COMMA)).toBe('1.5');
});

it('shows nothing for nothing, and millimetres of a file on an inch ruler', () => {
	expect(showStored(null, MM)).toBe('');
	expect(showStored(undefined, MM)).toBe('');
	expect(showStored(25.4, INCH)).toBe('1');
	expect(lengthStored(25.4)).toEqual({ ok: true, value: mm(25.4) });
});
