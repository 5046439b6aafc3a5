import { describe, expect, it, test } from 'vitest';
import { makeOrder } from '../../src/lib/estimate/order';
import { job as schema, type JobFile } from '../../src/lib/job/job';
import { plan, type Plan } from '../../src/lib/plan';

type Rolls = NonNullable<NonNullable<JobFile['stock']>['rolls']>;
type Ruler = NonNullable<NonNullable<JobFile['shop']>['ruler']>;

const BOARD = { id: 'ply', name: 'Plywood', nominal: 12, measured: 12 };
const ROLL = { id: 'r', cloth: 'c', width: 1000, usable: 1000, price: 20, step: 100 };

/** A panel in cloth off one roll: 1 m of it and a little more is pulled. */
function wrapped(roll: Partial<Rolls[number]>, ruler: Ruler = {}): Promise<Plan> {
	return plan(
		{
			shop: { ruler },
			stock: {
				materials: [BOARD],
				cloths: [{ id: 'c', name: 'Carpet', loose: 3, pressed: 3, nap: 'one-way' }],
				rolls: [{ ...ROLL, ...roll }],
			},
			panels: [
				{
					...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'c' },
					opening: { kind: 'rectangle', length: 600, width: 1000 },
				},
			],
		},
		{ effort: 20 },
	);
}

async function clothLine(roll: Partial<Rolls[number]>, ruler: Ruler = {}) {
	const made = await wrapped(roll, ruler);
	return made.order.lines.find((l) => l.group === 'cloth')!;
}

describe('what the price of a roll is for', () => {
	it.each([
		['a metre where nothing is said and the ruler is metric', null, 'mm', 2_00],
		['a metre on centimetres too', null, 'cm', 2_00],
		// A yard is 0.9144 m, so 100 mm of it are 20 / 9.144 = 2.187.
		['a yard where nothing is said and the ruler is in inches', null, 'in', 2_19],
		['a yard on a metric ruler, when that is said', 'yard', 'mm', 2_19],
		['a metre on a ruler of inches, when that is said', 'metre', 'in', 2_00],
		['a piece as long as a step', 'piece', 'mm', 20_00],
	] as const)('%s', async (_, per, unit, each) => {
		const line = await clothLine({ per }, { unit });
		expect(line).toMatchObject({ each, total: each * line.buy });
	});

	it('counts in everything else that is priced: what is in the work, and off the rack', async () => {
		const [metre, yard] = await Promise.all([
			wrapped({ per: 'metre', left: 5000 }),
			wrapped({ per: 'yard', left: 5000 }),
		]);
		expect(metre.quote.fromRack).toBeGreaterThan(20_00);
		for (const worth of ['fromRack', 'used'] as const)
			expect(yard.quote[worth] / metre.quote[worth]).toBeCloseTo(1 / 0.9144, 3);
	});

	it('goes before the roll whose figure is smaller', async () => {
		const made = await plan(
			{
				stock: {
					materials: [BOARD],
					cloths: [{ id: 'c', name: 'Carpet', loose: 3, pressed: 3 }],
					rolls: [
						{ ...ROLL, id: 'yards', per: 'yard', price: 19 },
						{ ...ROLL, id: 'metres', per: 'metre', price: 20 },
					],
				},
				panels: [
					{
						...{ id: 'p', name: 'Panel', material: 'ply', cloth: 'c' },
						opening: { kind: 'rectangle', length: 600, width: 700 },
					},
				],
			},
			{ effort: 20 },
		);
		expect(made.order.lines.find((l) => l.group === 'cloth')?.id).toBe('metres');
	});

	it('says when a step is so short that its price is lost in rounding', async () => {
		const made = await wrapped({ price: 1.2, step: 1 });
		const said = made.problems.find((p) => p.path.join('.') === 'stock.rolls.0.step');
		expect(said).toMatchObject({ kind: 'check', what: expect.stringContaining('EUR 0.00') });
		const sound = await wrapped({ price: 1.2, step: 100 });
		expect(sound.problems.filter((p) => p.path.includes('step'))).toEqual([]);
	});
});

