import { expect } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import type { TakenAmount } from '../../../src/lib/layout/booked';
import { Device, shown } from './windows';

/*
 * A plain list of everything a device knows of a rack, and what that comes to: sheets, offcuts, a
 * roll by the millimetre and a sundry by the quarter of a pack.
 */

/** A booking, or what is held for a pinned sheet, as the model remembers it. */
export interface Deed {
	readonly job: string;
	readonly at: number;
	readonly takes: string;
	/** Sheets, millimetres or packs; less than nothing where it brings some. */
	readonly amount: number;
	/** Of the one offcut it brings; '' for none. */
	readonly label: string;
	readonly cut: boolean;
}

/** What was done last in a register, and how often it has been written. */
interface Said<T> {
	readonly times: number;
	readonly value: T;
}

export const SHEETS = ['S0', 'S1', 'S2'];
const START = { S0: 1, S1: 2, S2: 0, R0: 1, R9: 2, K0: 1000, G0: 2 } as Readonly<
	Record<string, number>
>;
const piece = (id: string) => ({ id, material: 'ply', length: 800, width: 300 });
const RACK = {
	version: 1,
	stock: {
		sheets: SHEETS.map((id) => ({ ...piece(id), owned: START[id] })),
		offcuts: ['R0', 'R9'].map((id) => ({ ...piece(id), count: START[id] })),
		rolls: [{ id: 'K0', cloth: 'felt', width: 1500, usable: 1400, left: '1 m', lot: '7' }],
		sundries: [{ id: 'G0', name: 'Glue', kind: 'wood-glue', pack: 1, owned: 2 }],
	},
	shop: {},
};

/** What a device knows, and what the rack must show by it. */
export class Model {
	/** Whether each booking stands written. */
	readonly bookings = new Map<Deed, Said<boolean>>();
	readonly counts = new Map<string, Said<number>>(
		[...SHEETS, 'K0', 'G0'].map((id) => [id, { times: 0, value: START[id] ?? 0 }]),
	);
	readonly #job: string;

