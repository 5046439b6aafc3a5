/*
 * A linear program whose columns come one after another: cover every row at the least cost. Revised
 * simplex method with the inverse of the basis kept whole (G. B. Dantzig, "Linear Programming and
 * Extensions", 1963), good for some hundreds of rows. What it finds is a guide only: whatever is
 * claimed from it is checked in whole numbers elsewhere.
 */

/** So much of each of some rows for a cost. */
export interface LpColumn {
	readonly rows: Int32Array;
	readonly amounts: Int32Array;
	readonly cost: number;
}

const SLIP = 1e-9; // share of the dearest cost that counts as nothing
const LEAST_PIVOT = 1e-7;
/**
 * Share of a row's need added, another for each row, so that no two steps tie and the method cannot
 * go in circles.
 */
const SHAKE = 1e-5;
const PIVOTS_PER_ROW = 60;
const OWN = -1; // in the basis: the row's own start column

/**
 * Stands for the slack of a row among the columns: what a need is covered beyond, or a limit not
 * used.
 */
const slackOf = (row: number): number => -2 - row;
const rowOf = (slack: number): number => -2 - slack;

export class ColumnLp {
	readonly columns: LpColumn[] = [];
	/** What one more unit of each row's need would cost; below zero for limits that bind. */
	readonly duals: Float64Array;
	private readonly size: number;
	private readonly inverse: Float64Array;
	/** Column in each place of the basis, its slack, or OWN. */
	private readonly basis: Int32Array;
	private readonly amount: Float64Array;
	private readonly entering: Float64Array;
	/**
	 * Columns and slacks that saved something when all were looked through last: these are asked
	 * first.
	 */
	private readonly promising: number[] = [];
	private readonly saving: number;
	/** Numbers multiplied since the start, as a measure of work. */
	work = 0;

	/**
	 * `need` of each row, whole numbers. The first `covers` rows ask for at least that much, the
	 * rest allow at most that much. `dear`: cost of leaving one unit of a need uncovered, above all
	 * that covering it may cost.
	 */
	constructor(
		private readonly need: readonly number[],
		private readonly covers: number,
		private readonly dear: number,
	) {
		const m = (this.size = need.length);
		this.duals = new Float64Array(m);
		this.inverse = new Float64Array(m * m);
		this.basis = Int32Array.from(need, (_, row) => (row < covers ? OWN : slackOf(row)));
		const shaken = (n: number, i: number): number =>
			n + (n + 1) * SHAKE * (1 + ((i * 7919) % 97) / 97);
		this.amount = Float64Array.from(need, shaken);
		this.entering = new Float64Array(m);
		this.saving = -SLIP * Math.max(1, dear);
		for (let i = 0; i < m; i++) this.inverse[i * m + i] = 1;
	}

	/**
	 * Worth of all needs under the duals as they stand: once solved, the least cost with the
	 * columns known.
	 */
	get value(): number {
		return this.need.reduce((sum, n, i) => sum + n * this.duals[i]!, 0);
	}

	/**
	 * Steps until no column known makes it cheaper; false when that took too many, and the duals
	 * are of little use.
	 */
	solve(): boolean {
		const most = PIVOTS_PER_ROW * this.size;
		this.price();
		for (let step = 0; step < most; step++) {
			const column = this.cheapest() ?? this.cheapestAnew();
			if (column === null) return true;
			if (!this.pivot(column)) return false;
		}
		return false;
	}

	private costAt(place: number): number {
		const column = this.basis[place]!;
		if (column >= 0) return this.columns[column]!.cost;
		return column === OWN ? this.dear : 0;
	}

	private price(): void {
		const { size: m, inverse, duals } = this;
		duals.fill(0);
		for (let i = 0; i < m; i++) {
			const cost = this.costAt(i);
			if (cost === 0) continue;
			for (let j = 0; j < m; j++) duals[j]! += cost * inverse[i * m + j]!;
		}
		this.work += m * m;
	}

	/** The column, or slack, that saves most per unit entered; null when none saves anything. */
	private cheapest(): number | null {
		return this.bestOf(this.promising) ?? this.bestOf(this.lookThrough());
	}

	/**
	 * The same with duals worked out anew: from pivot to pivot they are only brought up to date.
	 */
	private cheapestAnew(): number | null {
		this.price();
		return this.cheapest();
	}

	/** What a slack, or a column, costs per unit entered; below zero it saves. */
	private reduced(column: number): number {
		const { duals, covers } = this;
		if (column < 0) {
			const row = rowOf(column);
			return row < covers ? duals[row]! : -duals[row]!;
		}
		const { rows, amounts, cost: whole } = this.columns[column]!;
		let cost = whole;
		for (let i = 0; i < rows.length; i++) cost -= duals[rows[i]!]! * amounts[i]!;
		return cost;
	}

	/** The best of some columns and slacks; null when none of them saves anything. */
	private bestOf(columns: readonly number[]): number | null {
		let best: number | null = null;
		let least = this.saving;
		for (const column of columns) {
			const cost = this.reduced(column);
			if (cost >= least) continue;
			least = cost;
			best = column;
		}
		this.work += 6 * columns.length;
		return best;
	}

	/** Looks through all columns and slacks for those that save something. */
	private lookThrough(): readonly number[] {
		const { promising, saving } = this;
		promising.length = 0;
		for (let row = 0; row < this.size; row++)
			if (this.reduced(slackOf(row)) < saving) promising.push(slackOf(row));
		for (let at = 0; at < this.columns.length; at++)
			if (this.reduced(at) < saving) promising.push(at);
		this.work += 6 * this.columns.length;
		return promising;
	}

	/**
	 * Brings a column into the basis; false when nothing limits it, which only rounding can bring
	 * about.
	 */
	private pivot(column: number): boolean {
		const { size: m, inverse, entering, amount } = this;
		const saved = this.reduced(column);
		this.direct(column);
		const place = this.leaving();
		if (place < 0) return false;
		const by = entering[place]!;
		const taken = amount[place]! / by;
		for (let j = 0; j < m; j++) {
			inverse[place * m + j]! /= by;
			this.duals[j]! += saved * inverse[place * m + j]!;
		}
		for (let i = 0; i < m; i++) {
			const times = entering[i]!;
			if (i === place || times === 0) continue;
			amount[i] = Math.max(0, amount[i]! - times * taken);
			for (let j = 0; j < m; j++) inverse[i * m + j]! -= times * inverse[place * m + j]!;
		}
		amount[place] = taken;
		this.basis[place] = column;
		this.work += m * m;
		return true;
	}

	/** The place of the basis that runs out first as the column enters; -1 for none. */
	private leaving(): number {
		let place = -1;
		let least = Infinity;
		for (let i = 0; i < this.size; i++) {
			if (this.entering[i]! <= LEAST_PIVOT) continue;
			const taken = this.amount[i]! / this.entering[i]!;
			if (taken >= least) continue;
			least = taken;
			place = i;
		}
		return place;
	}

	/** The column as the basis sees it, into `entering`. */
	private direct(column: number): void {
		const { size: m, inverse, entering } = this;
		entering.fill(0);
		if (column < 0) {
			const row = rowOf(column);
			const sign = row < this.covers ? -1 : 1;
			for (let i = 0; i < m; i++) entering[i] = sign * inverse[i * m + row]!;
			return;
		}
		const { rows, amounts } = this.columns[column]!;
		for (let k = 0; k < rows.length; k++)
			for (let i = 0; i < m; i++) entering[i]! += inverse[i * m + rows[k]!]! * amounts[k]!;
	}
}
