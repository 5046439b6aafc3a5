import { test } from '@fast-check/vitest';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/lib/job/job';
import { money } from '../../src/lib/measure/money';
import { plan, type Plan, withOptions } from '../../src/lib/plan';
import { quoteShown, sinceSent } from '../../src/lib/print/wording/quote-figures';
import { withSent } from '../../src/lib/ui/chapters/quote/sent';
import { runs } from '../depth';

/* Shelves of which a sheet at 60.00 holds two; no labour, 50 % markup, 20 % tax. */

const NOTHING = {
	...{ sheet: 0, cut: 0, cutMetre: 0, setting: 0, routedMetre: 0, bondedSquareMetre: 0 },
	...{ seamMetre: 0, corner: 0, relief: 0, panel: 0, box: 0, part: 0 },
};
const FILE: JobFile = {
	shop: {
		...{ profit: { by: 'markup', percent: 50 }, tax: { percent: 20, labour: true } },
		labour: { hour: 0, minutes: NOTHING },
	},
	stock: {
		materials: [
			{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 },
			{ id: 'mdf', name: 'MDF', nominal: 12, measured: 12 },
		],
		sheets: [
			{ id: 'p', material: 'ply', length: 1000, width: 600, price: 60 },
			{ id: 'm', material: 'mdf', length: 1000, width: 600, price: 40 },
		],
	},
	parts: [{ id: 'A', material: 'ply', length: 900, width: 280, count: 2 }],
	options: [
		{ id: 'third', name: 'A third shelf', changes: [{ path: 'parts/A/count', value: '3' }] },
		{ id: 'mdf', name: 'Of MDF', changes: [{ path: 'parts/A/material', value: 'mdf' }] },
		{ id: 'oak', name: 'Of oak', changes: [{ path: 'parts/A/material', value: 'oak' }] },
		{ id: 'lost', name: 'A lost one', changes: [{ path: 'parts/Z/count', value: '3' }] },
	],
};

const priced = async (file: JobFile): Promise<Plan> =>
	withOptions(await plan(file, { effort: 20 }), file, { effort: 20 });

describe('an option', () => {
	it('is planned anew and priced as a difference', async () => {
		const made = await priced(FILE);
		// One sheet: 60.00 and a half, 90.00, and a fifth: 108.00. A second sheet doubles it; a
		// sheet of MDF is 40.00, 60.00, 72.00.
		expect(made.quote.total).toBe(108_00);
		expect(made.options.map((o) => [o.id, o.offered, o.bought, o.difference, o.total])).toEqual([
			['third', true, 60_00, 108_00, 216_00],
			['mdf', true, -20_00, -36_00, 72_00],
			['oak', false, -60_00, -108_00, 0],
			['lost', false, 0, 0, 108_00],
		]);
		expect(made.options[2]?.problems.map((p) => p.what)).toEqual(['No board has the mark "oak".']);
		expect(made.problems.map((p) => p.path.join('.'))).toEqual(['options.3.changes.0.path']);
	});

	it('that changes nothing differs by nothing', async () => {
		const changes = [{ path: 'parts/A/count', value: '2' }];
		const { options } = await priced({ ...FILE, options: [{ id: 'o', name: 'Same', changes }] });
		expect(options.map((o) => [o.difference, o.bought, o.problems])).toEqual([[0, 0, []]]);
	});

	it('leaves the plan beside it as it is', async () => {
		const bare = await plan({ ...FILE, options: [] }, { effort: 20 });
		const made = await priced(FILE);
		expect({ ...made, job: null, options: null, problems: null }).toEqual({
			...{ ...bare, job: null, options: null, problems: null },
		});
	});
});

describe('a quote that was sent', () => {
	it('stays as it is when prices change, and says what they changed', async () => {
		const sent = withSent(
			{ ...FILE, options: FILE.options?.slice(0, 1) },
			await priced(FILE),
			'2026-11-21',
		);
		const same = await priced(sent);
		expect(sinceSent(same)).toEqual([
			// Two options were offered; one of them is in the job no more.
			{ what: 'Option Of MDF, in all', sent: 72_00, now: null },
		]);
		const dearer: JobFile = {
			...sent,
			stock: { ...sent.stock, sheets: sent.stock?.sheets?.map((s) => ({ ...s, price: 70 })) },
		};
		const now = await priced(dearer);
		expect(quoteShown(now)).toMatchObject({ sent: '2026-11-21', net: 90_00, total: 108_00 });
		expect(now.quote.total).toBe(126_00);
		expect(sinceSent(now)).toEqual([
			{ what: 'Parts cut to the list', sent: 90_00, now: 105_00 },
			{ what: 'Option A third shelf, in all', sent: 216_00, now: 252_00 },
			{ what: 'Option Of MDF, in all', sent: 72_00, now: null },
			{ what: 'Net', sent: 90_00, now: 105_00 },
			{ what: 'Tax', sent: 18_00, now: 21_00 },
			{ what: 'Total', sent: 108_00, now: 126_00 },
		]);
	});

	it('is told of where its figures do not add up', async () => {
		const file = withSent(FILE, await priced(FILE), '2026-11-21');
		const [first] = file.sent ?? [];
		const made = await plan({ ...file, options: [], sent: [{ ...first!, net: 91 }] });
		expect(made.problems.map((p) => [p.path.join('.'), p.what])).toEqual([
			['sent.0', 'The figures of the quote sent on 2026-11-21 do not add up.'],
		]);
	});
});

const cents = fc.integer({ min: 1, max: 9999 }).map((n) => n / 100);
test.prop([cents, cents, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 90 })], {
	numRuns: runs(60),
})('every figure of a quote sent adds up, and comes back as it was', async (...made) => {
	const [price, other, count, percent] = made;
	const file: JobFile = {
		...FILE,
		shop: { ...FILE.shop, tax: { percent, labour: true }, profit: { by: 'margin', percent } },
		stock: {
			...FILE.stock,
			sheets: FILE.stock?.sheets?.map((s, i) => ({ ...s, price: i === 0 ? price : other })),
		},
		parts: [{ ...FILE.parts![0]!, count }],
		options: FILE.options?.slice(0, 2),
	};
	const before = await priced(file);
	for (const o of before.options) expect(before.quote.total + o.difference).toBe(o.total);
	const after = await priced(withSent(file, before, '2026-11-21'));
	expect(after.problems).toEqual(before.problems);
	expect(sinceSent(after)).toEqual([]);
	const { lines, net, tax, total, options } = quoteShown(after);
	expect(lines.reduce((sum, l) => sum + l.price, 0)).toBe(net);
	expect(money(net + tax)).toBe(total);
	for (const o of options) expect(total + o.difference).toBe(o.total);
});
