import { describe, expect, it } from 'vitest';
import { makeOrder } from '../../src/lib/estimate/order';
import { makeQuote } from '../../src/lib/estimate/quote';
import { job as schema, type JobFile } from '../../src/lib/job/job';
import { ticks } from '../../src/lib/measure/length';

/** A job that takes one thing of this price and no labour. */
function quoteOf(price: number, shop: NonNullable<JobFile['shop']>) {
	const job = schema.parse({
		name: 'One thing',
		shop,
		stock: { sundries: [{ id: 'thing', name: 'Thing', kind: 'other', pack: 1, price, use: 1 }] },
	});
	const { order } = makeOrder(job, [], [], []);
	const cloth = { blanks: [], cloths: [], reels: [], seamLength: ticks(0) };
	const none = { ...cloth, parts: [], boards: [], boxes: 0, panels: 0 };
	return makeQuote(job, { ...none, order, items: [{ what: 'Thing', weight: 1 }] });
}

describe('markup and margin', () => {
	it('40 % markup on 100 is 140, a margin of 28.571 % (business article on markup and margin)', () => {
		const quote = quoteOf(100, { profit: { by: 'markup', percent: 40 } });
		expect(quote.net).toBe(140_00);
		expect(quote.margin).toBeCloseTo(28.571, 3);
	});

	it('50 % markup on 200 is 300, a margin of 33.333 % (accounting article)', () => {
		const quote = quoteOf(200, { profit: { by: 'markup', percent: 50 } });
		expect(quote.net).toBe(300_00);
		expect(quote.margin).toBeCloseTo(33.333, 3);
	});

	it('40 % margin is a markup of 66.667 % (identity m / (1 - m))', () => {
		const quote = quoteOf(1000, { profit: { by: 'margin', percent: 40 } });
		expect(quote.markup).toBeCloseTo(66.667, 2);
		expect(quote.margin).toBeCloseTo(40, 2);
	});

	it('the quote adds up: net and tax make the total, the lines make the net', () => {
		const quote = quoteOf(123.45, { tax: { percent: 19 }, profit: { by: 'markup', percent: 33 } });
		expect(quote.net + quote.tax).toBe(quote.total);
		expect(quote.lines.reduce((sum, l) => sum + l.price, 0)).toBe(quote.net);
		expect(quote.tax).toBe(Math.round(quote.net * 0.19));
	});
});

describe('waste', () => {
	it("the shop's spare is 'add 30 %': 100 m2 of glue and 30 % is 130", () => {
		const job = schema.parse({
			shop: { spare: 30 },
			stock: {
				sundries: [{ id: 'glue', name: 'Glue', kind: 'contact-adhesive', pack: 1, price: 1 }],
			},
		});
		const needs = [{ kind: 'contact-adhesive' as const, amount: 100, for: 'a test' }];
		expect(makeOrder(job, [], [], needs).order.lines[0]?.buy).toBe(130);
	});
});
