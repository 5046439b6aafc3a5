import { describe, expect, it } from 'vitest';
import { countedUses, sundryBooking } from '../../../src/lib/estimate/after-work/sundry-booking';
import type { JobFile } from '../../../src/lib/job/job';
import { bookedIn } from '../../../src/lib/layout/booked';
import { pullBooking } from '../../../src/lib/layout/rolls/pull-booking';
import { plan, type Plan } from '../../../src/lib/plan';

const QUICK = { effort: 100 };
/** One panel of 400 x 300 wrapped in felt: its blank is longer and wider by what turns in. */
const fileOf = (roll: object, sundries: object[] = []): JobFile =>
	({
		number: '0142',
		stock: {
			materials: [{ id: 'ply', name: 'Plywood', nominal: 9, measured: 9 }],
			sheets: [{ id: 's', material: 'ply', length: 1000, width: 1000, price: 20 }],
			cloths: [{ id: 'felt', name: 'Felt', loose: 4, pressed: 3, nap: 'none' }],
			rolls: [
				{ id: 'K', cloth: 'felt', width: 1400, usable: 1370, price: 10, step: 1000, ...roll },
			],
			sundries,
		},
		panels: [
			{
				...{ id: 'p', name: 'Panel', material: 'ply' },
				opening: { kind: 'rectangle', length: 400, width: 300 },
				cloth: 'felt',
			},
		],
	}) as unknown as JobFile;

const pull = (file: JobFile, made: Plan, lot = '', blanks: Plan['blanks'] = []) => {
	const [{ cloth, rolls } = { cloth: '', rolls: [] }] = made.cloths;
	return pullBooking(file, made.job, { cloth, layout: rolls[0]!, lot, blanks });
};
const booked = (file: JobFile, made: Plan, lot = ''): JobFile => bookedIn(pull(file, made, lot)!);
const stops = ({ problems }: Plan) => problems.filter((p) => p.kind !== 'note');

describe('cloth that is pulled', () => {
	it('off an owned roll leaves what it does not take, with its lot, and is planned no more', async () => {
		const file = fileOf({ left: 5000, lot: '7' });
		const before = await plan(file, QUICK);
		const [layout] = before.cloths[0]!.rolls;
		const used = layout!.pull / 1600;
		expect(used).toBeGreaterThan(300);
		const after = booked(file, before, 'typed');
		expect(after.stock?.rolls?.[0]).toMatchObject({ id: 'K', left: 5000 - used, lot: '7' });
		const then = await plan(after, QUICK);
		expect(stops(then)).toEqual([]);
		expect(then.cloths[0]!.rolls).toMatchObject([{ pulled: { lot: '7' }, pull: layout!.pull }]);
		expect(then.cloths[0]!.rolls[0]!.answer.placed).toEqual(layout!.answer.placed);
		expect(before.order.lines.some((l) => l.group === 'cloth')).toBe(true);
		expect(then.order.lines.some((l) => l.group === 'cloth')).toBe(false);
		expect(pull(after, then)).toBeNull();
	});

	it('off an owned roll to its end takes the roll off the rack', async () => {
		const plenty = fileOf({ left: 5000 });
		const used = (await plan(plenty, QUICK)).cloths[0]!.rolls[0]!.pull / 1600;
		const file = fileOf({ left: used });
		const after = booked(file, await plan(file, QUICK));
		expect(after.stock?.rolls).toEqual([]);
		expect(stops(await plan(after, QUICK))).toEqual([]);
	});

	it('and bought leaves a remnant with the lot that was typed, worth keeping', async () => {
		const file = fileOf({});
		const made = await plan(file, QUICK);
		const used = made.cloths[0]!.rolls[0]!.answer.length / 1600;
		const after = booked(file, made, ' 88 ');
		expect(after.stock?.rolls).toHaveLength(2);
		expect(after.stock?.rolls?.[1]).toMatchObject({
			...{ id: '0142-C1', cloth: 'felt', usable: 1370, lot: '88', left: 1000 - used },
		});
		expect(after.pulled).toMatchObject([{ roll: 'K', owned: false, lot: '88' }]);
	});

	it('and bought leaves nothing where what is over is too short to keep', async () => {
		const file = fileOf({ step: 100 });
		expect(booked(file, await plan(file, QUICK)).stock?.rolls).toHaveLength(1);
	});

	it('shorter than its longest blank gives nothing, and is said', async () => {
		const made = await plan(fileOf({ left: 200 }), QUICK);
		expect(made.cloths[0]!.rolls).toEqual([]);
		expect(made.problems.map((p) => p.what).join()).toContain('on the rack are too short');
	});

	it('with a blank that is another size since is told', async () => {
		const file = fileOf({ left: 5000 });
		const after = booked(file, await plan(file, QUICK));
		const [panel] = after.panels ?? [];
		const wider = { ...panel, opening: { kind: 'rectangle', length: 450, width: 300 } };
		const then = await plan({ ...after, panels: [wider] }, QUICK);
		expect(stops(then).map((p) => p.what)).toEqual([
			expect.stringMatching(/^Cloth that is pulled holds .* at another size than it has now\.$/),
		]);
	});

	it('with a blank of the same size and another cut since is told, and of nothing else', async () => {
		const file = fileOf({ left: 5000 });
		const before = await plan(file, QUICK);
		const after = bookedIn(pull(file, before, '', before.blanks)!);
		const [panel] = after.panels ?? [];
		const said = async (more: object) =>
			stops(await plan({ ...after, panels: [{ ...panel!, ...more }] }, QUICK))
				.filter((p) => p.path[0] === 'pulled')
				.map((p) => /at another (.*) than it has now/.exec(p.what)?.[1]);
		expect(await said({})).toEqual([]);
		const at = (length: number) => ({
			shape: { kind: 'rectangle', length, width: 50 },
			x: 90,
			y: 90,
		});
		const window = { id: 'w', name: 'W', end: 'bare', clearance: 0 };
		expect(await said({ windows: [{ ...window, outline: at(60) }] })).toEqual(['windows or holes']);
		const wrapped = { id: 'w', name: 'W', outline: at(60) };
		expect(await said({ windows: [wrapped] })).toEqual([
			'notches or slits, another windows or holes, another fold lines',
		]);
		const seams = [{ from: { x: 200, y: -10 }, to: { x: 200, y: 420 } }];
		// The blank is no more: two parts of it are in its place.
		expect(await said({ seams })).toEqual([undefined]);
	});

	it('before blanks were kept as they were cut tells of their size alone', async () => {
		const file = fileOf({ left: 5000 });
		const after = booked(file, await plan(file, QUICK));
		const [cloth] = after.pulled ?? [];
		expect(cloth?.made).toEqual([]);
		const [panel] = after.panels ?? [];
		const outline = { shape: { kind: 'rectangle', length: 60, width: 50 }, x: 90, y: 90 };
		const windows = [{ id: 'w', name: 'W', end: 'bare', clearance: 0, outline }];
		const then = await plan({ ...after, panels: [{ ...panel, windows }] }, QUICK);
		expect(stops(then)).toEqual([]);
	});

	it('to the end of its roll is priced by that roll, whatever another of the cloth costs', async () => {
		const bare = fileOf({ left: 5000 });
		const used = (await plan(bare, QUICK)).cloths[0]!.rolls[0]!.pull / 1600;
		const other = { id: 'X', cloth: 'felt', width: 1400, usable: 1370, price: 90, left: 9000 };
		for (const [others, price] of [
			[[other], 10],
			[[], 10],
			[[other], 0],
		] as const) {
			const [roll] = bare.stock!.rolls!;
			const rolls = [{ ...roll!, left: used, price }, ...others];
			const file = { ...bare, stock: { ...bare.stock, rolls } };
			const before = await plan(file, QUICK);
			const after = booked(file, before);
			expect(after.stock?.rolls?.map((r) => r.id)).toEqual(others.map((r) => r.id));
			const then = await plan(after, QUICK);
			const told = then.problems.filter((p) => p.path.join('.') === 'pulled.0.roll');
			if (price > 0) {
				expect(then.quote.total).toBe(before.quote.total);
				expect(told).toEqual([]);
				expect(before.quote.fromRack).toBe(Math.round(used));
			} else expect(told[0]?.what).toContain('the quote takes the price of "X" for it');
		}
	});
});

