import { describe, expect, it } from 'vitest';
import { rectangle } from '../../src/lib/geometry/shaping/tidy';
import { mm } from '../../src/lib/measure/length';
import { glueNeed } from '../../src/lib/wrap/adhesive';
import { PACE, stageArea, stageNote, stagesFor } from '../../src/lib/wrap/stages';
import { wrapCovering } from '../../src/lib/wrap/wrap-panel';
import { carpet, covering, SHOP } from '../wrap/make';

describe('contact adhesive', () => {
	it('is counted on both faces', () => {
		// Trade article on contact adhesives: both faces are coated, so the area is twice what is
		// bonded.
		expect(glueNeed([{ bonded: 1e6, count: 3 }], 'three squares').amount).toBe(6);
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
