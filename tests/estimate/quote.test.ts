import { describe, expect, it } from 'vitest';
import { items } from '../../src/lib/estimate/items';
import { makeOrder } from '../../src/lib/estimate/order';
import { makeQuote } from '../../src/lib/estimate/quote';
import { job as schema, type JobFile } from '../../src/lib/job/job';
import { ticks } from '../../src/lib/measure/length';
import { costLines, earnedText } from '../../src/lib/print/wording/cost-lines';

/** 200.00 of material and ten hours at 40.00. */
function quoted(shop: NonNullable<JobFile['shop']>, work: JobFile['work'] = TEN_HOURS) {
	const job = schema.parse({
		shop: { labour: { hour: 40 }, profit: { by: 'markup', percent: 0 }, ...shop },
		work,
		stock: { sundries: [{ id: 't', name: 'Thing', kind: 'other', pack: 1, price: 200, use: 1 }] },
	});
	const { order } = makeOrder(job, [], [], []);
	const none = { boxes: [], panels: [], parts: [], blanks: [], reels: [] };
	const counted = { ...none, boards: [], cloths: [], seamLength: ticks(0), boxes: 0, panels: 0 };
	return { job, quote: makeQuote(job, { ...counted, order, items: items(job, none) }) };
}

const TEN_HOURS: JobFile['work'] = [{ what: 'Fitting in the vehicle', hours: 10 }];

describe('what makes the price', () => {
	it('adds overhead on labour to the cost, and profit on the cost with it', () => {
		const { quote } = quoted({ overhead: 25, profit: { by: 'markup', percent: 50 } });
		expect(quote).toMatchObject({ labourCost: 400_00, overhead: 100_00, cost: 700_00 });
		expect(quote).toMatchObject({ profit: 350_00, net: 1050_00, markup: 50 });
	});

	it('earns the markup on material once: profit is reckoned from the cost alone', () => {
		const { quote } = quoted({ materialMarkup: 10, profit: { by: 'markup', percent: 50 } });
		expect(quote).toMatchObject({ cost: 600_00, materialMarkup: 20_00, profit: 300_00 });
		expect(quote.net).toBe(920_00);
		expect(quote.markup).toBeCloseTo((100 * 320) / 600, 9);
		expect(quote.margin).toBeCloseTo((100 * 320) / 920, 9);
	});

	it('a margin is of cost and profit, beside the markup on material', () => {
		const { quote } = quoted({ materialMarkup: 10, profit: { by: 'margin', percent: 40 } });
		expect(quote).toMatchObject({ profit: 400_00, net: 1020_00 });
	});

	it('taxes the price of material with its markup, not labour nor its overhead', () => {
		const tax = { percent: 10 };
		const profit = { by: 'markup' as const, percent: 50 };
		const { quote } = quoted({ materialMarkup: 10, overhead: 25, tax, profit });
		// Material 200, its half of profit 100, its markup 20.
		expect(quote).toMatchObject({ taxed: 320_00, tax: 32_00 });
		const all = quoted({ materialMarkup: 10, overhead: 25, profit, tax: { ...tax, labour: true } });
		expect(all.quote.taxed).toBe(all.quote.net);
	});

	it('nothing asked for is nothing more', () => {
		expect(quoted({}).quote).toMatchObject({ overhead: 0, materialMarkup: 0, net: 600_00 });
	});
});

describe('hours typed', () => {
	it("stand beside those counted, each with its own price or the shop's", () => {
		const { quote } = quoted({}, [
			{ what: 'Wiring', hours: 1.5, hour: 60 },
			{ what: 'Fitting', hours: 2 },
			{ what: 'Nothing', hours: 0 },
		]);
		expect(quote.labour).toEqual([
			{ what: 'Wiring', amount: 1.5, unit: 'h', minutes: 90, cost: 90_00 },
			{ what: 'Fitting', amount: 2, unit: 'h', minutes: 120, cost: 80_00 },
		]);
		expect(quote.lines.map((l) => l.what)).toEqual(['Wiring', 'Fitting']);
		expect(quote.lines.reduce((sum, l) => sum + l.price, 0)).toBe(quote.net);
	});
});

describe('the cost sheet', () => {
	it('has a line for each, none twice: every sum is the lines above it', () => {
		const { job, quote } = quoted({
			...{ overhead: 25, materialMarkup: 10, tax: { percent: 19 } },
			profit: { by: 'margin', percent: 40 },
		});
		const lines = costLines({ job, quote });
		let sum = 0;
		for (const { as, amount } of lines) {
			if (as === 'line') sum += amount;
			if (as === 'sum') expect(amount).toBe(sum);
		}
		expect(sum).toBe(quote.total);
		expect(lines.map((l) => l.label)).toEqual([
			'Material bought: whole sheets, steps and packs',
			'of all this, in the work itself',
			'Labour',
			'Overhead, 25 % of labour',
			'Cost',
			'Markup on material, 10 % of EUR 200.00',
			'Profit, margin 40 % of cost and profit',
			'Net',
			'Tax, 19 %',
			'Total',
		]);
		expect(earnedText({ job, quote })).toMatch(/markup 69\.52 % .* margin 41\.01 %/);
	});
});
