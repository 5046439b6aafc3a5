import { describe, expect, it } from 'vitest';
import type { Bevel } from '../../../src/lib/design';
import { textWidth } from '../../../src/lib/print/drawing';
import { bevelsText } from '../../../src/lib/print/lists/labels/label-text';

const bevel = (edge: string, side: Bevel['side'], tilt: number): Bevel => ({
	edge,
	side,
	tilt,
	long: 'outside',
});

describe('the bevels on the label of a part', () => {
	it('are all there, alike ones together, with the decimal sign of the job', () => {
		const two = { bevels: [bevel('C', 'top', 21.8), bevel('E', 'bottom', 21.8)] };
		expect(bevelsText(two, ',')).toBe('bevels C E 21,8°');
		const apart = { bevels: [bevel('C', 'top', 21.8), bevel('', 'bottom', 9.5)] };
		expect(bevelsText(apart, '.')).toBe('bevels C 21.8°, bottom 9.5°');
		expect(bevelsText({ bevels: [] }, '.')).toBe('');
	});

	it('fit in one line of a label 63.5 mm wide where two have tilts of their own', () => {
		const two = { bevels: [bevel('AC', 'top', 121.8), bevel('AE', 'bottom', 121.4)] };
		expect(textWidth(bevelsText(two, '.'), 2.9)).toBeLessThan(63.5 - 5 - 22 - 1);
	});
});
