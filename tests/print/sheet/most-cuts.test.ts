import { describe, expect, it } from 'vitest';
import { tooManyCuts } from '../../../src/lib/layout/most-cuts';
import { lastOf, nth } from '../../../src/lib/measure/lists';
import type { Plan } from '../../../src/lib/plan';
import { sheetPages } from '../../../src/lib/print/sheet/pages';
import { stepsOf } from '../../steps';
import { samplePlan } from '../fixture';
import { wordsOn } from '../words-on';

/** The sample with its first sheet, and after it sheets of so many cuts. */
function planWith(cuts: readonly number[]): Plan {
	const plan = samplePlan();
	const boards = nth(plan.boards, 0);
	const first = nth(boards.answer.layouts, 0);
	const others = cuts.map((n) => ({
		...first,
		cuts: Array.from({ length: n }, (_, i) => nth(first.cuts, i % first.cuts.length)),
	}));
	const source = nth(boards.sources, 0);
	return {
		...plan,
		boards: [
			{
				...boards,
				sources: [source, ...others.map(() => source)],
				answer: { ...boards.answer, layouts: [first, ...others] },
			},
		],
	};
}
const ownCuts = nth(nth(samplePlan().boards, 0).answer.layouts, 0).cuts.length;

describe('more cuts than anybody saws by', () => {
	it('10000 are no trouble, one more leaves out the last sheet and is a check', () => {
		expect(tooManyCuts(planWith([10_000 - ownCuts]).boards)).toEqual([]);
		expect(tooManyCuts(planWith([10_001 - ownCuts]).boards)).toMatchObject([
			{
				kind: 'check',
				what: `1 sheet is not drawn: with ${10_001 - ownCuts} more cuts they would come to more than the 10000 that are printed.`,
			},
		]);
	});

	it('the first sheet is drawn whatever it takes', () => {
		const plan = planWith([12_000]);
		const [boards] = plan.boards;
		const alone = {
			...boards!,
			answer: { ...boards!.answer, layouts: [lastOf(boards!.answer.layouts)] },
		};
		expect(tooManyCuts([alone])).toEqual([]);
	});

	it('stand on a page that says so, at no cost of their own', () => {
		const [small, large] = [planWith([]), planWith([20_000, 20_000])];
		const plain = sheetPages(small).length;
		const steps = stepsOf(() => sheetPages(small));
		let pages: ReturnType<typeof sheetPages> = [];
		expect(stepsOf(() => (pages = sheetPages(large)))).toBeLessThan(1.5 * steps + 10_000);
		expect(pages).toHaveLength(plain + 1);
		expect(
			lastOf(pages)
				.blocks.flatMap((b) => wordsOn(b.marks))
				.join(' '),
			// The two are alike: one page would serve them both.
		).toContain('2 sheets are not drawn: with 20000 more cuts');
	});
});
