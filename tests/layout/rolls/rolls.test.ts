import { describe, expect, it } from 'vitest';
import { job as schema, type JobFile } from '../../../src/lib/job/job';
import { layCloth } from '../../../src/lib/layout/rolls/lay-cloth';
import { rectangle } from '../../../src/lib/geometry/shaping/tidy';
import { inches, mm, ticks, toMm, type Length } from '../../../src/lib/measure/length';
import type { Blank } from '../../../src/lib/wrap/blank';
import { wrapCovering } from '../../../src/lib/wrap/wrap-panel';
import { carpet, covering, SHOP } from '../../wrap/make';
import { clothBlank as blank } from './make';

const BUDGET = { seed: 1, effort: 500 };

type RollFile = NonNullable<NonNullable<JobFile['stock']>['rolls']>[number];
type ClothFile = NonNullable<NonNullable<JobFile['stock']>['cloths']>[number];

function lay(blanks: readonly Blank[], rolls: RollFile[], cloth: Partial<ClothFile> = {}) {
	const job = schema.parse({
		stock: {
			cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 2, nap: 'one-way', ...cloth }],
			rolls,
		},
	});
	return layCloth(job, job.stock.cloths[0]!, blanks, BUDGET, () => true);
}

const roll = (id: string, extra: Partial<RollFile> = {}): RollFile => ({
	id,
	cloth: 'felt',
	width: 1500,
	usable: 1400,
	price: 10,
	...extra,
});

describe('cloth on its rolls', () => {
	it('40 in roll, three blanks of 38 x 19 in: 76 in with the nap, 57 in without (worked example, arithmetic checked)', async () => {
		const blanks = [blank('a', inches(38), inches(19), { count: 3 })];
		const forty: RollFile = {
			id: 'r',
			cloth: 'felt',
			width: '40 in',
			usable: '40 in',
			step: '9 in',
		};
		const laid = await lay(blanks, [forty]);
		expect(laid.rolls[0]!.answer.length).toBe(inches(76));
		expect(laid.rolls[0]!.napless).toBe(inches(57));
		expect(laid.rolls[0]!.pull).toBe(inches(81)); // 2.25 yd in quarter yards
	});

	it('uses a remnant on the rack before it buys', async () => {
		const laid = await lay(
			[blank('a', mm(500), mm(700)), blank('b', mm(900), mm(700))],
			[roll('new'), roll('rest', { left: 600, lot: 'N-1' })],
		);
		expect(laid.rolls.map((r) => [r.roll, r.answer.placed.map((p) => p.id)])).toEqual([
			['rest', ['a']],
			['new', ['b']],
		]);
		expect(laid.rolls[0]).toMatchObject({ owned: true, pull: mm(500) });
	});

	it('keeps blanks of one lot on one roll, even when the remnant could take one of them', async () => {
		const laid = await lay(
			[
				blank('a', mm(500), mm(700), { lot: 'boot' }),
				blank('b', mm(900), mm(700), { lot: 'boot' }),
			],
			[roll('new'), roll('rest', { left: 600 })],
		);
		expect(laid.rolls.map((r) => r.roll)).toEqual(['new']);
	});

	it('takes the roll that makes the pull cheapest', async () => {
		const wide = roll('wide', { width: 1900, usable: 1850, price: 12 });
		const laid = await lay([blank('a', mm(800), mm(900), { count: 2 })], [roll('narrow'), wide]);
		expect(laid.rolls.map((r) => r.roll)).toEqual(['wide']); // 0.8 m at 12 beats 1.6 m at 10
	});

	it('starts blanks on whole repeats of the pattern', async () => {
		const laid = await lay([blank('a', mm(500), mm(1000), { count: 3 })], [roll('r')], {
			repeat: 300,
		});
		const starts = laid.rolls[0]!.answer.placed.map((p) => p.x % mm(300));
		expect(starts).toEqual([0, 0, 0]);
		// 500 takes two repeats of 300, twice, and 500
		expect(laid.rolls[0]!.answer.length).toBe(mm(1700));
	});

	it('keeps a repeat of a remnant free, because the pattern may start anywhere in it', async () => {
		const rest = roll('rest', { left: 790 });
		const one = [blank('a', mm(500), mm(1000))];
		const plain = await lay(one, [roll('new'), rest]);
		expect(plain.rolls[0]).toMatchObject({ roll: 'rest', pull: mm(500) });
		const patterned = await lay(one, [roll('new'), rest], { repeat: 300 });
		expect(patterned.rolls[0]).toMatchObject({ roll: 'new', pull: mm(800), lead: mm(300) });
	});

	it('never turns a patterned cloth a quarter, nap or not', async () => {
		const tall = [blank('a', mm(900), mm(300), { count: 2 })];
		const turns = async (cloth: Partial<ClothFile>) =>
			(await lay(tall, [roll('r')], { nap: 'none', ...cloth })).rolls[0]!.problem.pieces[0]!.turns;
		expect(await turns({})).toContain(90);
		expect(await turns({ repeat: 300 })).toEqual([0, 180]);
		expect(await turns({ repeatAcross: 300 })).toEqual([0, 180]);
	});

	it('goes on with the pattern across the seam of a cloth that is cut in parts', async () => {
		const wide = covering({ outline: rectangle(0, 0, mm(900), mm(1700)) });
		const cloth = { nap: 'one-way', repeat: 240, repeatAcross: 350, halfDrop: true } as const;
		const shop = { ...SHOP, usable: mm(1400) };
		const { blanks } = wrapCovering(wide, carpet(cloth), shop, ['panels', 0]);
		expect(blanks).toHaveLength(2);
		// The seam lies where the second part starts a column of the pattern, half of the overlap
		// counted.
		expect(blanks.map((b) => toMm(b.partAt!.y) % 350)).toEqual([0, 0]);
		const laid = await lay(blanks, [roll('r')], cloth);
		expect(laid.unplaced).toEqual([]);
		const [a, b] = blanks.map((x) => laid.rolls[0]!.answer.placed.find((p) => p.id === x.id)!);
		const columns = toMm(b!.y - a!.y - (blanks[1]!.partAt!.y - blanks[0]!.partAt!.y)) / 350;
		expect(Number.isInteger(columns)).toBe(true);
		const along = toMm(b!.x - a!.x) - (columns % 2 === 0 ? 0 : 120);
		expect(Math.abs(along % 240)).toBe(0);
		expect(laid.rolls[0]!.faults).toEqual([]);
	});

	it('says what is on no roll, and why', async () => {
		const none = await lay([blank('a', mm(500), mm(700))], []);
		expect(none.unplaced).toEqual([{ id: 'a', count: 1, why: 'The stock lists no roll of Felt.' }]);
		const short = await lay([blank('a', mm(500), mm(700))], [roll('rest', { left: 400 })]);
		expect(short.unplaced[0]?.why).toContain('too short');
		const wide = await lay([blank('a', mm(500), mm(1600))], [roll('r')]);
		expect(wide.unplaced).toHaveLength(1);
		expect(wide.rolls.flatMap((r) => r.answer.placed)).toEqual([]);
	});

	it('pulls nothing for no blanks', async () => {
		const laid = await lay([], [roll('r')]);
		expect(laid.rolls.every((r) => r.pull === ticks(0))).toBe(true);
	});
});

