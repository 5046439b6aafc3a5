import { describe, expect, it, vi } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import type { Taking } from '../../../src/lib/layout/booked';
import { Device, meet, shown } from './windows';

const rackOf = (left: unknown, owned: unknown = 2, sheets = 1) => ({
	version: 1,
	stock: {
		sheets: [{ id: 'S', material: 'ply', length: 800, width: 300, owned: sheets }],
		rolls: [{ id: 'K', cloth: 'felt', width: 1500, usable: 1400, left, lot: '7', per: 'metre' }],
		sundries: [{ id: 'G', name: 'Glue', kind: 'wood-glue', pack: 1, owned }],
	},
	shop: {},
});
const cloth = (amount: number): Taking => ({
	takes: { kind: 'roll', id: 'K', amount },
	yields: [],
});
const glue = (amount: number): Taking => ({
	takes: { kind: 'sundry', id: 'G', amount },
	yields: [],
});
const at = (time: number, work: () => void): void => {
	const clock = vi.spyOn(Date, 'now').mockReturnValue(time);
	work();
	clock.mockRestore();
};
const two = (rack: unknown): [Device, Device] => [new Device('One', rack), new Device('Two', rack)];

describe('a length off a roll', () => {
	it('leaves the rest on the roll, under its mark and lot', () => {
		const [one] = two(rackOf(5000));
		one.take([cloth(1200.5)]);
		expect(one.file.stock?.rolls).toEqual([{ ...rackOf(3799.5).stock.rolls[0] }]);
		one.hand.undo();
		expect(one.file.stock).toEqual(rackOf(5000).stock);
	});

	it('of a roll said in a text with its unit is taken off that', () => {
		const [one] = two(rackOf('2 yd'));
		one.take([cloth(828.8)]);
		expect(shown(one.file)['K']).toBe(1000);
	});

	it('that is all of it takes the roll off the rack; taken back it is there again', () => {
		const [one] = two(rackOf(1200));
		one.take([cloth(1200)]);
		expect(one.file.stock?.rolls).toEqual([]);
		expect(one.hand.lost).toEqual([]);
		one.hand.undo();
		expect(one.file.stock).toEqual(rackOf(1200).stock);
	});

	it.each([[1199], [null], [undefined], ['x'], [-5]])(
		'past the %s that is left has nothing: it is told, and nothing goes below nothing',
		(left) => {
			const [one] = two(rackOf(left));
			one.take([cloth(1200)]);
			expect(one.file.stock).toEqual(rackOf(left).stock);
			expect(one.hand.lost).toHaveLength(1);
			expect(one.hand.lost[0]).toContain(
				left === 1199 ? '1200 mm of roll “K”, booked by “One”' : 'there is none',
			);
		},
	);

	it('by two that did not know: the earlier has it, what is left is said; a smaller one stands', () => {
		const [one, other] = two(rackOf(3000));
		at(1000, () => one.take([cloth(2000)]));
		at(2000, () => other.take([cloth(1500)]));
		at(3000, () => other.take([cloth(900)]));
		meet(one, other);
		for (const { file, hand } of [one, other]) {
			expect(shown(file)['K']).toBe(100);
			expect(hand.lost).toEqual([
				'1500 mm of roll “K”, booked by “Two” (1970-01-01), is not on the rack for it: 100 mm are left, “One” and “Two” booked it before. Where it was there after all, measure again and type what is left on the roll; where it was not, take the booking back.',
			]);
		}
	});

	it('measured anew shows what was typed, and gives all bookings what they claim', () => {
		const [one, other] = two(rackOf(3000));
		at(1000, () => one.take([cloth(2000)]));
		at(2000, () => other.take([cloth(1500)]));
		meet(one, other);
		const rolls = (file: JobFile, left: number) =>
			(file.stock?.rolls ?? []).map((r) => ({ ...r, left }));
		const typed = (file: JobFile): JobFile => ({
			...file,
			stock: { ...file.stock, rolls: rolls(file, 800) },
		});
		one.hand.change(typed, 'measured', null);
		expect(shown(one.file)['K']).toBe(800);
		meet(one, other);
		expect(shown(other.file)['K']).toBe(800);
		expect(other.hand.lost).toEqual([]);
	});
});

