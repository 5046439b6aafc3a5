import { OpenSheet, type SearchState } from './open-sheet';

/**
 * Sheets in work and pieces out, with steps that may be undone: a sheet is copied when first
 * touched, and put back.
 */
export class UndoSteps {
	readonly sheets: OpenSheet[] = [];
	protected readonly parked: OpenSheet[] = [];
	/** Pieces of each type that are not placed. */
	readonly out: Int32Array;
	/**
	 * Types with pieces out, each once; may hold types whose count has fallen to 0 until tidy().
	 */
	readonly outTypes: number[] = [];
	/** Sheets in use of each kind. */
	readonly used: Int32Array;
	/** Sum of the kinds' cost. */
	cost = 0;
	protected readonly listed: Uint8Array;
	protected readonly pool: OpenSheet[] = [];
	protected step = 0;
	private readonly backSheets: OpenSheet[] = [];
	private readonly backOut: Int32Array;
	private readonly backTypes: number[] = [];
	private readonly backUsed: Int32Array;
	private backCost = 0;
	protected readonly fresh: OpenSheet[] = [];
	protected readonly replaced: OpenSheet[] = [];

	constructor(readonly search: SearchState) {
		const types = search.model.types.length;
		this.out = new Int32Array(types);
		this.backOut = new Int32Array(types);
		this.listed = new Uint8Array(types);
		this.used = new Int32Array(search.model.kinds.length);
		this.backUsed = new Int32Array(search.model.kinds.length);
	}

	putOut(type: number, count: number): void {
		this.out[type]! += count;
		if (this.listed[type]) return;
		this.listed[type] = 1;
		this.outTypes.push(type);
	}

	/** Forgets types with nothing out. */
	tidy(): void {
		let kept = 0;
		for (const type of this.outTypes) {
			if (this.out[type]! > 0) this.outTypes[kept++] = type;
			else this.listed[type] = 0;
		}
		this.outTypes.length = kept;
	}

	protected take(): OpenSheet {
		const sheet = this.pool.pop() ?? new OpenSheet(this.search.model.types.length);
		sheet.step = this.step;
		this.fresh.push(sheet);
		return sheet;
	}

	/** Starts a step that commit() or undo() ends. */
	mark(): void {
		this.step++;
		copyInto(this.backSheets, this.sheets);
		this.backOut.set(this.out);
		copyInto(this.backTypes, this.outTypes);
		this.backUsed.set(this.used);
		this.backCost = this.cost;
		this.fresh.length = 0;
		this.replaced.length = 0;
	}

	commit(): void {
		this.pool.push(...this.replaced);
	}

	undo(): void {
		this.pool.push(...this.fresh);
		copyInto(this.sheets, this.backSheets);
		this.out.set(this.backOut);
		for (const type of this.outTypes) this.listed[type] = 0;
		copyInto(this.outTypes, this.backTypes);
		for (const type of this.outTypes) this.listed[type] = 1;
		this.used.set(this.backUsed);
		this.cost = this.backCost;
	}

	/** The sheet at an index, safe to change in this step. */
	touch(index: number): OpenSheet {
		const old = this.sheets[index]!;
		if (old.step === this.step) return old;
		const copy = this.take();
		copy.copyFrom(old);
		this.search.work += old.tree.size >> 2;
		this.sheets[index] = copy;
		this.replaced.push(old);
		return copy;
	}

	/** True for a sheet made or copied in this step. */
	touched(sheet: OpenSheet): boolean {
		return sheet.step === this.step;
	}

	/**
	 * Sets sheets aside so that only `count` stay in work: half of them those with most room left,
	 * the rest by lot. Cost and stock still count all. Between steps only.
	 */
	park(count: number): void {
		this.unpark();
		const { sheets, parked } = this;
		if (sheets.length <= count) return;
		const spare = ({ tree }: OpenSheet): number => tree.width * tree.height - tree.area;
		sheets.sort((a, b) => spare(b) - spare(a));
		for (let i = count >> 1; i < count; i++) {
			const pick = i + this.search.dice.int(sheets.length - i);
			const sheet = sheets[pick]!;
			sheets[pick] = sheets[i]!;
			sheets[i] = sheet;
		}
		while (sheets.length > count) parked.push(sheets.pop()!);
	}

	unpark(): void {
		this.sheets.push(...this.parked);
		this.parked.length = 0;
	}
}

export function copyInto<T>(to: T[], from: readonly T[]): void {
	to.length = from.length;
	for (let i = 0; i < from.length; i++) to[i] = from[i]!;
}
