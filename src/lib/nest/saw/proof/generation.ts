import { ColumnLp } from './column-lp';
import type { Pattern, Pricing } from './pricing';
import type { SawModel } from '../model';

/*
 * What a layout must cost at least, by column generation (P. C. Gilmore, R. E. Gomory, "A linear
 * programming approach to the cutting-stock problem", Operations Research 9, 1961). A linear
 * program over the sets of pieces known says what each piece is worth; a search finds sets worth
 * more than their sheet costs, which join the program, until there are none. Then, in whole
 * numbers, with the worths rounded down:
 *
 *   every set is worth at most a share s of its sheet's cost, so all pieces together are worth at
 *   most s times the cost of any layout (A. A. Farley, "A note on bounding a class of linear
 *   programming problems", Operations Research 38, 1990);
 *
 *   or, where that is not enough: no set is worth more than its sheet, so in a layout that costs
 *   `target` or less the sheets together cost at most `gap` more than what is on them is worth.
 */

/** What is to be shown: that every layout costs more than `target`. */
export interface ProofTarget {
	/** Cost of a sheet of each kind, whole numbers. */
	readonly costs: readonly number[];
	readonly goal: number;
	/** Kinds of which there may be too few. */
	readonly limited: readonly number[];
}

/** short: the linear program alone does not reach the target; `gap` says by how much. */
export type Reached = 'working' | 'proven' | 'short' | 'open';

const MOST_SCALE = 1e6;
const LEAST_SCALE = 1e3;
// products of whole numbers up to here stay exact in a double, with room for sums
const EXACT = 2 ** 50;
const EASY = 30_000; // work of a search that is worth it once there is a set to go on with
const LP_SHARE = 32; // numbers multiplied in the time of one pair of rectangles

export class Generation {
	private readonly lp: ColumnLp;
	/** Units in which a cost of 1 is counted, so that worths are whole numbers. */
	private readonly scale: number;
	/**
	 * Worth of one piece of each type; what a sheet of each kind counts above its cost, for there
	 * are too few.
	 */
	readonly worth: Float64Array;
	private readonly scarce: Float64Array;
	/** Most that a set on a sheet of each kind may be worth. */
	private readonly enough: Float64Array;
	private total = 0;
	private kind = -1; // none: the linear program is next
	private first = 0;
	private firsts = 0;
	private searching = false;
	private begun = 0;
	private found = false;
	private unsure = false;
	/** Once short: what all sheets of a layout may cost above the worth of what is on them. */
	gap = 0;
	/** Once short: what any layout costs at least, a whole number. */
	least = 0;

	constructor(
		private readonly model: SawModel,
		private readonly target: ProofTarget,
		private readonly pricings: readonly Pricing[],
	) {
		const { demand, kinds } = model;
		const dearest = Math.max(...target.costs);
		const need = [...demand, ...target.limited.map((k) => kinds[k]!.count)];
		this.lp = new ColumnLp(need, demand.length, 4 * dearest);
		const most = EXACT / (Math.max(1, dearest) * (target.goal + dearest) * 4);
		this.scale = Math.min(MOST_SCALE, Math.floor(most));
		this.worth = new Float64Array(demand.length);
		this.scarce = new Float64Array(kinds.length);
		this.enough = new Float64Array(kinds.length);
	}

	/** As pairs of rectangles joined; the searches for sets count their own. */
	get work(): number {
		return this.lp.work / LP_SHARE;
	}

	/** What a sheet of a kind costs, in the units of the worths. */
	costOf(kind: number): number {
		return this.target.costs[kind]! * this.scale + this.scarce[kind]!;
	}

	/** One more set that can be cut from one sheet. */
	add({ kind, types }: Pattern): void {
		const rows: number[] = [];
		const amounts: number[] = [];
		for (const type of types) {
			if (rows.at(-1) === type) amounts[amounts.length - 1]!++;
			else {
				rows.push(type);
				amounts.push(1);
			}
		}
		const limit = this.target.limited.indexOf(kind);
		if (limit >= 0) {
			rows.push(this.worth.length + limit);
			amounts.push(1);
		}
		const cost = this.target.costs[kind]!;
		this.lp.columns.push({ rows: Int32Array.from(rows), amounts: Int32Array.from(amounts), cost });
	}

	/** One linear program, one search from a first piece, or `most` work of a long one. */
	step(most: number): Reached {
		if (this.kind < 0) return this.begin();
		if (this.searching) return this.search(most);
		if (this.first < this.firsts) {
			const pricing = this.pricings[this.kind]!;
			pricing.search(this.first++, this.enough[this.kind]! + 1, 'best');
			this.begun = pricing.work;
			this.searching = true;
			return this.search(most);
		}
		if (this.kind + 1 < this.pricings.length) return this.turnTo(this.kind + 1);
		this.kind = -1;
		if (this.found) return 'working';
		if (this.unsure) return 'open';
		if (this.total > this.scale * this.target.goal) return 'proven';
		this.least = Math.ceil(this.total / this.scale);
		return 'short';
	}

	private begin(): Reached {
		if (this.scale < LEAST_SCALE || !this.lp.solve()) return 'open';
		if (!this.round()) return 'open';
		this.found = false;
		this.unsure = false;
		return this.turnTo(0);
	}

	private turnTo(kind: number): Reached {
		this.kind = kind;
		this.first = 0;
		this.firsts = this.pricings[kind]!.value(this.worth);
		return 'working';
	}

	private search(most: number): Reached {
		const pricing = this.pricings[this.kind]!;
		const over = pricing.run(most);
		const best = pricing.found.at(-1);
		const enough = best !== undefined || this.found; // there will be another round
		if (!over && (!enough || pricing.work - this.begun < EASY)) return 'working';
		pricing.stop();
		this.searching = false;
		if (best) this.add({ kind: this.kind, types: best });
		this.found ||= best !== undefined;
		this.unsure ||= pricing.cramped;
		return 'working';
	}

	/**
	 * Worths in whole numbers, and what each sheet may be worth by them; false when they grow too
	 * large to be exact.
	 */
	private round(): boolean {
		const { lp, scale, worth, scarce, enough } = this;
		const { costs, goal, limited } = this.target;
		const { demand, kinds } = this.model;
		this.total = 0;
		worth.forEach((_, t) => {
			worth[t] = Math.max(0, Math.floor(lp.duals[t]! * scale));
			this.total += worth[t] * demand[t]!;
		});
		limited.forEach((kind, i) => {
			scarce[kind] = Math.max(0, Math.ceil(-lp.duals[worth.length + i]! * scale));
			this.total -= scarce[kind] * kinds[kind]!.count;
		});
		costs.forEach((cost, kind) => {
			enough[kind] = Math.max(scale * cost, this.farley(cost)) + scarce[kind]!;
		});
		this.gap = scale * goal - this.total;
		return Math.abs(this.total) * Math.max(...costs) < 2 * EXACT;
	}

	/**
	 * Most that a sheet of this cost may be worth for all pieces to be worth less than they are
	 * where `goal` is spent.
	 */
	private farley(cost: number): number {
		if (cost === 0 || this.total <= 0) return 0;
		const { goal } = this.target;
		return goal === 0 ? Infinity : Math.floor((this.total * cost - 1) / goal);
	}
}
