import { fc, test } from '@fast-check/vitest';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { runs } from '../../depth';
import { Device, shown } from './windows';

/*
 * Three devices book, take back, count their own sheet and hear of each other in any order, with
 * clocks that differ; what each shows is what a plain list of everything it knows comes to.
 */

/** A booking as the model remembers it. */
interface Deed {
	readonly at: number;
	readonly takes: string;
	/** Of the one offcut it brings. */
	readonly label: string;
}

/** What was done last in a register, and how often it has been written. */
interface Said<T> {
	readonly times: number;
	readonly value: T;
}

const SHEETS = ['S0', 'S1', 'S2'];
const START = { S0: 1, S1: 2, S2: 0, R0: 1, R9: 2 } as Readonly<Record<string, number>>;
const piece = (id: string) => ({ id, material: 'ply', length: 800, width: 300 });
const RACK = {
	version: 1,
	stock: {
		sheets: SHEETS.map((id) => ({ ...piece(id), owned: START[id] })),
		offcuts: ['R0', 'R9'].map((id) => ({ ...piece(id), count: START[id] })),
	},
	shop: {},
};

/** What a device knows, and what the rack must show by it. */
class Model {
	/** Whether each booking stands written. */
	readonly bookings = new Map<Deed, Said<boolean>>();
	readonly counts = new Map<string, Said<number>>(
		SHEETS.map((id) => [id, { times: 0, value: START[id] ?? 0 }]),
	);

	hears(other: Model): void {
		newer(this.bookings, other.bookings);
		newer(this.counts, other.counts);
	}
	get written(): Deed[] {
		return [...this.bookings].flatMap(([deed, { value }]) => (value ? [deed] : []));
	}
	on(unit: string): Deed[] {
		return this.written.filter(({ takes }) => takes === unit);
	}
	/** Worked from the claim back to what it hangs on, not round by round. */
	stands(deed: Deed): boolean {
		const before = this.on(deed.takes).filter(({ at }) => at < deed.at);
		return before.length < this.capacity(deed.takes);
	}
	capacity(unit: string): number {
		if (unit === 'bought') return Infinity;
		const count = this.counts.get(unit);
		if (count) return count.value;
		const brought = this.written.filter(({ label }) => label === unit);
		return (START[unit] ?? 0) + brought.filter((deed) => this.stands(deed)).length;
	}
	net(unit: string): number {
		return this.capacity(unit) - this.on(unit).filter((deed) => this.stands(deed)).length;
	}
	shown(): Record<string, number> {
		const units = new Set([...Object.keys(START), ...this.written.map(({ label }) => label)]);
		const net = [...units].map((unit) => [unit, this.net(unit)] as const);
		return Object.fromEntries(net.filter(([unit, n]) => unit.startsWith('S') || n > 0));
	}
	lost(): number {
		return this.written.filter((deed) => !this.stands(deed)).length;
	}
}

function newer<K, T>(mine: Map<K, Said<T>>, theirs: ReadonlyMap<K, Said<T>>): void {
	for (const [key, said] of theirs)
		if (said.times > (mine.get(key)?.times ?? -1)) mine.set(key, said);
}

/** A device beside its model, and how each of its steps is taken back and done again. */
class Pair {
	readonly device: Device;
	readonly model = new Model();
	#past: { back: () => void; again: () => void }[] = [];
	#future: { back: () => void; again: () => void }[] = [];

	constructor(name: string) {
		this.device = new Device(name, RACK);
	}

	book(at: number, label: string, choice: number): void {
		const { bookings, written } = this.model;
		const units = [...Object.keys(START), 'bought', ...written.map((deed) => deed.label)];
		const takes = units[choice % units.length]!;
		const kind = takes === 'bought' ? 'buy' : takes.startsWith('S') ? 'owned' : 'offcut';
		this.device.book({ kind, id: takes }, [{ id: label }]);
		this.#did(bookings, { at, takes, label }, false, true);
	}

