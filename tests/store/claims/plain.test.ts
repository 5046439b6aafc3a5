import { describe, expect, it, vi } from 'vitest';
import { recordOfJob } from '../../../src/lib/store/hand/record-of-job';
import { Device, meet, shown } from './windows';

const rackOf = (owned: unknown, offcuts: unknown[] = []) => ({
	version: 1,
	stock: { sheets: [{ id: 'S', material: 'ply', length: 2440, width: 1220, owned }], offcuts },
	shop: {},
});
const R1 = { id: 'R1', material: 'ply', length: 800, width: 300 };

/** By the clock of whoever books. */
const at = (time: number, work: () => void): void => {
	const clock = vi.spyOn(Date, 'now').mockReturnValue(time);
	work();
	clock.mockRestore();
};

describe('a booking', () => {
	it('takes one sheet off the rack and brings its offcuts there', () => {
		const one = new Device('One', rackOf(2));
		one.book({}, [{ id: 'R1' }]);
		expect(shown(one.file)).toEqual({ S: 1, R1: 1 });
		expect(one.hand.lost).toEqual([]);
	});

	it('is taken back whole, and done again', () => {
		const one = new Device('One', rackOf(2));
		one.book({}, [{ id: 'R1' }], 'sheet 1 cut');
		expect(one.hand.undo()).toBe('sheet 1 cut');
		expect(one.file.stock).toEqual(rackOf(2).stock);
		one.hand.redo();
		expect(shown(one.file)).toEqual({ S: 1, R1: 1 });
	});

	it('in a rack of the job’s own is no other', () => {
		const one = new Device('One', rackOf(1), false);
		one.book({}, [{ id: 'R1' }]);
		expect(shown(one.file)).toEqual({ S: 0, R1: 1 });
		one.hand.undo();
		expect(one.file.stock).toEqual(rackOf(1).stock);
	});

	it('is counted in the record of a job nobody has in hand as in that of one in hand', () => {
		const one = new Device('One', rackOf(2), false);
		one.book({}, [{ id: 'R1' }]);
		const record = recordOfJob(one.job.doc, { id: 'One', rack: undefined, changed: 0 });
		expect(record?.file).toEqual(one.hand.record().file);
		expect(shown(record?.file as typeof one.file)).toEqual({ S: 1, R1: 1 });
	});

	it.each([true, false])('is kept, and what is done after it (shared rack: %s)', async (shares) => {
		const one = new Device('One', rackOf(3), shares);
		one.book({}, [{ id: 'R1' }]);
		expect(shown((await one.another()).file)).toEqual({ S: 2, R1: 1 });
		one.hand.change((file) => ({ ...file, notes: 'after' }), 'notes', null);
		one.book({}, [{ id: 'R2' }]);
		one.hand.undo();
		expect((await one.another()).file).toEqual(one.file);
		one.hand.redo();
		one.hand.change((file) => ({ ...file, notes: 'at last' }), 'notes', null);
		const another = await one.another();
		expect(another.file).toEqual(one.file);
		expect(another.file.notes).toBe('at last');
		expect(shown(another.file)).toEqual({ S: 1, R1: 1, R2: 1 });
	});

	it('of a sheet that is bought takes nothing, and brings its offcuts', () => {
		const one = new Device('One', rackOf(2));
		one.book({ kind: 'buy' }, [{ id: 'R1' }, { id: 'R2' }]);
		expect(shown(one.file)).toEqual({ S: 2, R1: 1, R2: 1 });
	});

	it('of the last offcut takes it off the rack, of one of two leaves one', () => {
		const one = new Device('One', rackOf(0, [R1, { ...R1, id: 'R2', count: 2 }]));
		one.book({ kind: 'offcut', id: 'R1' });
		one.book({ kind: 'offcut', id: 'R2' });
		expect(shown(one.file)).toEqual({ S: 0, R2: 1 });
		one.hand.undo();
		one.hand.undo();
		expect(one.file.stock).toEqual(rackOf(0, [R1, { ...R1, id: 'R2', count: 2 }]).stock);
	});

	it.each([0, undefined, -1, null, 'two'])('where the rack says %s has nothing', (owned) => {
		const one = new Device('One', rackOf(owned));
		one.book({}, [{ id: 'R1' }]);
		expect(one.file.stock).toEqual(rackOf(owned).stock);
		expect(one.hand.lost).toHaveLength(1);
		expect(one.hand.lost[0]).toContain('there is none. What fell off it, R1, is not counted');
	});
});

