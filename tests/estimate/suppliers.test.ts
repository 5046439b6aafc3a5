import { test } from '@fast-check/vitest';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeOrder } from '../../src/lib/estimate/order';
import { job as schema, type JobFile } from '../../src/lib/job/job';
import { buyCounted, buyLength } from '../../src/lib/job/stock/buying';
import { mm, ticks } from '../../src/lib/measure/length';
import { money } from '../../src/lib/measure/money';
import { plan } from '../../src/lib/plan';
import { runs } from '../depth';

/* Two shops of our own: what each sells, in which numbers and from how many on for less. */

type Stock = NonNullable<JobFile['stock']>;
type Pack = NonNullable<Stock['sundries']>[number];

const SUPPLIERS: Stock['suppliers'] = [
	{ id: 'board', name: 'Quayside Boards', least: 100 },
	{ id: 'trim', name: 'Ferry Lane Trimmings' },
];

const packs = (more: Partial<Pack>, rest: Partial<JobFile> = {}) => {
	const screws: Pack = { id: 's', name: 'Screws', kind: 'screws', pack: 100, price: 10, ...more };
	const job = schema.parse({ ...rest, stock: { suppliers: SUPPLIERS, sundries: [screws] } });
	return (amount: number) => makeOrder(job, [], [], [{ kind: 'screws', amount, for: 'box' }]);
};

describe('how many are bought', () => {
	it.each([
		['the need and no more', {}, 3, [3, 10_00, 30_00, '']],
		['whole multiples of what they are sold by', { soldBy: 4 }, 5, [8, 10_00, 80_00, 'multiple']],
		['a multiple that is the need', { soldBy: 4 }, 8, [8, 10_00, 80_00, '']],
		[
			'no fewer than are sent, in multiples',
			{ least: 5, soldBy: 4 },
			1,
			[8, 10_00, 80_00, 'least'],
		],
		[
			'the price of many, once there are so many',
			{ breaks: [{ from: 5, price: 8 }] },
			6,
			[6, 8_00, 48_00, ''],
		],
		// 9 at 10.00 are 90.00, 10 at 8.00 only 80.00.
		[
			'one more where that costs less in all',
			{ breaks: [{ from: 10, price: 8 }] },
			9,
			[10, 8_00, 80_00, 'break'],
		],
		// 7 at 10.00 are 70.00, 10 at 8.00 are 80.00.
		[
			'no more where that costs more',
			{ breaks: [{ from: 10, price: 8 }] },
			7,
			[7, 10_00, 70_00, ''],
		],
		// 8 at 10.00 and 10 at 8.00 are 80.00 alike: nobody wants two spare ones for nothing.
		[
			'no more where that costs the same',
			{ breaks: [{ from: 10, price: 8 }] },
			8,
			[8, 10_00, 80_00, ''],
		],
		[
			'the highest number reached, however the list is ordered',
			{
				breaks: [
					{ from: 20, price: 5 },
					{ from: 10, price: 8 },
				],
			},
			19,
			[20, 5_00, 100_00, 'break'],
		],
	] as const)('%s', (_, more, need, [buy, each, total, why]) => {
		const [line] = packs({ ...more, breaks: [...('breaks' in more ? more.breaks : [])] })(
			need * 100,
		).order.lines;
		expect([line?.buy, line?.each, line?.total, line?.more]).toEqual([buy, each, total, why]);
	});

	it('takes no more sheets for their price than can be bought', () => {
		const of = {
			price: money(10_00),
			least: 0,
			soldBy: 1,
			breaks: [{ from: 10, price: money(800) }],
		};
		expect(buyCounted(of, 9, 9)).toMatchObject({ count: 9, total: 90_00 });
		expect(buyCounted(of, 9, null)).toMatchObject({ count: 10, total: 80_00, more: 'break' });
	});

	it('cuts a longer length where its price by the metre makes it cheaper', () => {
		const roll = {
			...{ price: money(20_00), per: 'metre' as const, step: mm(250), least: ticks(0) },
			breaks: [{ from: mm(5000), price: money(15_00) }],
		};
		// 4.25 m at 20.00 are 85.00; 5 m at 15.00 are 75.00, in 20 steps of 3.75.
		expect(buyLength(roll, mm(4100), { unit: 'mm' })).toEqual({
			...{ count: 20, each: 3_75, total: 75_00, more: 'break' },
		});
		expect(buyLength(roll, mm(3000), { unit: 'mm' })).toEqual({
			...{ count: 12, each: 5_00, total: 60_00, more: '' },
		});
	});
});

const breaks = fc.array(
	fc.record({ from: fc.integer({ min: 1, max: 40 }), price: fc.integer({ min: 1, max: 2000 }) }),
	{ maxLength: 4 },
);

test.prop(
	[
		fc.integer({ min: 1, max: 2000 }),
		breaks,
		fc.nat(6),
		fc.integer({ min: 1, max: 7 }),
		fc.integer({ min: 1, max: 60 }),
	],
	{ numRuns: runs(400) },
)('what is bought covers the need in whole multiples, and no count costs less', (...made) => {
	const [price, listed, least, soldBy, need] = made;
	const of = {
		...{ price: money(price), least, soldBy },
		breaks: listed.map((b) => ({ from: b.from, price: money(b.price) })),
	};
	const bought = buyCounted(of, need);
	expect(bought.count).toBeGreaterThanOrEqual(Math.max(need, least));
	expect(bought.count % soldBy).toBe(0);
	expect(bought.total).toBe(bought.count * bought.each);
	// Worked another way: every count up to far past the last break, at its price.
	const at = (n: number): number => {
		const reached = listed
			.filter((b) => b.from <= n)
			.sort((a, b) => b.from - a.from || a.price - b.price);
		return reached[0]?.price ?? price;
	};
	const counts = [...Array(120).keys()].filter(
		(n) => n >= Math.max(need, least) && n % soldBy === 0,
	);
	expect(bought.total).toBe(Math.min(...counts.map((n) => n * at(n))));
});