describe('the pull off a patterned roll', () => {
	/** Drops of the full width, inches, sold by the tenth of an inch. */
	const drops = async (
		count: number,
		long: number,
		repeat: number,
		extra: Partial<RollFile> = {},
	) => {
		const laid = await lay(
			[blank('a', inches(long), mm(1300), { count })],
			[roll('r', { step: '0.1in', ...extra })],
			{ repeat: `${repeat}in` },
		);
		const { pull, lead, pattern } = laid.rolls[0]!;
		const inch = (l: Length) => Math.round((toMm(l) / 25.4) * 1000) / 1000;
		return { pull: inch(pull), lead: inch(lead ?? ticks(0)), other: inch(pattern!.other) };
	};
	const whole = { cuts: 'whole' } as const;
	const atStart = { begins: 'pattern' } as const;

	it('is the trade figure where the roll begins with the pattern and every cut is whole', async () => {
		expect(await drops(1, 118, 13, { ...whole, ...atStart })).toEqual({
			pull: 130,
			lead: 0,
			other: 118,
		});
		expect((await drops(3, 118, 13, { ...whole, ...atStart })).pull).toBe(390);
		expect((await drops(2, 114, 4.5, { ...whole, ...atStart })).pull).toBe(234);
	});

	it('takes one repeat more where the roll begins anywhere', async () => {
		expect(await drops(2, 114, 4.5, whole)).toEqual({ pull: 238.5, lead: 4.5, other: 235.5 });
		expect((await drops(1, 118, 13, whole)).pull).toBe(143);
	});

	it('is as counted in a job that does not say', async () => {
		expect(await drops(1, 118, 13)).toEqual({ pull: 131, lead: 13, other: 143 });
		expect(await drops(3, 118, 13)).toEqual({ pull: 391, lead: 13, other: 403 });
		expect(await drops(2, 114, 4.5)).toEqual({ pull: 235.5, lead: 4.5, other: 238.5 });
	});

	it('has no way to name on a plain cloth, whatever its roll says', async () => {
		const one = [blank('a', mm(500), mm(1000))];
		const [plain] = (await lay(one, [roll('r', { ...whole, ...atStart })])).rolls;
		expect(plain).toMatchObject({ pull: mm(500) });
		expect(plain).not.toHaveProperty('pattern');
		expect(plain).not.toHaveProperty('lead');
	});

	it('comes off a remnant only as far as its whole repeats reach', async () => {
		const one = [blank('a', mm(500), mm(1000))];
		const from = async (left: number, extra: Partial<RollFile>) =>
			(await lay(one, [roll('new'), roll('rest', { left, ...extra })], { repeat: 300 })).rolls[0]!
				.roll;
		expect(await from(599, { ...whole, ...atStart })).toBe('new');
		expect(await from(600, { ...whole, ...atStart })).toBe('rest');
		expect(await from(500, atStart)).toBe('rest');
		expect(await from(899, whole)).toBe('new');
		expect(await from(900, whole)).toBe('rest');
	});
});
