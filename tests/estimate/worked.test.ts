import { NO_SPOIL } from '../../src/lib/estimate/spoil/spoil';
import { describe, expect, it } from 'vitest';
import { estimate } from '../../src/lib/estimate/estimate';
import { items } from '../../src/lib/estimate/items';
import { labourLines } from '../../src/lib/estimate/labour';
import { perArea, worthFromRack, worthOfOffcuts, worthUsed } from '../../src/lib/estimate/material';
import { shareOut } from '../../src/lib/estimate/share';
import { sheetLines } from '../../src/lib/estimate/sheet-lines';
import { mm, ticks } from '../../src/lib/measure/length';
import { money, type Money } from '../../src/lib/measure/money';
import { JOB, PLY, WORK } from './worked-job';

/* One small job, every figure worked out by hand and written out here. */

const made = () => estimate(JOB, WORK);
const lineOf = (id: string) => made().order.lines.find((l) => l.id === id);

describe('the order', () => {
	it('takes sheets bought and owned, each with what is on the rack', () => {
		// One owned and one bought of three at the least; the fourth sheet was cut before.
		expect(lineOf('full')).toEqual({
			...{ group: 'sheets', id: 'full', what: 'Plywood', code: '', unit: 'sheet', pack: 1 },
			...{ need: { number: 2, unit: 'sheets' }, rack: { number: 2, unit: 'sheets' } },
			...{
				fromRack: { number: 1, unit: 'sheets' },
				buy: 3,
				each: 80_00,
				total: 240_00,
				more: 'least',
			},
			...{ supplier: '', priced: '' },
			...{ spare: { number: 2, unit: 'sheets' }, sparePercent: 0, for: [] },
		});
		expect(lineOf('mdf-1')).toMatchObject({ code: 'M-1', what: 'MDF', buy: 1, total: 10_00 });
		expect([lineOf('half'), lineOf('free')]).toEqual([undefined, undefined]);
	});

	it('names the offcuts taken beside all there are of that board, at no price', () => {
		expect(made().order.lines.filter((l) => l.unit === 'offcut')).toEqual([
			{
				...{ group: 'sheets', id: '', what: 'Plywood, offcuts', code: '', unit: 'offcut', pack: 1 },
				...{ need: { number: 1, unit: 'offcuts' }, rack: { number: 5, unit: 'offcuts' } },
				...{ fromRack: { number: 1, unit: 'offcuts' }, buy: 0, each: 0, total: 0, more: '' },
				...{ supplier: '', priced: '' },
				...{ spare: { number: 0, unit: 'offcuts' }, sparePercent: 0, for: [] },
			},
		]);
	});

	it('orders nothing for sheets that were cut before, offcuts among them', () => {
		const cut = PLY.sources.map((s) => ({ ...s, cut: true }));
		expect(sheetLines(JOB, { ...PLY, sources: cut })).toEqual([]);
	});

	it('takes cloth in steps off what is sold and by its length off what is owned', () => {
		// 1500 pulled in steps of 250 at 5.00; 1400 of it are used.
		expect(made().order.lines.filter((l) => l.group === 'cloth')).toEqual([
			{
				...{ group: 'cloth', id: 'sold', what: 'Felt', code: 'R-1', unit: 'step', pack: mm(250) },
				...{ need: { number: 1.4, unit: 'm' }, rack: { number: 0, unit: 'm' } },
				...{ fromRack: { number: 0, unit: 'm' }, buy: 6, each: 5_00, total: 30_00, more: '' },
				...{ supplier: '', priced: '' },
				...{ spare: { number: expect.closeTo(0.1, 9) as number, unit: 'm' } },
				...{ sparePercent: 0, for: [] },
			},
			{
				...{ group: 'cloth', id: 'left', what: 'Felt', code: '', unit: 'step', pack: mm(100) },
				...{ need: { number: 0.6, unit: 'm' }, rack: { number: 3, unit: 'm' } },
				...{ fromRack: { number: 0.6, unit: 'm' }, buy: 0, each: 3_00, total: 0, more: '' },
				...{ supplier: '', priced: '' },
				...{ spare: { number: 0, unit: 'm' }, sparePercent: 0, for: [] },
			},
		]);
	});

	it('adds up: 240 + 10 + 30 + 12, and nothing is missing', () => {
		// 5 m2 and a tenth, 4 on the rack: 1.5 m2 out of a pot of 4.
		expect(lineOf('glue')).toMatchObject({ buy: 1, total: 12_00, fromRack: { number: 4 } });
		expect(lineOf('glue')?.spare.number).toBeCloseTo(2.5, 9);
		const { order, problems } = made();
		expect(order.total).toBe(292_00);
		expect(problems).toEqual([]);
	});
});

