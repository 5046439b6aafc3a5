import { expect, test } from 'vitest';
import { dependencies, isPermitted, mayBeUsed } from '../../src/setup/trust/licences/licences';

test('every package that is installed has a licence that permits its use', () => {
	const all = dependencies();
	expect(all.length).toBeGreaterThan(100);
	expect(all.filter((one) => !mayBeUsed(one))).toEqual([]);
});

test.each([
	['MIT', true],
	['(MIT OR GPL-3.0)', true],
	['MIT AND GPL-3.0', false],
	['GPL-3.0-only', false],
	['', false],
	['UNLICENSED', false],
])('%s: %s', (expression, permitted) => {
	expect(isPermitted(expression)).toBe(permitted);
});
