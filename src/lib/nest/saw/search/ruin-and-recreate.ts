import { better } from './first-layout';
import { PartialLayout, type LayoutSnapshot } from './partial-layout';
import type { SearchState } from './open-sheet';
import { anyOpening, cheapestOpening, drawOrder, makePairs, recreate } from './recreate';
import { ruin, type Tools } from './ruin';

/*
 * Ruin and recreate towards a goal. The goal is a cost one below the best: sheets are dropped until
 * it is met, and their pieces are out. Each step takes a part of the layout off and lays everything
 * that is out anew; the weight of what stays out is the cost of the state. Late acceptance (E. K.
 * Burke, Y. Bykov, "The late acceptance hill-climbing heuristic", EJOR 258, 2017) and weights that
 * rise for what will not go in carry it over the hills.
 */

// states looked back to by late acceptance; with several kinds of sheet costs are finely graded,
// and a short memory does better
const MEMORY = 200;
const MEMORY_SEVERAL = 50;
const RAISE_EVERY = 200; // steps between two rises of the weights
const RAISE = 0.02;
/*
 * Slots looked at without reaching the goal, for each hundred pieces, after which a search starts
 * over. Most searches that end well do so sooner, and one that has gone astray may never end (C. P.
 * Gomes, B. Selman, N. Crato, H. Kautz, "Heavy-tailed phenomena in satisfiability and constraint
 * satisfaction problems", J. Automated Reasoning 24, 2000).
 */
const PATIENCE = 45_000_000;
const MANY = 8; // pieces per sheet, from where a sheet taken apart whole is a long way to come back
const PAIR_CHANCE = 0.7;
const SPARE = 0.5; // of the area that spare cost would buy
// sheets in work at a time: with more of them a step mostly looks at sheets it never changes
const WINDOW = 40;
const WINDOW_STEPS = 3000;

export class RuinAndRecreate {
	private readonly partial: PartialLayout;
	private readonly weight: Float64Array;
	private readonly history: Float64Array;
	private limit = Infinity;
	private begun = 0;
	private readonly patience: number;
	private steps = 0;
	private now = 0;
	private tools: Tools;
	/** Area that one unit of cost under the limit is worth to pieces still out. */
	private readonly spare: number;
	best: LayoutSnapshot;

	constructor(
		private readonly search: SearchState,
		first: LayoutSnapshot,
	) {
		this.partial = new PartialLayout(search);
		this.weight = search.model.area.slice();
		this.best = first;
		const pieces = search.model.demand.reduce((a, b) => a + b, 0);
		this.patience = PATIENCE * Math.max(1, pieces / 100);
		const perSheet = pieces / Math.max(1, first.trees.length);
		const several = search.model.kinds.length > 1;
		this.history = new Float64Array(several ? MEMORY_SEVERAL : MEMORY);
		this.tools = {
			empty: several ? 0.2 : perSheet > MANY ? 0.001 : 0.15,
			swap: 0.1,
			most: 14,
			leaves: new Int32Array(pieces + 1),
		};
		const rate = search.model.kinds.reduce((m, k) => Math.min(m, k.cost / (k.w * k.h)), Infinity);
		this.spare = several ? SPARE / rate : 0;
		search.blinkEvery = 50;
		search.blink = 25;
		this.setGoal();
	}

	/**
	 * Starts from the best layout with the next goal: something less in cost, or fewer pieces left
	 * over.
	 */
	private setGoal(): void {
		const { partial, best } = this;
		this.begun = this.search.work;
		partial.restore(best);
		partial.mark();
		this.limit = best.missing > 0 ? Infinity : best.cost - 1;
		while (partial.cost > this.limit) partial.drop(this.leastFilled(), this.tools.leaves);
		makePairs(partial, PAIR_CHANCE, this.search.dice);
		recreate(partial, drawOrder(partial), this.limit, cheapestOpening(0));
		partial.commit();
		this.weight.set(this.search.model.area);
		this.settle();
		partial.park(WINDOW);
	}

	/** The sheet whose material is used worst for its cost. */
	private leastFilled(): number {
		let index = 0;
		let least = Infinity;
		this.partial.sheets.forEach(({ tree }, i) => {
			const filled = tree.area / this.search.model.kinds[tree.kind]!.cost;
			if (filled >= least) return;
			least = filled;
			index = i;
		});
		return index;
	}

	private weigh(): number {
		let sum = this.partial.cost * this.spare;
		for (const type of this.partial.outTypes) sum += this.partial.out[type]! * this.weight[type]!;
		return sum;
	}

	private settle(): void {
		this.now = this.weigh();
		this.history.fill(this.now);
	}

	/** One step; true when it reached the goal, and `best` is new. */
	step(): boolean {
		const { partial, search } = this;
		if (this.steps % WINDOW_STEPS === 0) partial.park(WINDOW);
		partial.mark();
		ruin(partial, this.tools, this.limit);
		makePairs(partial, PAIR_CHANCE, search.dice);
		const order = drawOrder(partial);
		recreate(partial, order, this.limit, anyOpening);
		if (search.model.kinds.length > 1) this.spendSaving();
		search.work += 20 + partial.sheets.length;
		const reached = this.reached();
		if (reached) {
			partial.commit();
			partial.unpark();
			this.best = partial.keep();
			this.setGoal();
			return true;
		}
		this.judge();
		return false;
	}

	/** Shrunk sheets save cost, and the saving may open room for what is still out. */
	private spendSaving(): void {
		const { partial } = this;
		const before = partial.cost;
		partial.shrink();
		if (partial.cost < before && partial.outTypes.length > 0)
			recreate(partial, drawOrder(partial), this.limit, anyOpening);
	}

	private reached(): boolean {
		const { partial, best } = this;
		if (partial.outTypes.length === 0) return best.missing > 0 || partial.cost < best.cost;
		return (
			best.missing > 0 && better({ ...best, cost: partial.cost, missing: partial.missing() }, best)
		);
	}

	private judge(): void {
		const { partial, history } = this;
		const then = this.weigh();
		const at = this.steps++ % history.length;
		if (then <= this.now || then <= history[at]!) {
			partial.commit();
			this.now = then;
		} else partial.undo();
		history[at] = this.now;
		if (this.steps % RAISE_EVERY === 0) this.raise();
	}

	/**
	 * What stays out for long grows heavier, until something else has to give way; what never goes
	 * in is begun anew.
	 */
	private raise(): void {
		const { area } = this.search.model;
		for (const type of this.partial.outTypes) this.weight[type]! += RAISE * area[type]!;
		if (this.search.work - this.begun > this.patience) this.setGoal();
		else this.settle();
	}
}
