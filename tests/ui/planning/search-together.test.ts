import { describe, expect, it, vi } from 'vitest';
import { EFFORT } from '../../../src/lib/layout/pace';
import { money } from '../../../src/lib/measure/money';
import { plan, type Plan } from '../../../src/lib/plan';
import { isBetter } from '../../../src/lib/ui/planning/best-plan';
import { searchTogether } from '../../../src/lib/ui/planning/search-together';
import type { Ask, PlanningWorker } from '../../../src/lib/ui/planning/planner';
import { samplePlan } from '../../print/fixture';

const SAMPLE = samplePlan();
const ASK = { n: 1, effort: 10 * EFFORT, seed: 5 };
const silent = (): void => undefined;

/** What each seed finds, by its price. */
function at(price: number, seed: number): Plan {
	return {
		...SAMPLE,
		order: { ...SAMPLE.order, total: money(price) },
		search: { seed, effort: ASK.effort, stopped: null },
	};
}

/**
 * A hand that finds plans of these prices by seed, later ones sooner: who answers first must not
 * matter.
 */
function hand(prices: Readonly<Record<number, number>>): Pick<PlanningWorker, 'plan'> {
	return {
		plan: async (_, { seed = 0 }: Ask) => {
			await new Promise((done) => setTimeout(done, 20 - seed));
			const price = prices[seed];
			return price === undefined ? null : at(price, seed);
		},
	};
}

describe('several searches side by side', () => {
	it('take the cheapest, and of equals the lowest seed, whoever is first', async () => {
		const prices = { 5: 900, 6: 700, 7: 700, 8: 800 };
		const hands = [hand(prices), hand(prices), hand(prices), hand(prices)];
		for (let i = 0; i < 3; i++) {
			const found = await searchTogether(hands, {}, ASK, silent);
			expect(found?.search.seed).toBe(6);
		}
	});

	it('do without a hand that breaks or has nothing to say', async () => {
		const broken: Pick<PlanningWorker, 'plan'> = {
			plan: () => Promise.reject(new Error('no room')),
		};
		const hands = [broken, hand({}), hand({ 7: 700 })];
		expect((await searchTogether(hands, {}, ASK, silent))?.search.seed).toBe(7);
		expect(await searchTogether([hand({})], {}, ASK, silent)).toBeNull();
		await expect(searchTogether([broken, broken], {}, ASK, silent)).rejects.toThrow('no room');
	});

	it('tell how far they are together', async () => {
		const half: Pick<PlanningWorker, 'plan'> = {
			plan: async (_, __, tell) => {
				tell({ stage: 'boards', done: 0.5 });
				return null;
			},
		};
		const tell = vi.fn();
		await searchTogether([half, half], {}, ASK, tell);
		expect(tell.mock.calls.map(([p]) => (p as { done: number }).done)).toEqual([0.25, 0.5]);
	});
});

describe('the better plan', () => {
	it('is the cheaper one, and never one that leaves something over', () => {
		expect(isBetter(at(700, 1), at(701, 2))).toBe(true);
		expect(isBetter(at(701, 1), at(700, 2))).toBe(false);
		expect(isBetter(at(700, 1), at(700, 2))).toBe(false);
		const [boards] = SAMPLE.boards;
		const unplaced = [{ id: 'P1', count: 1, why: '' }];
		const short = { ...boards!, answer: { ...boards!.answer, unplaced } };
		expect(isBetter({ ...at(1, 1), boards: [short] }, at(900, 1))).toBe(false);
	});

	it('at the same price leaves the larger offcut', () => {
		const [boards] = SAMPLE.boards;
		const layouts = boards!.answer.layouts.map((l) => ({ ...l, offcuts: [] }));
		const bare = { ...boards!, answer: { ...boards!.answer, layouts } };
		const rest = SAMPLE.boards.slice(1);
		expect(isBetter(SAMPLE, { ...SAMPLE, boards: [bare, ...rest] })).toBe(true);
		expect(isBetter({ ...SAMPLE, boards: [bare, ...rest] }, SAMPLE)).toBe(false);
	});
});

describe('a search kept with the job', () => {
	const JOB = {
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
			sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, price: 30 }],
		},
		parts: [
			{ id: 'A', material: 'ply', length: 310, width: 170, count: 19 },
			{ id: 'B', material: 'ply', length: 230, width: 140, count: 23 },
			{ id: 'C', material: 'ply', length: 410, width: 90, count: 17 },
		],
	};

	it('finds the same plan again, from the file alone', async () => {
		const found = await plan(JOB, { seed: 4, effort: 3000 });
		const again = await plan({ ...JOB, seed: 4, look: { effort: 3000 } });
		expect(again.boards).toEqual(found.boards);
		expect(again.search).toEqual({ seed: 4, effort: 3000, stopped: null });
	});

	it('finds the same plan again when it was ended before its time', async () => {
		let reports = 0;
		const found = await plan(JOB, { seed: 4, effort: 3000, watch: () => ++reports < 2 });
		expect(found.search.stopped).toBe(2);
		const { effort, stopped } = found.search;
		const again = await plan({ ...JOB, seed: 4, look: { effort, stopped } });
		expect(again.boards).toEqual(found.boards);
		expect(again.search).toEqual(found.search);
		const whole = await plan({ ...JOB, seed: 4, look: { effort } });
		expect(whole.boards[0]!.answer.effort).toBeGreaterThan(found.boards[0]!.answer.effort);
	});

	it('is no part of a plan asked for with another seed or effort', async () => {
		const file = { ...JOB, look: { effort: 3000, stopped: 1 } };
		expect((await plan(file, { effort: 500 })).search).toEqual({
			seed: 1,
			effort: 500,
			stopped: null,
		});
		expect((await plan(file, { seed: 9 })).search.stopped).toBeNull();
	});
});
