import { describe, expect, it } from 'vitest';
import { labelPages } from '../../../src/lib/print/lists/label-pages';
import { samplePlan } from '../fixture';
import { wordsOn } from '../words-on';

/** The labels of the sample when its pieces and offcuts come to so many; their codes, and words. */
function printed(all: number): { codes: number; left: string[] } {
	const plan = samplePlan();
	const offcuts = plan.boards.flatMap((b) => b.answer.layouts.flatMap((l) => l.offcuts)).length;
	const [first, ...others] = plan.parts;
	const rest = others.reduce((sum, p) => sum + p.count, 0);
	const many = { ...first!, count: all - offcuts - rest };
	const pages = labelPages({ ...plan, parts: [many, ...others] }, 'a4-2x7');
	const marks = pages.slice(1).flatMap((p) => p.marks);
	return {
		codes: marks.filter((m) => m.kind === 'path').length,
		left: wordsOn(pages[0]!.marks).filter((t) => t.includes('left out')),
	};
}

describe('labels past what one printer is given', () => {
	it('3000 are printed and nothing is said', () => {
		expect(printed(3000)).toEqual({ codes: 3000, left: [] });
	});

	it('those past 3000 are left out, and the test page says how many', () => {
		expect(printed(3140)).toEqual({
			codes: 3000,
			left: ['Only the first 3000 labels are here: 140 are left out.'],
		});
	});
});
