import { describe, expect, it } from 'vitest';
import { makeOrder } from '../../src/lib/estimate/order';
import { job as schema } from '../../src/lib/job/job';
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
	});

	it('says what the stock does not list instead of leaving it out in silence', () => {
		const { order, problems } = makeOrder(
			job,
			[],
			[],
			[{ kind: 'gasket', amount: 2.4, for: 'baffle' }],
		);
		expect(order.lines).toEqual([]);
		expect(problems[0]?.what).toContain('gasket (2.4 metres, for baffle)');
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
