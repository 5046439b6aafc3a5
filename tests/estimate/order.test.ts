import { describe, expect, it } from 'vitest';
import { perArea } from '../../src/lib/estimate/material';
import { makeOrder } from '../../src/lib/estimate/order';
import { job as schema } from '../../src/lib/job/job';
import { mm } from '../../src/lib/measure/length';
import { plan } from '../../src/lib/plan';

const job = schema.parse({
	shop: { spare: 0 },
	stock: {
		sundries: [
			{ id: 'screws', name: 'Screws 4 x 40', kind: 'screws', pack: 200, price: 9.5, owned: 1 },
			{ id: 'felt', name: 'Felt', kind: 'damping', pack: 0.5, price: 4, overlap: 10 },
		],
	},
});

describe('sundries in packs', () => {
	it('takes what is on the rack first and buys whole packs for the rest', () => {
		const needs = [
			{ kind: 'screws' as const, amount: 150, for: 'box' },
			{ kind: 'screws' as const, amount: 260, for: 'panel' },
		];
		const [line] = makeOrder(job, [], [], needs).order.lines;
		expect(line).toMatchObject({ buy: 2, need: { number: 410, unit: 'pieces' }, total: 19_00 });
		expect(line?.spare.number).toBe(190);
	});

	it('buys nothing when the rack has enough', () => {
		const [line] = makeOrder(job, [], [], [{ kind: 'screws', amount: 200, for: 'box' }]).order
			.lines;
		expect(line).toMatchObject({ buy: 0, total: 0, spare: { number: 0 } });
	});

	it('adds the overlap of sheets laid over each other before it counts packs', () => {
		const [line] = makeOrder(job, [], [], [{ kind: 'damping', amount: 1, for: 'floor' }]).order
			.lines;
		expect(line?.buy).toBe(3); // 1.1 m2 in sheets of 0.5 m2
		expect(line?.need.number).toBeCloseTo(1.1, 12);
	});

	it('adds no spare to sheets: nothing of them runs down the side of a pot', () => {
		const sheets = { id: 's', name: 'Damping sheet', kind: 'damping', pack: 0.5, price: 6 };
		const glue = { id: 'g', name: 'Adhesive', kind: 'contact-adhesive', pack: 0.5, price: 6 };
		const shop = schema.parse({ shop: { spare: 10 }, stock: { sundries: [sheets, glue] } });
		const lines = makeOrder(...[shop, [], []], [
			{ kind: 'damping', amount: 0.914, for: 'panel' },
			{ kind: 'contact-adhesive', amount: 0.914, for: 'panel' },
		]).order.lines;
		expect(lines.map((l) => [l.id, l.buy, l.sparePercent])).toEqual([
			['s', 2, 0],
			['g', 3, 10],
		]);
		expect(lines[0]?.spare.number).toBeCloseTo(1 - 0.914, 9);
	});

	it('takes packs typed for the job for what they hold', () => {
		const screws = { id: 's', name: 'Screws', kind: 'screws', pack: 200, price: 9.5, use: 2 };
		const shop = schema.parse({ stock: { sundries: [screws] } });
		const [line] = makeOrder(shop, [], [], [{ kind: 'screws', amount: 30, for: 'box' }]).order
			.lines;
		expect(line).toMatchObject({ buy: 3, need: { number: 430 }, spare: { number: 170 } });
	});

	it('says what the stock does not list, to two places, for what it is first', () => {
		const needs = [
			{ kind: 'contact-adhesive' as const, amount: 0.1234, for: 'both faces of Tray' },
			{ kind: 'contact-adhesive' as const, amount: 1, for: 'Lid' },
		];
		const { problems, order } = makeOrder(schema.parse({}), [], [], needs);
		expect(order.lines).toEqual([]);
		expect(problems.map((p) => p.what)).toEqual([
			'The work takes contact adhesive (1.12 square metres, for both faces of Tray), but the stock lists none, so the order leaves it out.',
		]);
	});

	it('a square of the cheapest sheet that has a price, though it be the least there is', () => {
		const sheets = [2, 0.01, 0].map((price, i) => ({
			...{ id: `s${i}`, material: 'ply', length: 1000, width: 500, price },
		}));
		const materials = [{ id: 'ply', name: 'Ply', nominal: 12, measured: 12 }];
		const priced = schema.parse({ stock: { materials, sheets } });
		expect(perArea(priced, 'ply') * mm(1000) * mm(500)).toBeCloseTo(1, 9);
		expect(perArea(priced, 'mdf')).toBe(0);
	});

	it('counts what is of no kind in packs, however much one holds', () => {
		const other = { id: 'o', name: 'Tape', kind: 'other', pack: 10, price: 4, use: 0.1 };
		const order = (changes: object) =>
			makeOrder(...[schema.parse({ stock: { sundries: [{ ...other, ...changes }] } }), [], []], [])
				.order.lines[0];
		expect(order({})).toMatchObject({
			...{ buy: 1, total: 4_00, pack: 1 },
			...{ need: { number: 0.1, unit: 'packs' }, spare: { number: 0.9, unit: 'packs' } },
		});
		expect(order({ use: 2.5, owned: 1 })).toMatchObject({
			...{ buy: 2, total: 8_00, rack: { number: 1, unit: 'packs' } },
			...{ fromRack: { number: 1, unit: 'packs' }, spare: { number: 0.5, unit: 'packs' } },
		});
	});

	it('says what the stock does not list instead of leaving it out in silence', () => {
		const { order, problems } = makeOrder(
			job,
			[],
			[],
			[{ kind: 'gasket', amount: 2.4, for: 'baffle' }],
		);
		expect(order.lines).toEqual([]);
		expect(problems).toMatchObject([
			{ kind: 'note', what: expect.stringContaining('gasket (2.4 metres, for baffle)') },
		]);
	});
});

it('asks for the price of what has to be bought without one', async () => {
	const made = await plan(
		{
			stock: {
				materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
				sheets: [{ id: 's', material: 'ply', length: 1000, width: 600 }],
			},
			parts: [
				{ id: 'A', material: 'ply', length: 500, width: 300 },
				{ id: 'B', name: 'Long rail', material: 'ply', length: 1500, width: 50 },
			],
		},
		{ effort: 20 },
	);
	const price = made.problems.find((p) => p.path.join('.') === 'stock.sheets.0.price');
	expect(price).toMatchObject({ kind: 'check' });
	const left = made.problems.find((p) => p.kind === 'stop')!;
	expect(left.what).toContain('B Long rail is on no sheet.');
	expect(left.what).not.toContain('part.B');
});

/** Seven steps of 0.25 m of a roll at 18.90 the metre: a step is 4.73 (4.725), the line 33.11. */
it('asks for cloth what its line shows: steps times the price of one', async () => {
	const made = await plan(
		{
			stock: {
				materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
				cloths: [{ id: 'c', name: 'Carpet', loose: 3, pressed: 3, nap: 'one-way' }],
				rolls: [{ id: 'r', cloth: 'c', width: 1000, usable: 1000, price: 18.9, step: 250 }],
			},
			panels: [
				{
					...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'c' },
					...{ opening: { kind: 'rectangle', length: 600, width: 1500 } },
				},
			],
		},
		{ effort: 20 },
	);
	const line = made.order.lines.find((l) => l.group === 'cloth');
	expect(line).toMatchObject({ buy: 7, each: 4_73, total: 33_11 });
});