	/** Whoever counts has counted after every booking known. */
	count(sheet: string, typed: number): void {
		const { counts } = this.model;
		const before = counts.get(sheet)!.value;
		const after = typed === this.model.net(sheet) ? before : typed + this.model.on(sheet).length;
		this.device.hand.change((file) => typedInto(file, sheet, typed), 'count', null);
		this.#did(counts, sheet, before, after);
		expect(shown(this.device.file)[sheet]).toBe(typed);
	}

	undo(): void {
		this.device.hand.undo();
		const step = this.#past.pop();
		step?.back();
		if (step) this.#future.push(step);
	}
	redo(): void {
		this.device.hand.redo();
		const step = this.#future.pop();
		step?.again();
		if (step) this.#past.push(step);
	}

	hears(other: Pair): void {
		if (other === this) return;
		this.device.hears(other.device);
		this.model.hears(other.model);
	}

	check(): void {
		expect(shown(this.device.file)).toEqual(this.model.shown());
		expect(this.device.hand.lost).toHaveLength(this.model.lost());
		expect(Object.values(shown(this.device.file)).every((n) => n >= 0)).toBe(true);
	}

	#did<K, T>(said: Map<K, Said<T>>, key: K, from: T, to: T): void {
		const say = (value: T) => (): void =>
			void said.set(key, { times: (said.get(key)?.times ?? 0) + 1, value });
		say(to)();
		this.#past.push({ back: say(from), again: say(to) });
		this.#future = [];
	}
}

function typedInto(file: JobFile, sheet: string, owned: number): JobFile {
	const sheets = (file.stock?.sheets ?? []).map((s) => (s.id === sheet ? { ...s, owned } : s));
	return { ...file, stock: { ...file.stock, sheets } };
}

const move = fc.record({
	who: fc.nat(2),
	what: fc.constantFrom('book', 'book', 'book', 'count', 'undo', 'undo', 'redo', 'hear', 'hear'),
	/** Which unit is booked, whom is heard, how many are counted. */
	n: fc.nat(99),
});

afterEach(() => void vi.restoreAllMocks());

describe('three devices with clocks that differ', () => {
	const met = { lost: 0, chained: 0, none: 0 };

	test.prop(
		[
			fc.array(move, { minLength: 3, maxLength: 25 }),
			fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -50, max: 50 }))),
		],
		{ numRuns: runs(240, 60) },
	)('show what everything they know comes to, and the same once all know all', (moves, skews) => {
		const pairs = skews.map((_, i) => new Pair(`Device ${i}`));
		const clock = vi.spyOn(Date, 'now');
		moves.forEach(({ who, what, n }, step) => {
			const pair = pairs[who]!;
			const at = 1e6 + 10 * (step + skews[who]!) + who; // no two alike
			clock.mockReturnValue(at);
			if (what === 'hear') pair.hears(pairs[n % 3]!);
			else if (what === 'book') pair.book(at, `L${step}`, n);
			else if (what === 'count') pair.count(SHEETS[who]!, n % 4);
			else if (what === 'undo') pair.undo();
			else pair.redo();
			pair.check();
		});
		for (let round = 0; round < 2; round++)
			for (const one of pairs) for (const other of pairs) one.hears(other);
		for (const pair of pairs) pair.check();
		const [{ device, model }] = pairs as [Pair];
		for (const pair of pairs) expect(pair.device.file.stock).toEqual(device.file.stock);
		met.lost += model.lost();
		met.chained += model.written.filter(({ takes }) => takes.startsWith('L')).length;
		met.none += SHEETS.filter((id) => model.on(id).length > 0 && model.net(id) === 0).length;
	});

	it('having met bookings without their sheet, sheets used up, offcuts used again', () => {
		expect(met.lost).toBeGreaterThan(20);
		expect(met.chained).toBeGreaterThan(10);
		expect(met.none).toBeGreaterThan(20);
	});
});
