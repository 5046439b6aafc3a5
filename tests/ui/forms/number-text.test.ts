import { fc, test } from '@fast-check/vitest';
import { expect, it } from 'vitest';
import { showNumber, storeNumber } from '../../../src/lib/ui/fields/number-text';

const signs = fc.constantFrom('.' as const, ',' as const);

test.prop([fc.integer({ min: -1e9, max: 1e9 }), signs])(
	'a number typed is the number stored',
	(n, sign) => {
		const number = n / 1000;
		expect(storeNumber(showNumber(number, sign), sign)).toBe(number);
	},
);

it('keeps what is no number as it was typed', () => {
	for (const text of ['abc', '1.2.3', '12 in', '--4', '1e5', 'NaN']) {
		expect(storeNumber(text, '.')).toBe(text);
		expect(showNumber(text, '.')).toBe(text);
	}
});

it('does not guess at a point under a decimal comma', () => {
	expect(storeNumber('1.500', ',')).toBe('1.500');
	expect(storeNumber('1,5', ',')).toBe(1.5);
	expect(storeNumber('1,5', '.')).toBe('1,5');
});