describe('what has to be bought without a price', () => {
	/** The worked job with other prices of some of its sheets and rolls. */
	const told = (prices: Readonly<Record<string, number>>) => {
		const priced = <T extends { id: string; price: Money }>(list: readonly T[]): T[] =>
			list.map((s) => ({ ...s, price: money(prices[s.id] ?? s.price) }));
		const { stock } = JOB;
		const rack = { ...stock, sheets: priced(stock.sheets), rolls: priced(stock.rolls) };
		return estimate({ ...JOB, stock: rack }, WORK).problems;
	};

	it('is named with its place: the fourth sheet, the first roll', () => {
		expect(told({ 'mdf-1': 0, half: 0 })).toEqual([
			{
				path: ['stock', 'sheets', 3, 'price'],
				what: 'MDF (mdf-1) has to be bought but has no price, so the order and the quote are too low.',
				fix: 'Give its price.',
				kind: 'check',
			},
		]);
		expect(told({ sold: 0 })).toMatchObject([{ path: ['stock', 'rolls', 0, 'price'] }]);
	});

	it('is a note of what comes off the rack, of sundries too', () => {
		const off = 'Felt (left) comes off the rack but has no price: the quote counts nothing for it.';
		expect(told({ left: 0 })).toMatchObject([
			{ path: ['stock', 'rolls', 1, 'price'], what: off, kind: 'note' },
		]);
		const { stock } = JOB;
		const sundries = stock.sundries.map((s) => ({ ...s, price: money(0) }));
		expect(estimate({ ...JOB, stock: { ...stock, sundries } }, WORK).problems).toMatchObject([
			{ path: ['stock', 'sundries', 0, 'price'], kind: 'note' },
		]);
	});

	it('is no matter of what nothing is taken of, nor of the least coin', () => {
		expect(told({ half: 0 })).toEqual([]);
		expect(told({ 'mdf-1': 1 })).toEqual([]);
	});

	it('a step whose price is off by more than a hundredth of it, to the coin', () => {
		// 0.38 a metre is 0.095 a step of 250 mm, rounded to 0.10; 3.98 is 0.995, rounded to 1.00.
		expect(told({ sold: 38 })).toEqual([
			{
				path: ['stock', 'rolls', 0, 'step'],
				what: 'A step of Felt (sold) is so short that its price is rounded to EUR 0.10: 6 steps come to EUR 0.60, by the length they would be EUR 0.57.',
				fix: 'Give the steps the seller counts by, or longer ones.',
				kind: 'check',
			},
		]);
		expect(told({ sold: 3_98 })).toEqual([]);
	});
});

describe('what material is worth', () => {
	it('by area is the cheapest sheet that has a price', () => {
		const squareMetre = mm(1000) * mm(1000);
		expect(perArea(JOB, 'ply') * squareMetre).toBeCloseTo(30_00, 6);
		expect(perArea(JOB, 'mdf') * squareMetre).toBeCloseTo(10_00, 6);
		expect(perArea(JOB, 'oak')).toBe(0);
	});

	it('off the rack: a sheet at 80.00, 0.6 m of cloth at 30.00, a pot at 12.00', () => {
		expect(worthFromRack(JOB, made().order)).toBeCloseTo(80_00 + 18_00 + 12_00, 6);
	});

	it('in the work: areas placed, cloth by its share of the width, what is needed of a pot', () => {
		// 1.06 m2 of ply, 0.3 of MDF; 0.5 m and 0.6 m of cloth; 5 m2 of pots of 4 m2.
		const worth = 31_80 + 3_00 + 10_00 + 18_00 + 15_00;
		expect(worthUsed(JOB, WORK.boards, WORK.cloths, made().order)).toBeCloseTo(worth, 6);
	});

	it('left over: offcuts off sheets bought and owned, none off offcuts or cut before', () => {
		// 0.3 + 0.2 + 0.06 m2 of ply and 0.01 of MDF.
		expect(worthOfOffcuts(JOB, WORK.boards)).toBeCloseTo(16_80 + 10, 6);
	});
});

describe('the work', () => {
	it('is counted kind by kind', () => {
		const { quote } = made();
		const counted = quote.labour.map((l) => [l.what, l.amount, l.unit, l.minutes, l.cost]);
		const about = (n: number) => expect.closeTo(n, 9) as number;
		expect(counted).toEqual([
			// One sheet with its cut of 1 m is cut already: the job has taken it all the same.
			['Sheets handled', 5, 'sheets', 10, 10_00],
			['Saw cuts', 7, 'cuts', 21, 21_00],
			// 2 + 2 + 0.5 + 0.4, 1, 0.3 and 1 m.
			['Length of saw cut', about(7.2), 'm', about(36), 36_00],
			['Fence settings', 5, 'settings', 35, 35_00],
			['Parts marked and eased', 6, 'parts', 222, 222_00],
			['Routed edges', 3.25, 'm', 35.75, 35_75],
			['Foam bonded', 0.1, 'm2', about(1.3), 1_30],
			['Cloth bonded', 1.2, 'm2', about(15.6), 15_60],
			['Seams cut', 2.5, 'm', 42.5, 42_50],
			['Wrapped corners', 12, 'corners', 228, 228_00],
			['Relief cuts', 20, 'cuts', 460, 460_00],
			// A pair, and two of one.
			['Panels put together', 4, 'panels', 116, 116_00],
			['Boxes put together', 3, 'boxes', 93, 93_00],
			['Wiring', 2, 'h', 120, 160_00],
			['Fitting', 0.5, 'h', 30, 30_00],
		]);
		expect(quote.labourCost).toBe(1506_15);
		const left = quote.left.labour.map((l) => [l.what, l.amount, l.cost]);
		expect(left.slice(0, 4)).toEqual([
			...[
				['Sheets handled', 4, 8_00],
				['Saw cuts', 6, 18_00],
			],
			...[
				['Length of saw cut', about(6.2), 31_00],
				['Fence settings', 4, 28_00],
			],
		]);
		expect(quote.left.labourCost).toBe(1506_15 - 2_00 - 3_00 - 5_00 - 7_00);
	});

	it('has no line for what there is nothing of', () => {
		const none = {
			parts: [],
			blanks: [],
			seamLength: ticks(0),
			reels: [],
			cloths: [],
			boards: [],
			boxes: 0,
			panels: 0,
		};
		expect(labourLines({ ...JOB, work: [] }, none)).toEqual([]);
	});
});

