import { describe, expect, it } from 'vitest';
import { timesOf } from '../../src/lib/estimate/after-work';
import type { Plan } from '../../src/lib/plan';
import { costLines } from '../../src/lib/print/wording/cost-lines';
import { sinceSent } from '../../src/lib/print/wording/quote-figures';
import { wordsOn } from '../print/words-on';
import { played } from './played';

/* Every figure below was worked with pencil and paper from the sizes and rates in `played.ts`. */

const was = await played();

const labour = ({ quote }: Plan) => quote.labour.map((l) => [l.what, l.cost]);
const sums = ({ quote }: Plan) => [quote.cost, quote.net, quote.tax, quote.total];

describe('the first job, quoted', () => {
	const { quoted } = was;

	it('orders a sheet of MDF, a step of felt, a pack of adhesive; plywood is on the rack', () => {
		// Felt: the cover's board is 400 - 2 x 2.5 by 295, its blank 44 more on each side (board
		// 12, groove 12 off and 5 deep, 15 to hold): 383 along the roll, a step of 500 at 20.00 a
		// metre.
		expect(quoted.order.lines.map((l) => [l.what, l.fromRack.number, l.buy, l.total])).toEqual([
			['MDF', 0, 1, 12_00],
			['Plywood', 1, 0, 0],
			['Felt', 0, 1, 10_00],
			['Contact adhesive', 0, 1, 6_00],
		]);
		expect(quoted.order.total).toBe(28_00);
	});

	it('counts the work', () => {
		expect(labour(quoted)).toEqual([
			['Sheets handled', 12_00], // 2 of 6
			['Saw cuts', 12_00], // 4 in plywood, 2 in MDF, of 2
			['Length of saw cut', 3_48], // 0.804 + 0.804 + 0.8 + 0.38, 0.4 + 0.295 m
			['Fence settings', 18_00],
			['Parts marked and eased', 20_00],
			['Routed edges', 0], // counted, at no minutes
			['Cloth bonded', 3_13], // 0.395 x 0.295 and 1.38 m of edge by 29 mm, 20 minutes each m2
			['Wrapped corners', 16_00],
			['Panels put together', 30_00],
		]);
	});

	it('comes to 329.41', () => {
		// 28.00 bought and 48.00 off the rack, 114.61 of work, a fifth of that.
		expect(quoted.quote).toMatchObject({ bought: 28_00, fromRack: 48_00, overhead: 22_92 });
		// 76.00 / 10 of markup, 213.53 / 4 of profit, a fifth of tax.
		expect(quoted.quote).toMatchObject({ materialMarkup: 7_60, profit: 53_38 });
		expect(sums(quoted)).toEqual([213_53, 274_51, 54_90, 329_41]);
		// Weights: 5.83 + 5 + 3.70 + 3.13 + 30, and 37.39 + 15.
		expect(quoted.quote.lines.map((l) => l.price)).toEqual([130_76, 143_75]);
	});

	it('in oak 38.88 more: 24.00, a tenth and a quarter of it, a fifth of that', () => {
		expect(quoted.options).toMatchObject([{ difference: 38_88, total: 368_29, bought: 72_00 }]);
	});
});

describe('cut, pulled and glued', () => {
	const { cut, glued, unglued } = was;

	it('costs what it did, and nothing is left to order', () => {
		expect(sums(cut.plan)).toEqual(sums(was.quoted));
		expect(sinceSent(cut.plan)).toEqual([]);
		expect(cut.plan.order.total).toBe(0);
		// Work at the saw is done: 12.00 + 12.00 + 3.48 + 18.00.
		expect(cut.plan.quote.left).toMatchObject({ bought: 0, fromRack: 0, labourCost: 69_13 });
		expect(cut.plan.quote.booked).toBe(76_00);
	});

	it('leaves two offcuts and what is left in the pack', () => {
		// 2 x 0.156545 m2 of adhesive, 0.313 of a pack.
		expect(cut.rack).toEqual({ s: 0, o: 0, m: 0, '101-R1': 1, '101-R2': 1, g: 0.687 });
	});

	it('and the adhesive taken back is to be bought again, at the same price of it all', () => {
		expect(glued).toBe('adhesive used');
		expect(unglued.rack).toEqual({ ...cut.rack, g: 0 });
		expect(unglued.plan.order.total).toBe(6_00);
		expect(sums(unglued.plan)).toEqual(sums(was.quoted));
	});
});