describe('two bookings that did not know of each other', () => {
	it('of two sheets both stand', () => {
		const [one, two] = [new Device('One', rackOf(3)), new Device('Two', rackOf(3))];
		one.book({}, [{ id: 'R1' }]);
		two.book({}, [{ id: 'R2' }]);
		meet(one, two);
		for (const { file, hand } of [one, two]) {
			expect(shown(file)).toEqual({ S: 1, R1: 1, R2: 1 });
			expect(hand.lost).toEqual([]);
		}
	});

	it('of the only sheet: the earlier stands, the other is told, and nothing goes below nothing', () => {
		const [one, two] = [new Device('One', rackOf(1)), new Device('Two', rackOf(1))];
		at(2000, () => one.book({}, [{ id: 'R1' }]));
		at(1000, () => two.book({}, [{ id: 'R2' }]));
		expect(shown(one.file)).toEqual({ S: 0, R1: 1 });
		meet(one, two);
		for (const { file, hand } of [one, two]) {
			expect(shown(file)).toEqual({ S: 0, R2: 1 });
			expect(hand.lost).toEqual([
				'A sheet “S”, booked by “One” (1970-01-01), is not on the rack for it: “Two” booked it. What fell off it, R1, is not counted on the rack either. Where it was there after all, count again and type how many are on the rack; where it was not, take the booking back.',
			]);
		}
		two.hand.undo();
		meet(one, two);
		expect(shown(one.file)).toEqual({ S: 0, R1: 1 });
		expect(one.hand.lost).toEqual([]);
	});

	it('of one offcut: one job has it', () => {
		const [one, two] = [new Device('One', rackOf(0, [R1])), new Device('Two', rackOf(0, [R1]))];
		at(1000, () => one.book({ kind: 'offcut', id: 'R1' }, [{ id: 'R5', width: 100 }]));
		at(2000, () => two.book({ kind: 'offcut', id: 'R1' }, [{ id: 'R6', width: 200 }]));
		meet(one, two);
		expect(shown(one.file)).toEqual({ S: 0, R5: 1 });
		expect(two.file.stock).toEqual(one.file.stock);
		expect(two.hand.lost[0]).toMatch(/^Offcut “R1”, booked by “Two”/);
	});

	it('at the same moment: one of them stands, the same on both', () => {
		const [one, two] = [new Device('One', rackOf(1)), new Device('Two', rackOf(1))];
		at(1000, () => one.book({}, [{ id: 'R1' }]));
		at(1000, () => two.book({}, [{ id: 'R2' }]));
		meet(one, two);
		expect(Object.values(shown(one.file))).toEqual([0, 1]);
		expect(two.file.stock).toEqual(one.file.stock);
	});
});