describe('the quote', () => {
	it('rounds each figure once and adds up', () => {
		const { quote } = made();
		expect(quote).toMatchObject({
			// The sheet that is cut already is one of the three at the least; 1 m2 of it is in the
			// work and 0.25 m2 is left over.
			...{ bought: 292_00, fromRack: 110_00, used: 107_80, credit: 24_40 },
			// 377.60 of material, 1506.15 of labour, a fifth of that.
			...{ overhead: 301_23, cost: 2184_98 },
			...{ materialMarkup: 37_76, profit: 546_25, net: 2768_99 },
			// 377.60 and a quarter, 472.00, and the markup.
			...{ taxed: 509_76, tax: 101_95, total: 2870_94 },
			left: { bought: 292_00, fromRack: 110_00 },
		});
		expect(quote.markup).toBeCloseTo((100 * 584_01) / 2184_98, 9);
		expect(quote.margin).toBeCloseTo((100 * 584_01) / 2768_99, 9);
	});

	it('is of nothing where nothing is made, and divides by nothing', () => {
		const none = {
			boxes: [],
			panels: [],
			parts: [],
			blanks: [],
			boards: [],
			cloths: [],
			reels: [],
			runs: [],
		};
		const empty = { ...JOB, work: [], boxes: [], panels: [] };
		const { quote } = estimate(empty, { ...none, needs: [], seamLength: ticks(0) });
		const zero = { bought: 0, fromRack: 0, used: 0, credit: 0, labourCost: 0, overhead: 0 };
		expect(quote).toEqual({
			...{ ...zero, cost: 0, materialMarkup: 0, profit: 0, markup: 0, margin: 0 },
			...{ net: 0, taxed: 0, tax: 0, total: 0, labour: [], lines: [], spoil: NO_SPOIL },
			booked: 0,
			left: { bought: 0, fromRack: 0, labour: [], labourCost: 0 },
		});
	});

	it('credits no offcuts unless it is asked to, and earns a margin of the price', () => {
		const profit = { by: 'margin' as const, percent: 20 };
		const shop = { ...JOB.shop, creditOffcuts: false, profit };
		const { quote } = estimate({ ...JOB, shop }, WORK);
		// 402.00, 1506.15 and 301.23; a fifth of the price is a quarter of the cost.
		expect(quote).toMatchObject({ credit: 0, cost: 2209_38, profit: 552_35 });
	});

	it('goes whole to the first line where nothing weighs', () => {
		expect(shareOut(money(100), [0, 0])).toEqual([100, 0]);
		expect(shareOut(money(90), [0.2, 0.1])).toEqual([60, 30]);
	});

	it('weighs what the customer gets by its boards, cloth and time', () => {
		const about = (n: number) => expect.closeTo(n, 6) as number;
		expect(items(JOB, WORK)).toEqual([
			// Two parts of 0.2 m2, two blanks of half a metre and half a square metre bonded, two
			// times half an hour.
			{ what: 'Bench box (2)', weight: about(2 * 43_00 + 2 * 16_50 + 62_00) },
			{ what: 'Small box', weight: about(31_00) },
			// 0.3 m2; 0.2 m of cloth and 0.3 m2 bonded with the foam; the cloth of no roll.
			{ what: 'Door panel', weight: about(40_00 + 7_90 + 29_00) },
			{ what: 'Parts cut to the list', weight: about(3 * 37_60) },
			{ what: 'Wiring', weight: about(160_00) },
			{ what: 'Fitting', weight: about(30_00) },
		]);
		expect(made().quote.lines.map((l) => l.what)).toEqual(items(JOB, WORK).map((i) => i.what));
	});

	it('has no line for loose parts where there are none', () => {
		const parts = WORK.parts.slice(0, 2);
		const named = items(JOB, { ...WORK, parts }).map((i) => i.what);
		expect(named).not.toContain('Parts cut to the list');
	});

	it('counts one of a box that the job has no more', () => {
		const boxes = WORK.boxes.slice(0, 1).map((b) => ({ ...b, id: 'gone' }));
		const gone = items(JOB, { ...WORK, boxes });
		expect(gone[0]).toEqual({ what: 'Bench box', weight: 31_00 });
	});
});