describe('who it is bought from', () => {
	const SHEET = { id: 'p', material: 'ply', length: 1000, width: 600, price: 30 };
	const file = (sheet: object, pack: object): JobFile => ({
		date: '2026-11-20',
		stock: {
			suppliers: SUPPLIERS,
			materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
			sheets: [{ ...SHEET, ...sheet }],
			sundries: [{ id: 't', name: 'Tape', kind: 'other', pack: 1, price: 4, use: 2, ...pack }],
		},
		parts: [{ id: 'A', material: 'ply', length: 900, width: 500, count: 2 }],
	});

	it('is told with what it comes to, those of nobody last', async () => {
		const { order } = await plan(file({ supplier: 'board' }, {}), { effort: 5 });
		expect(order.suppliers).toEqual([
			{ id: 'board', name: 'Quayside Boards', total: 60_00, least: 100_00 },
			{ id: '', name: '', total: 8_00, least: 0 },
		]);
	});

	it('says where an order is too small for them, and where not', async () => {
		const small = await plan(file({ supplier: 'board' }, { supplier: 'trim' }), { effort: 5 });
		expect(small.problems.map((p) => [p.path.join('.'), p.what, p.kind])).toEqual([
			[
				'stock.suppliers.0.least',
				'The order from Quayside Boards comes to EUR 60.00; they send none under EUR 100.00.',
				'check',
			],
		]);
		const enough = await plan(file({ supplier: 'board', price: 50 }, {}), { effort: 5 });
		expect(enough.problems).toEqual([]);
	});

	it('is asked for where nobody of that mark is listed, and the thing is ordered all the same', async () => {
		const made = await plan(file({ supplier: 'bord', price: 50 }, {}), { effort: 5 });
		expect(made.problems.map((p) => [p.path.join('.'), p.kind, p.fix])).toEqual([
			['stock.sheets.0.supplier', 'check', 'Write "board", if that is the supplier meant.'],
		]);
		expect(made.order.suppliers.map((s) => [s.id, s.total])).toEqual([['', 108_00]]);
	});

	it.each([
		// 183 days before the date of the job: six months, and three days too old.
		['2026-05-21', 183],
		['2026-05-24', null],
		['', null],
		['2026-12-24', null],
	])('is asked for the price of %s', async (priced, age) => {
		const made = await plan(file({ priced, price: 50 }, {}), { effort: 5 });
		const asked = made.problems.filter((p) => p.path.at(-1) === 'priced').map((p) => p.what);
		expect(asked).toEqual(
			age === null
				? []
				: [
						`The price of Plywood (p) is of ${priced}, ${age} days before the date of the job; the shop lets prices hold for 180.`,
					],
		);
	});

	it('is not asked for old prices where the shop never does, nor of what is not bought', async () => {
		const never = { ...file({ priced: '2020-01-01', price: 50 }, {}), shop: { priceAge: null } };
		expect((await plan(never, { effort: 5 })).problems).toEqual([]);
		const owned = file({ priced: '2020-01-01', owned: 5 }, {});
		expect((await plan(owned, { effort: 5 })).problems).toEqual([]);
	});

	it('says that a day is none of the calendar, and plans with the thing', async () => {
		const made = await plan(file({ priced: '2026-02-30', price: 50 }, {}), { effort: 5 });
		expect(made.problems.map((p) => p.what)).toEqual([
			'"2026-02-30", the day of the price of "p", is no day of the calendar.',
		]);
		expect(made.order.total).toBe(108_00);
	});

	it.each([
		[[{ from: 5, price: 40 }], 'costs more each from 5 on than of fewer.'],
		[
			[
				{ from: 5, price: 20 },
				{ from: 5, price: 25 },
			],
			'has two prices from 5 on; the lower one is taken.',
		],
	])('says what is odd about its prices %#', async (listed, what) => {
		const made = await plan(file({ breaks: listed }, {}), { effort: 5 });
		expect(made.problems.map((p) => p.what)).toContain(`"p" ${what}`);
	});
});

test.prop([breaks, fc.nat(3), fc.constantFrom('board', 'trim', undefined), fc.nat(5)], {
	numRuns: runs(60),
})('what is bought from all of them adds up to the order', async (listed, least, supplier, use) => {
	const made = await plan(
		{
			stock: {
				suppliers: SUPPLIERS,
				sundries: ['a', 'b', 'c'].map((id, i) => ({
					...{ id, name: id, kind: 'other' as const, pack: 1, price: 3.33, use: use * i, least },
					...(i === 1 ? {} : { supplier }),
					breaks: listed.map((b) => ({ ...b, price: b.price / 100 })),
				})),
			},
		},
		{ effort: 1 },
	);
	const { order } = made;
	expect(order.suppliers.reduce((sum, s) => sum + s.total, 0)).toBe(order.total);
});
