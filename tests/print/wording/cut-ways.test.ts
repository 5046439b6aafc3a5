import { describe, expect, it } from 'vitest';
import { job as schema } from '../../../src/lib/job/job';
import type { CutWay } from '../../../src/lib/layout/layouts';
import { mm, ticks } from '../../../src/lib/measure/length';
import { money } from '../../../src/lib/measure/money';
import type { Plan } from '../../../src/lib/plan';
import { cutAsText, cutWays } from '../../../src/lib/print/wording/cloth/cut-ways-text';
import { figuresOn } from '../../../src/lib/print/wording/figures';

const rectangle: CutWay = {
	...{ by: 'rectangle', pull: mm(1300), cost: money(2795), fits: true },
	...{ along: ticks(0), cutCost: money(0) },
};
const outline: CutWay = {
	...{ by: 'outline', pull: mm(700), cost: money(1505), fits: true },
	...{ along: mm(4830), cutCost: money(362) },
};

function said(ways: readonly CutWay[], outlineMetre = 1) {
	const job = schema.parse({
		shop: { currency: 'EUR', labour: { minutes: { outlineMetre } } },
		stock: { cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 2 }] },
	});
	// All that is read of a plan here.
	const plan = { job, cloths: [{ cloth: 'felt', rolls: [], unplaced: [], ways }] } as unknown;
	const [one] = cutWays(plan as Plan);
	return { ...one!, bench: cutAsText({ ways }, figuresOn(job.shop.ruler)) };
}

describe('rectangles beside outlines, in words', () => {
	it('with length and money of both, and what the one taken saves', () => {
		const { title, rows, taken, bench } = said([outline, rectangle]);
		expect(title).toBe('Felt: rectangles or outlines');
		expect(rows).toEqual([
			['by their outlines', '700', '4830', '15.05', '3.62', '18.67'],
			['as rectangles', '1300', 'none', '27.95', '0.00', '27.95'],
		]);
		expect(taken).toBe(
			'Taken: by their outlines, cheaper by EUR 9.28. It pulls 600 less (46.2 %).',
		);
		expect(bench).toBe('cut by their outlines, 600 less than as rectangles');
	});

	it('say what a dearer choice costs, and that time without minutes is not counted', () => {
		const dear = { ...outline, cutCost: money(2000) };
		expect(said([dear, rectangle]).taken).toContain('as asked; the other costs EUR 7.10 less');
		expect(said([outline, rectangle], 0).taken).toContain('is not counted');
		expect(said([rectangle, outline]).bench).toBe('cut as rectangles');
	});

	it('say when one way does not fit, and when nothing has a price', () => {
		const over = { ...rectangle, fits: false };
		const { rows, taken } = said([outline, over]);
		expect(rows[1]![1]).toBe('does not fit the rolls');
		expect(taken).toContain('the other does not fit');
		const free = [outline, rectangle].map((way) => ({ ...way, cost: money(0) }));
		expect(said(free).taken).toContain('no price, so only the pull counts');
	});
});
