import { test } from '@fast-check/vitest';
import fc from 'fast-check';
import { expect } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { costLines } from '../../src/lib/print/wording/cost-lines';
import { plan } from '../../src/lib/plan';
import { runs } from '../depth';

const cents = fc.integer({ min: 0, max: 9999 }).map((n) => n / 100);
const per = fc.constantFrom('metre', 'yard', 'piece', null);
const percent = fc.integer({ min: 0, max: 200 });

/** Small jobs of loose parts, a panel in cloth and packs, with every way of pricing them. */
const jobs = fc
	.record({
		unit: fc.constantFrom('mm' as const, 'cm' as const, 'in' as const),
		currency: fc.constantFrom('EUR', 'JPY', 'KWD'),
		shop: fc.record({ overhead: percent, materialMarkup: percent, spare: percent }),
		tax: fc.record({ percent, labour: fc.boolean() }),
		by: fc.constantFrom('markup' as const, 'margin' as const),
		profit: fc.integer({ min: 0, max: 95 }),
		sheet: fc.record({ price: cents, least: fc.nat(4), owned: fc.nat(2) }),
		roll: fc.record({
			...{ price: cents, per, step: fc.integer({ min: 1, max: 900 }) },
			least: fc.integer({ min: 0, max: 4000 }),
		}),
		sundry: fc.record({
			...{ price: cents, pack: fc.integer({ min: 1, max: 40 }).map((n) => n / 10) },
			...{ use: fc.integer({ min: 0, max: 30 }).map((n) => n / 10), least: fc.nat(4) },
			owned: fc.integer({ min: 0, max: 20 }).map((n) => n / 10),
		}),
		hours: fc.integer({ min: 0, max: 900 }).map((n) => n / 100),
		count: fc.integer({ min: 0, max: 5 }),
	})
	.map((r): JobFile => ({
		shop: {
			...{ ...r.shop, tax: r.tax, currency: r.currency, ruler: { unit: r.unit } },
			profit: { by: r.by, percent: r.profit },
		},
		work: [{ what: 'Fitting', hours: r.hours }],
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
			sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, ...r.sheet }],
			cloths: [{ id: 'c', name: 'Carpet', loose: 3, pressed: 3 }],
			rolls: [{ id: 'r', cloth: 'c', width: 1000, usable: 1000, ...r.roll }],
			sundries: [
				{ id: 'glue', name: 'Adhesive', kind: 'contact-adhesive', ...r.sundry },
				{ id: 'tape', name: 'Tape', kind: 'other', ...r.sundry },
			],
		},
		parts:
			r.count === 0 ? [] : [{ id: 'A', material: 'ply', length: 500, width: 290, count: r.count }],
		panels: [
			{
				...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'c' },
				opening: { kind: 'rectangle', length: 300, width: 200 },
			},
		],
	}));

const sum = (amounts: readonly number[]): number => amounts.reduce((a, b) => a + b, 0);

test.prop([jobs], { numRuns: runs(120) })(
	'every line of an order is the product of what it shows, and every paper adds up to the coin',
	async (file) => {
		const made = await plan(file, { effort: 5 });
		const { order, quote } = made;
		for (const line of order.lines) {
			expect(Number.isInteger(line.buy)).toBe(true);
			expect(line.total).toBe(line.buy * line.each);
			expect(line.spare.number).toBeGreaterThanOrEqual(-1e-9);
			// Bought and off the rack is what is needed, what goes on top, and what is over.
			const bought = line.buy * (line.group === 'cloth' ? line.pack / 1600 / 1000 : line.pack);
			const has = line.fromRack.number + bought - line.spare.number;
			expect(has).toBeGreaterThanOrEqual(line.need.number - 1e-9);
		}
		expect(sum(order.lines.map((l) => l.total))).toBe(order.total);
		expect(sum(quote.labour.map((l) => l.cost))).toBe(quote.labourCost);
		expect(sum(quote.lines.map((l) => l.price))).toBe(quote.net);
		let so = 0;
		for (const { as, amount } of costLines(made)) {
			if (as === 'line') so += amount;
			if (as === 'sum') expect(amount).toBe(so);
		}
		expect(so).toBe(quote.total);
	},
);
