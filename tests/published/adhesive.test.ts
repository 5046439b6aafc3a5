import { describe, expect, it } from 'vitest';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm } from '../../src/lib/measure/length';
import { DRY_GRAMS, dryGrams, glueNeed } from '../../src/lib/wrap/adhesive';
import { PACE, stageArea, stageNote, stagesFor } from '../../src/lib/wrap/stages';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { carpet, covering, SHOP } from '../wrap/make';

describe('contact adhesive', () => {
	it('weighs what the trade article gives, on each face', () => {
		// Trade article on contact adhesives: 2.0 dry g/ft2 a face sprayed, 3.0 brushed or rolled; 21.5 and 32.3 g/m2.
		expect(DRY_GRAMS.sprayed).toBeCloseTo(21.5, 1);
		expect(DRY_GRAMS.brushed).toBeCloseTo(32.3, 1);
	});

	it('is counted on both faces', () => {
		// The same article: both faces are coated, so the area is twice what is bonded.
		expect(glueNeed([{ bonded: 1e6, count: 3 }], 'three squares').amount).toBe(6);
		expect(dryGrams(1e6, 'brushed')).toBeCloseTo(64.6, 1);
	});

	it('takes one to two and a half square metres of bond from a can', () => {
		// Common practice, no source: 1 to 2.5 m2 bonded, both faces, from a spray can of 400 to 500 g. Both faces of 2.5 m2 take
		// 107 g dry when sprayed; a can holds about a quarter of its weight in solids.
		expect(dryGrams(2.5e6, 'sprayed')).toBeLessThan(0.25 * 450);
		expect(dryGrams(2.5e6, 'sprayed')).toBeGreaterThan(0.2 * 450);
	});
});

describe('open time', () => {
	it('turns a large bond into stages that each fit it', () => {
		for (const how of ['sprayed', 'brushed'] as const) {
			const pace = PACE[how];
			const most = stageArea(pace);
			// Coat both faces, dry, lay: the whole stage within the open time.
			expect((2 * most) / pace.coat + pace.dry + most / pace.lay).toBeCloseTo(pace.open, 9);
			expect(stagesFor(most * 1e6, pace)).toBe(1);
			expect(stagesFor(most * 1e6 * 1.01, pace)).toBe(2);
		}
	});

	it('is told on a blank that needs it and on no other', () => {
		const wrap = (length: number, width: number) =>
			wrapCovering(covering({ outline: rectangle(0, 0, mm(length), mm(width)) }), carpet(), SHOP, [
				'panels',
				0,
			]).blanks[0]!;
		expect(wrap(600, 300).notes).toEqual([]);
		const floor = wrap(1800, 1200);
		expect(floor.notes).toEqual([stageNote(floor)]);
		expect(floor.notes[0]).toContain('in 3 stages of about 0.79 m²');
	});
});
