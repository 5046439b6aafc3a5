import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { along, screwFromEnd } from '../../../src/lib/design/box/board';
import { evenSpacing } from '../../../src/lib/design/box/report/assembly';
import { mm, toMm } from '../../../src/lib/measure';
import { runs } from '../../depth';

const length = fc.integer({ min: 1600, max: 1600 * 3000 });

describe('the screws of a seam', () => {
	it('are two, 20 mm apart, on a seam of 60 mm, and none on top of another on one of 100 mm', () => {
		expect(along(mm(60), mm(120))).toBe(2);
		expect(toMm(evenSpacing(mm(60), mm(120)))).toBeCloseTo(20, 9);
		expect(toMm(evenSpacing(mm(100), mm(120)))).toBeCloseTo(100 / 3, 3);
	});

	it('are 50 mm from the ends of a long one, 110 mm apart on one of 650 mm', () => {
		expect(toMm(screwFromEnd(mm(650)))).toBe(50);
		expect(along(mm(650), mm(120))).toBe(6);
		expect(toMm(evenSpacing(mm(650), mm(120)))).toBeCloseTo(110, 9);
	});

	it('reach from end to end, apart, and nowhere farther apart than asked', () => {
		fc.assert(
			fc.property(length, fc.integer({ min: 1600 * 20, max: 1600 * 400 }), (seam, wanted) => {
				const [apart, count] = [evenSpacing(seam, wanted), along(seam, wanted)];
				expect(apart).toBeGreaterThan(0);
				expect(apart).toBeLessThanOrEqual(Math.max(wanted, seam / 3) + 1e-6);
				expect(2 * screwFromEnd(seam) + (count - 1) * apart).toBeCloseTo(seam, 6);
			}),
			{ numRuns: runs(200), seed: 5 },
		);
	});
});
