import { expect, it } from 'vitest';
import { figuresOn } from '../../../src/lib/print/wording/figures';

it('an angle is printed by the decimal sign of the job', () => {
	const ruler = { unit: 'mm', fraction: 32 } as const;
	expect(figuresOn({ ...ruler, decimal: ',' }).angle(21.75)).toBe('21,8°');
	expect(figuresOn({ ...ruler, decimal: '.' }).angle(90)).toBe('90°');
});