describe('an offcut that fell off a booked sheet', () => {
	it('and is used: with its sheet taken back, its own booking stays and is told', () => {
		const [one, two] = [new Device('One', rackOf(1)), new Device('Two', rackOf(1))];
		one.book({}, [{ id: 'R1' }], 'sheet 1 cut');
		meet(one, two);
		two.book({ kind: 'offcut', id: 'R1' }, [{ id: 'R2', width: 100 }]);
		meet(one, two);
		expect(shown(one.file)).toEqual({ S: 0, R2: 1 });
		expect(one.hand.undo()).toBe(
			'sheet 1 cut. Offcut “R1” has been booked by “Two” since: that booking stays and is told on the rack',
		);
		expect(shown(one.file)).toEqual({ S: 1 });
		meet(one, two);
		expect(two.hand.lost).toHaveLength(1);
		expect(two.file.stock).toEqual(one.file.stock);
		one.hand.redo();
		meet(one, two);
		expect(shown(two.file)).toEqual({ S: 0, R2: 1 });
		expect(two.hand.lost).toEqual([]);
		two.hand.undo();
		expect(shown(two.file)).toEqual({ S: 0, R1: 1 });
	});

	it('and is used before its sheet is booked takes nothing from the rack', () => {
		const one = new Device('One', rackOf(1, [R1]));
		one.book({ kind: 'own', id: 'R2' });
		expect(shown(one.file)).toEqual({ S: 1, R1: 1 });
	});

	it('with a label that another one carries: both are there', () => {
		const [one, two] = [new Device('One', rackOf(2)), new Device('Two', rackOf(2))];
		one.book({}, [{ id: 'R1' }]);
		two.book({}, [{ id: 'R1', length: 500 }]);
		meet(one, two);
		expect(one.file.stock?.offcuts).toHaveLength(2);
		one.book({ kind: 'offcut', id: 'R1', length: 500 });
		expect(one.file.stock?.offcuts).toEqual([R1]);
	});
});

describe('the rack as one counts it', () => {
	const typed = (device: Device, owned: unknown): void =>
		void device.hand.change(
			(file) => {
				const sheets = (file.stock?.sheets ?? []).map((s) => ({ ...s, owned }));
				return { ...file, stock: { ...file.stock, sheets } } as typeof file;
			},
			'count',
			'owned',
		);

	it.each([0, 1, 4, 1000])('shows the %i that was typed, with bookings before it', (owned) => {
		const one = new Device('One', rackOf(5));
		for (const id of ['R1', 'R2']) one.book({}, [{ id }]);
		expect(shown(one.file)['S']).toBe(3);
		typed(one, owned);
		expect(shown(one.file)).toEqual({ S: owned, R1: 1, R2: 1 });
		expect(one.hand.lost).toEqual([]);
	});

	it('gives a booking that had nothing what it claims: who counts has counted after it', () => {
		const [one, two] = [new Device('One', rackOf(1)), new Device('Two', rackOf(1))];
		at(1000, () => one.book({}, [{ id: 'R1' }]));
		at(2000, () => two.book({}, [{ id: 'R2' }]));
		meet(one, two);
		typed(one, 1);
		expect(shown(one.file)).toEqual({ S: 1, R1: 1, R2: 1 });
		meet(one, two);
		expect(two.file.stock).toEqual(one.file.stock);
		expect(two.hand.lost).toEqual([]);
	});

	it('keeps what was booked while the count is being typed, or its line taken out', () => {
		const one = new Device('One', rackOf(1));
		one.book({}, [{ id: 'R1' }]);
		for (const owned of ['', 'x', null, 3]) {
			typed(one, owned);
			expect(one.file.stock?.sheets?.[0]).toMatchObject({ owned });
			expect(one.file.stock?.offcuts).toEqual([R1]);
		}
		const without = (file: Device['file']): Device['file'] => ({
			...file,
			stock: { ...file.stock, sheets: [] },
		});
		one.hand.change(without, 'take out', null);
		expect(shown(one.file)).toEqual({ R1: 1 });
		expect(one.hand.lost).toEqual([]);
		one.hand.undo();
		expect(shown(one.file)).toEqual({ S: 3, R1: 1 });
	});

	it('given to the shop goes as it was shown', () => {
		const one = new Device('One', rackOf(3), false);
		one.book({}, [{ id: 'R1' }]);
		one.hand.shareRack('give', 'share');
		expect(shown(one.file)).toEqual({ S: 2, R1: 1 });
		one.book({}, [{ id: 'R2' }]);
		expect(shown(one.file)).toEqual({ S: 1, R1: 1, R2: 1 });
	});
});