describe('the shelf, spoiled', () => {
	const { ways, spoilt, again } = was;

	it('is cheapest out of the offcut, a new sheet said beside it', () => {
		// 6 + 2 + 0.38 + 3 + 5 of work and a fifth of it, or 48.00 and 6 + 4 + 1.11 + 6 + 5.
		const said = ways.map(({ by, plan: { quote } }) => [by, quote.spoil]);
		const offcut = { pieces: 1, material: 0, labour: 16_38, overhead: 3_28, cost: 19_66 };
		const buy = { pieces: 1, material: 48_00, labour: 22_11, overhead: 4_42, cost: 74_53 };
		expect(said).toMatchObject([
			['offcut', offcut],
			['planned', offcut],
			['buy', buy],
		]);
		expect(ways.map((w) => w.plan.order.total)).toEqual([0, 0, 48_00]);
	});

	it.each([
		['before it is cut again', spoilt],
		['and after', again],
	])('costs the shop 19.66 and the customer nothing, %s', (_, { plan }) => {
		// 0.38 x 0.3 m of a sheet of 1.204 x 0.804 at 48.00 is lost.
		expect(plan.quote.spoil).toMatchObject({ lost: 5_65, cost: 19_66 });
		expect(sums(plan)).toEqual(sums(was.quoted));
	});

	it('is in no estimate of the hours', () => {
		expect(timesOf(again.plan)).toEqual(timesOf(was.quoted));
		expect(timesOf(again.plan)[0]).toMatchObject({ what: 'Sheets handled', estimated: 12 });
	});

	it('takes its offcut, of which a strip of 196 stays', () => {
		expect(again.rack).toEqual({ s: 0, o: 0, m: 0, '101-R1': 1, '101-R3': 1, g: 0.687 });
	});
});

describe('the shelf, to be 390 now', () => {
	const { mind, done, took, card } = was;

	it('takes a new sheet, and the customer 108.57 more, told before and the same after', () => {
		expect(mind.plan.order.total).toBe(48_00);
		for (const { plan } of [mind, done]) {
			// 124.00; 131.72 with 6 + 4 + 1.11 + 6 more; 26.34. 12.40 and 70.52 earned.
			expect(sums(plan)).toEqual([282_06, 364_98, 73_00, 437_98]);
			expect(plan.quote.spoil.cost).toBe(19_66);
		}
		expect(sinceSent(done.plan).at(-1)).toEqual({ what: 'Total', sent: 329_41, now: 437_98 });
		expect(done.rack).toEqual({ ...mind.rack, '101-R4': 1, '101-R5': 1 });
	});

	it('is held against the estimate: three sheets of plywood, one piece spoiled', () => {
		expect(took.map((m) => [m.what, m.estimated, m.taken])).toEqual([
			['MDF', 1, 1],
			['Plywood', 2, 3],
			['Plywood: spoiled', 0, 1],
			['Felt', 0.5, 0.5],
			['Contact adhesive', 0.313, 0.313],
		]);
	});

	it('is handed over with what holds the cover, its mass, and the lot of its felt', () => {
		const words = card.flatMap((leaf) => leaf.blocks.flatMap((b) => wordsOn(b.marks)));
		// 335 by 235 between fixings 150 apart at most: 3 + 2 + 3 + 2. 0.395 x 0.295 x 0.012 m of
		// 700 kg/m3 and 0.08 kg of felt.
		expect(words).toEqual(expect.arrayContaining(['Cover', '10 clips', '1.1 kg with cloth', 'L7']));
	});
});

describe('the second job', () => {
	const { done, second, secondDone, together, taken } = was;

	it('is made of an offcut of the first, and bears the work alone', () => {
		expect(second.rack).toEqual(done.rack);
		expect(second.plan.order.lines.map((l) => [l.what, l.fromRack.number])).toEqual([
			['Plywood, offcuts', 1],
		]);
		// 6 + 4 x 2 + 2.088 m + 4 x 3 + 2 x 5, a fifth, a quarter, a fifth of tax.
		expect(second.plan.quote).toMatchObject({ labourCost: 38_09, overhead: 7_62 });
		expect(sums(second.plan)).toEqual([45_71, 57_14, 11_43, 68_57]);
		expect(sums(secondDone.plan)).toEqual(sums(second.plan));
		// 0.79 x 0.3 and 0.38 x 0.18 m of it, that the first job paid for.
		expect(costLines(second.plan)[0]).toEqual({
			...{ label: 'offcuts that an earlier job paid for, in the work itself', amount: 15_14 },
			as: 'aside',
		});
	});

	it('is seen by the first, and tells when that takes its sheet back', () => {
		const [gone, ...come] = ['101-R4', '102-R1', '102-R2'];
		const rest = Object.entries(done.rack).filter(([id]) => id !== gone);
		const one = Object.fromEntries([...rest, ...come.map((id) => [id, 1])]) as typeof done.rack;
		expect(together).toEqual({ one, lost: [] });
		expect(taken.back).toMatch(/^sheet cut\. Offcut “101-R4” has been booked by “Tray” since/);
		expect(taken.lost).toEqual([expect.stringMatching(/^Offcut “101-R4”, booked by “Tray”/)]);
		expect(Object.values(taken.rack).every((n) => n >= 0)).toBe(true);
	});
});