	constructor(job: string) {
		this.#job = job;
	}
	hears(other: Model): void {
		newer(this.bookings, other.bookings);
		newer(this.counts, other.counts);
	}
	get written(): Deed[] {
		return [...this.bookings].flatMap(([deed, { value }]) => (value ? [deed] : []));
	}
	on(unit: string): Deed[] {
		return this.written
			.filter(({ takes }) => takes === unit)
			.sort((a, b) => Number(b.cut) - Number(a.cut) || a.at - b.at);
	}
	/** Worked from the claim back to what it hangs on, not round by round. */
	stands(deed: Deed): boolean {
		return deed.amount <= 0 || this.#standing(deed.takes).includes(deed);
	}
	#standing(unit: string): Deed[] {
		const row = this.on(unit);
		const brings = row.filter(({ amount }) => amount <= 0);
		let left = brings.reduce((sum, { amount }) => sum - amount, this.capacity(unit));
		const rest = row.filter((d) => d.amount > 0);
		const has = rest.filter((d) => d.amount <= left && ((left -= d.amount), true));
		return [...brings, ...has];
	}
	capacity(unit: string): number {
		if (unit === 'bought') return Infinity;
		const count = this.counts.get(unit);
		if (count) return count.value;
		const brought = this.written.filter(({ label }) => label === unit);
		return (START[unit] ?? 0) + brought.filter((deed) => this.stands(deed)).length;
	}
	net(unit: string): number {
		const others = this.#standing(unit).filter(({ cut, job }) => cut || job !== this.#job);
		return others.reduce((sum, { amount }) => sum - amount, this.capacity(unit));
	}
	shown(): Record<string, number> {
		const labels = this.written.flatMap(({ label }) => label || []);
		const units = new Set([...Object.keys(START), ...labels]);
		const net = [...units].map((unit) => [unit, this.net(unit)] as const);
		return Object.fromEntries(net.filter(([unit, n]) => /^[SG]/.test(unit) || n > 0));
	}
	lost(): number {
		return this.written.filter((deed) => !this.stands(deed)).length;
	}
	/** What has to be owned for so much to be shown: with as many bookings as can stand. */
	owned(unit: string, typed: number): number {
		const others = this.on(unit).filter(({ cut, job }) => cut || job !== this.#job);
		const all = others.reduce((sum, { amount }) => sum + amount, typed);
		const at = (value: number): Model => {
			const other = new Model(this.#job);
			other.hears(this);
			other.counts.set(unit, { times: Infinity, value });
			return other;
		};
		let value = all;
		while (value > 0 && at(value).net(unit) > typed) value--;
		return value;
	}
}

function newer<K, T>(mine: Map<K, Said<T>>, theirs: ReadonlyMap<K, Said<T>>): void {
	for (const [key, said] of theirs)
		if (said.times > (mine.get(key)?.times ?? -1)) mine.set(key, said);
}

interface Step {
	/** Where the step is a booking. */
	readonly deeds: readonly Deed[];
	readonly back: () => void;
	readonly again: () => void;
}

/** A device beside its model, and how each of its steps is taken back and done again. */
export class Pair {
	readonly device: Device;
	readonly model: Model;
	readonly #name: string;
	#past: Step[] = [];
	#future: Step[] = [];

	constructor(name: string) {
		this.#name = name;
		this.device = new Device(name, RACK);
		this.model = new Model(name);
	}

	/** A sheet, an offcut, cloth with glue, or glue of which more was bought than used. */
	book(at: number, label: string, choice: number): void {
		const { bookings, written } = this.model;
		const labels = written.flatMap((deed) => deed.label || []);
		const units = [...Object.keys(START), 'bought', ...labels];
		const unit = units[choice % units.length]!;
		const deed = { job: this.#name, at, takes: unit, amount: 1, label: '', cut: true };
		if (unit.startsWith('K') || unit.startsWith('G')) {
			const cloth = { ...deed, takes: 'K0', amount: 100 * ((choice % 13) + 1) };
			const glue = { ...deed, takes: 'G0', amount: ((choice % 9) - 3) / 4 };
			this.device.take([amount(cloth), amount(glue)]);
			return this.#did(bookings, [cloth, glue], false, true);
		}
		const kind = unit === 'bought' ? 'buy' : unit.startsWith('S') ? 'owned' : 'offcut';
		this.device.book({ kind, id: unit }, [{ id: label }]);
		this.#did(bookings, [{ ...deed, label }], false, true);
	}

	/** The sheet is held while it is pinned, once. */
	pin(at: number, sheet: string): void {
		const mine = ({ job, takes, cut }: Deed): boolean =>
			!cut && job === this.#name && takes === sheet;
		const held = this.model.written.find(mine);
		const deed = { job: this.#name, at, takes: sheet, amount: 1, label: '', cut: false };
		this.device.hand.change((file) => pinnedIn(file, sheet, !held), 'pin', null);
		this.#did(this.model.bookings, [held ?? deed], !!held, !held);
	}

	/** Whoever counts has counted after every booking known. */
	count(unit: string, typed: number): void {
		const { counts } = this.model;
		const before = counts.get(unit)!.value;
		const after = typed === this.model.net(unit) ? before : this.model.owned(unit, typed);
		this.device.hand.change((file) => typedInto(file, unit, typed), 'count', null);
		this.#did(counts, [unit], before, after);
		expect(shown(this.device.file)[unit] ?? 0).toBe(typed);
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

	/** Is the step to be undone next a booking of an offcut? */
	get undoesOffcut(): boolean {
		const deeds = this.#past.at(-1)?.deeds ?? [];
		return deeds.some(({ takes, cut }) => cut && /^[RL]/.test(takes));
	}
	/** Is the step to be undone next a booking made before this? */
	undoes(before: number): boolean {
		return (this.#past.at(-1)?.deeds ?? []).some(({ at, cut }) => cut && at < before);
	}

	/** Does this move a count that was typed? */
	movesCount(what: string): boolean {
		const step = what === 'undo' ? this.#past.at(-1) : this.#future.at(-1);
		return (what === 'undo' || what === 'redo') && step?.deeds.length === 0;
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

	#did<K extends Deed | string, T>(
		said: Map<K, Said<T>>,
		keys: readonly K[],
		from: T,
		to: T,
	): void {
		const say = (value: T) => (): void => {
			for (const key of keys) said.set(key, { times: (said.get(key)?.times ?? 0) + 1, value });
		};
		say(to)();
		const deeds = keys.flatMap((key): Deed[] => (typeof key === 'string' ? [] : [key]));
		this.#past.push({ deeds, back: say(from), again: say(to) });
		this.#future = [];
	}
}

const amount = ({ takes, amount }: Deed): { takes: TakenAmount; yields: [] } => ({
	takes: { kind: takes === 'K0' ? 'roll' : 'sundry', id: takes, amount },
	yields: [],
});

function typedInto(file: JobFile, id: string, typed: number): JobFile {
	const stock = file.stock ?? {};
	const put = <T extends { id: string }>(list: readonly T[] | undefined, change: object): T[] =>
		(list ?? []).map((line) => (line.id === id ? { ...line, ...change } : line));
	if (id === 'G0')
		return { ...file, stock: { ...stock, sundries: put(stock.sundries, { owned: typed }) } };
	return { ...file, stock: { ...stock, sheets: put(stock.sheets, { owned: typed }) } };
}

function pinnedIn(file: JobFile, sheet: string, on: boolean): JobFile {
	const { material, length, width } = piece(sheet);
	const pin = { material, length, width, sheet: `owned/${sheet}`, placed: [], cut: false };
	const others = (file.pinned ?? []).filter((p) => p.sheet !== pin.sheet);
	return { ...file, pinned: on ? [...others, pin] : others };
}