describe('the least a seller sends', () => {
	test('a roll is ordered up to it, and what is over is spare', async () => {
		const free = await clothLine({ left: null });
		const least = await clothLine({ least: 3050 });
		expect(least.buy).toBe(31); // 3050 mm in steps of 100
		expect(least.total).toBe(31 * 2_00);
		expect(least.spare.number - free.spare.number).toBeCloseTo((31 - free.buy) / 10, 9);
		expect((await clothLine({ least: 200 })).buy).toBe(free.buy);
		expect(await clothLine({ least: 3050, left: 5000 })).toMatchObject({ buy: 0, total: 0 });
	});

	const sheet = (least: number, owned: number) =>
		plan(
			{
				stock: {
					materials: [BOARD],
					sheets: [{ id: 's', material: 'ply', length: 1000, width: 600, price: 9, least, owned }],
				},
				parts: [{ id: 'A', material: 'ply', length: 500, width: 300 }],
			},
			{ effort: 20 },
		);

	test('sheets: none where none is bought, else no fewer', async () => {
		const line = async (least: number, owned = 0) => (await sheet(least, owned)).order.lines[0];
		expect(await line(0)).toMatchObject({ buy: 1, total: 9_00, spare: { number: 0 } });
		expect(await line(1)).toMatchObject({ buy: 1, total: 9_00, spare: { number: 0 } });
		expect(await line(5)).toMatchObject({
			...{ buy: 5, total: 45_00, spare: { number: 4 }, need: { number: 1 } },
		});
		expect(await line(5, 1)).toMatchObject({ buy: 0, total: 0, spare: { number: 0 } });
	});

	test('packs: none where none is bought, else no fewer', () => {
		const screws = { id: 's', name: 'Screws', kind: 'screws' as const, pack: 100, price: 3 };
		const line = (changes: object) => {
			const job = schema.parse({ stock: { sundries: [{ ...screws, ...changes }] } });
			return makeOrder(job, [], [], [{ kind: 'screws', amount: 150, for: 'box' }]).order.lines[0];
		};
		expect(line({})).toMatchObject({ buy: 2, spare: { number: 50 } });
		expect(line({ least: 5 })).toMatchObject({ buy: 5, total: 15_00, spare: { number: 350 } });
		expect(line({ least: 5, owned: 2 })).toMatchObject({ buy: 0, total: 0, spare: { number: 0 } });
	});
});

describe('packs', () => {
	const line = (amount: number, sundry: object, spare = 0) => {
		const felt = { id: 'f', name: 'Foam', kind: 'foam', pack: 1, price: 2, ...sundry };
		const job = schema.parse({ shop: { spare }, stock: { sundries: [felt] } });
		return makeOrder(job, [], [], [{ kind: 'foam', amount, for: 'seat' }]).order.lines[0];
	};

	it.each([
		['a tenth of a pack of ten is one pack', 0.1, 10, 1],
		['exactly one pack is one', 10, 10, 1],
		['a hair more than a pack is two', 10.001, 10, 2],
		['0.1 + 0.2 in packs of 0.3 is one', 0.1 + 0.2, 0.3, 1],
		['thirty times 0.1 in packs of 3 is one', 30 * 0.1, 3, 1],
		['1.1 x 3 in packs of 3.3 is one', 1.1 * 3, 3.3, 1],
	])('%s', (_, amount, pack, buy) => {
		expect(line(amount, { pack })).toMatchObject({ buy, total: buy * 2_00 });
	});

	it('is not opened for nothing', () => {
		expect(line(0, {})).toBeUndefined();
	});

	it('typed for the job come to what is counted, whatever the kind', () => {
		expect(line(0.5, { use: 2 })).toMatchObject({
			...{ buy: 3, need: { number: 2.5 }, for: ['seat', 'this job'] },
		});
		expect(line(0, { use: 2 })).toMatchObject({ buy: 2, need: { number: 2 }, for: ['this job'] });
	});
});