describe('so much of a sundry', () => {
	it('leaves the rest, to the millionth of a pack', () => {
		const [one] = two(rackOf(0, 2));
		for (let n = 0; n < 10; n++) one.take([glue(0.1)]);
		expect(shown(one.file)['G']).toBe(1);
		for (let n = 0; n < 10; n++) one.hand.undo();
		expect(one.file.stock).toEqual(rackOf(0, 2).stock);
	});

	it('of which more was bought than used is more on the rack, on both devices', () => {
		const [one, other] = two(rackOf(0, 0.25));
		one.take([glue(-0.5)]);
		other.take([glue(-1.25)]);
		meet(one, other);
		expect(shown(one.file)['G']).toBe(2);
		expect(shown(other.file)['G']).toBe(2);
	});

	it('past what is there is told', () => {
		const [one] = two(rackOf(0, 0.5));
		one.take([glue(0.75)]);
		expect(shown(one.file)['G']).toBe(0.5);
		expect(one.hand.lost[0]).toContain('0.75 packs of “G”, booked by “One”');
		expect(one.hand.lost[0]).toContain('0.5 packs are left');
	});
});

describe('a booking of sheet, cloth and sundries', () => {
	it('is one step, and taken back exactly', () => {
		const [one] = two(rackOf(3000, 2, 1));
		const sheet: Taking = {
			takes: { kind: 'owned', id: 'S', material: 'ply', length: 800, width: 300 },
			yields: [{ id: 'R1', material: 'ply', length: 300, width: 300 }],
		};
		one.take([sheet, cloth(1000), glue(0.5)]);
		expect(shown(one.file)).toEqual({ S: 0, R1: 1, K: 2000, G: 1.5 });
		one.hand.undo();
		expect(one.file.stock).toEqual(rackOf(3000, 2, 1).stock);
		one.hand.redo();
		expect(shown(one.file)).toEqual({ S: 0, R1: 1, K: 2000, G: 1.5 });
	});
});

describe('a pinned sheet', () => {
	const pin = { sheet: 'owned/S', material: 'ply', length: 800, width: 300, placed: [] };
	const pinned = (device: Device, on: boolean): void =>
		void device.hand.change((file) => ({ ...file, pinned: on ? [pin] : [] }), 'pin', null);

	it('is held for its job, and no other counts on it; both are told who holds it', () => {
		const [one, other] = two(rackOf(0, 0, 1));
		at(86_400_000, () => pinned(one, true));
		meet(one, other);
		expect(shown(one.file)['S']).toBe(1);
		expect(shown(other.file)['S']).toBe(0);
		expect(other.hand.held).toMatchObject([
			{ what: 'a sheet “S”', by: '“One”', since: '1970-01-02', own: false },
		]);
		expect(one.hand.held).toMatchObject([{ own: true }]);
		pinned(one, false);
		meet(one, other);
		expect(shown(other.file)['S']).toBe(1);
		expect(other.hand.held).toEqual([]);
	});

	it('is free again when the step is taken back, and taken once when it is cut', () => {
		const [one, other] = two(rackOf(0, 0, 2));
		pinned(one, true);
		one.hand.undo();
		meet(one, other);
		expect(shown(other.file)['S']).toBe(2);
		one.hand.redo();
		const takes = { kind: 'owned', id: 'S', material: 'ply', length: 800, width: 300 } as const;
		one.hand.book(
			(file) => ({
				takings: [{ takes, yields: [] }],
				remnants: [],
				file: { ...file, pinned: [{ ...pin, cut: true }] },
			}),
			'cut',
		);
		meet(one, other);
		expect(shown(one.file)['S']).toBe(1);
		expect(shown(other.file)['S']).toBe(1);
		expect(other.claims()).toBe(1);
	});

	it('that another job has cut all the same is told to both', () => {
		const [one, other] = two(rackOf(0, 0, 1));
		pinned(one, true);
		other.book({ id: 'S' });
		meet(one, other);
		for (const { hand } of [one, other])
			expect(hand.lost[0]).toMatch(/^A sheet “S”, held by “One” .* “Two” booked it/);
		one.hand.change((file) => ({ ...file, notes: 'x' }), 'note', null);
		expect(one.hand.lost).toHaveLength(1);
	});

	it('is let go by any job, and that is taken back like any step', () => {
		const [one, other] = two(rackOf(0, 0, 1));
		pinned(one, true);
		meet(one, other);
		const [held] = other.hand.held;
		expect(other.hand.letGo(held!.id, 'let go')).toBe(true);
		expect(shown(other.file)['S']).toBe(1);
		expect(other.hand.letGo(held!.id, 'let go')).toBe(false);
		other.hand.undo();
		expect(shown(other.file)['S']).toBe(0);
	});
});
