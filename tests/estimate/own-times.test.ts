import { describe, expect, it } from 'vitest';
import { MINUTES_OF, materialsOf, timesOf } from '../../src/lib/estimate/after-work/against';
import { median, ownTimes } from '../../src/lib/estimate/after-work/own-times';
import { plan } from '../../src/lib/plan';
import { sample } from '../plan/samples';

/** So many jobs of one cut each. */
const jobs = (...taken: number[]) => taken.map((t) => [{ what: 'Saw cuts', amount: 1, taken: t }]);

describe('the middle of some figures', () => {
	it.each([
		[[5], 5],
		[[3, 1], 2],
		[[9, 1, 2], 2],
		[[4, 1, 100, 2], 3],
	])('of %j is %d', (figures, middle) => expect(median(figures)).toBe(middle));
});

describe("the shop's own times", () => {
	it('are minutes for one: 12 minutes for 8 cuts are 1.5 for each', () => {
		const [time] = ownTimes([[{ what: 'Saw cuts', amount: 8, taken: 12 }]]);
		expect(time).toEqual({ what: 'Saw cuts', minutes: 1.5, jobs: 1, spread: 0, sure: 'one job' });
	});

	it('are not moved by one day that went wrong, worked by hand', () => {
		// In order 1.0 1.1 1.2 1.3 9.0: the middle 1.2; distances 0 0.1 0.1 0.2 7.8, middle 0.1.
		const [time] = ownTimes(jobs(1.1, 9, 1.2, 1, 1.3));
		expect(time).toMatchObject({ minutes: 1.2, jobs: 5, sure: 'steady' });
		expect(time!.spread).toBeCloseTo(0.1, 12);
	});

	it('of two jobs are few, of scattered ones said so', () => {
		// 2 and 4: 3, both 1 off. 1, 2, 3: 2, of distances 1 0 1 the middle 1, half of it.
		expect(ownTimes(jobs(2, 4))).toMatchObject([{ minutes: 3, spread: 1, sure: 'few jobs' }]);
		expect(ownTimes(jobs(1, 2, 3))).toMatchObject([{ minutes: 2, spread: 1, sure: 'scattered' }]);
	});

	it('leave out what was not done, and not entered; what stands twice in a job is one', () => {
		const none = { what: 'Saw cuts', amount: 0, taken: 5 };
		const unsaid = { what: 'Saw cuts', amount: 5, taken: 0 };
		expect(ownTimes([[none], [unsaid], []])).toEqual([]);
		const twice = [
			{ what: 'Saw cuts', amount: 2, taken: 2 },
			{ what: 'Saw cuts', amount: 2, taken: 6 },
		];
		expect(ownTimes([twice])).toMatchObject([{ minutes: 2, jobs: 1 }]);
	});
});

describe('an estimate to be held against what it took', () => {
	it('holds every operation of the quote, and each has a figure of the shop behind it', async () => {
		const made = await plan(sample('panel-stepped-cover.json'), { effort: 100 });
		const times = timesOf(made);
		expect(times.map((t) => t.what)).toEqual(made.quote.labour.map((l) => l.what));
		for (const [i, t] of times.entries())
			expect(t.estimated).toBeCloseTo(made.quote.labour[i]!.minutes, 2);
		expect(times.every((t) => t.what in MINUTES_OF)).toBe(true);
		const materials = materialsOf(made);
		const boards = made.boards.map((b) => b.answer.layouts.length);
		expect(materials.filter((m) => m.unit === 'sheets').map((m) => m.estimated)).toEqual(boards);
		expect(materials.some((m) => m.unit === 'm' && m.estimated > 0)).toBe(true);
	});
});
