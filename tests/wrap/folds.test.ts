import { expect, it } from 'vitest';
import fc from 'fast-check';
import { crosses, Folds } from '../../src/lib/wrap/reliefs/folds';
import { runs } from '../depth';

const point = fc.record({
	x: fc.integer({ min: 0, max: 200 }),
	y: fc.integer({ min: 0, max: 200 }),
});
const line = (longest: number) => fc.array(point, { minLength: 2, maxLength: longest });

it('a cut crosses folds looked at by stretches where it crosses one of them whole', () => {
	const law = fc.property(fc.array(line(60), { maxLength: 3 }), line(4), (folds, cut) => {
		expect(new Folds(folds).crossedBy(cut)).toBe(folds.some((fold) => crosses(cut, fold)));
	});
	fc.assert(law, { numRuns: runs(400) });
});