describe('stock that is negative', () => {
	it.each([
		['sheets', 0, 'owned'],
		['rolls', 0, 'left'],
		['sundries', 0, 'owned'],
	] as const)('in %s is said where it stands', async (list, i, field) => {
		const glue = { id: 'G', name: 'Glue', kind: 'contact-adhesive', pack: 5, price: 8, owned: 1 };
		const file = fileOf({ left: 5000 }, [glue]);
		const lines = (file.stock?.[list] ?? []) as object[];
		const bad = { ...file, stock: { ...file.stock, [list]: [{ ...lines[0], [field]: -1 }] } };
		const made = await plan(bad, QUICK);
		const said = made.problems.filter((p) => p.path.join('.') === `stock.${list}.${i}.${field}`);
		expect(said).toHaveLength(1);
	});
});

describe('sundries that are used', () => {
	const GLUE = { id: 'G', name: 'Glue', kind: 'contact-adhesive', pack: 5, price: 8, owned: 0.5 };

	it('are counted in packs and shares of them, and go off rack and order', async () => {
		const file = fileOf({ left: 5000 }, [GLUE]);
		const made = await plan(file, QUICK);
		const line = made.order.lines.find((l) => l.id === 'G')!;
		const [use] = countedUses(made.order.lines);
		expect(use).toMatchObject({ id: 'G', name: 'Glue', bought: line.buy });
		expect(use!.packs).toBeCloseTo(line.need.number / 5, 3);
		const after = bookedIn(sundryBooking(file, [{ ...use!, packs: 0.2, bought: 0 }])!);
		expect(after.stock?.sundries?.[0]).toMatchObject({ owned: 0.3 });
		const then = await plan(after, QUICK);
		expect(then.order.lines.filter((l) => l.group === 'sundries')).toEqual([]);
		expect(stops(then)).toEqual([]);
	});

	it('once, and needed more since: what came to it is ordered, and no more', async () => {
		const file = fileOf({ left: 5000 }, [{ ...GLUE, owned: 0, use: 1 }]);
		const first = await plan(file, QUICK);
		const [use] = countedUses(first.order.lines);
		const after = bookedIn(sundryBooking(file, [{ ...use!, packs: 0.1 }])!);
		const [glue] = after.stock?.sundries ?? [];
		const more = { ...after, stock: { ...after.stock, sundries: [{ ...glue!, use: 3 }] } };
		const lines = (await plan(more, QUICK)).order.lines.filter((l) => l.id === 'G');
		expect(lines.map((l) => l.need)).toEqual([{ number: expect.closeTo(10, 6), unit: 'm2' }]);
	});

	it('less than were bought are on the rack after it', () => {
		const file = fileOf({ left: 5000 }, [GLUE]);
		const use = { id: 'G', name: 'Glue', packs: 1.2, bought: 2, counted: 1.2 };
		expect(bookedIn(sundryBooking(file, [use])!).stock?.sundries?.[0]).toMatchObject({
			owned: 1.3,
		});
		expect(sundryBooking(file, [])).toBeNull();
	});
});
