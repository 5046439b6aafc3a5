import { areaBound, boundOf } from './bound';
import { limitsOf } from './cutting';
import {
	Finishing,
	better,
	firstLayout,
	moreFirstLayouts,
	RuinAndRecreate,
	type LayoutSnapshot,
	searchState,
	type SearchState,
} from './search';
import { Proof } from './proof';
import { random } from '../random';
import { boundMet, meetsBound, sawAnswer } from './answer';
import { sawModel, type SawModel } from './model';
import type { Budget, SawProblem, Search, SheetsAnswer } from '../types';

/** Slots looked at that make one unit of effort. */
const WORK_PER_EFFORT = 300;
const SHOW_EVERY = 500; // units of effort between two reports
const FIRST_SHARE = 0.05; // of the budget for layouts from nothing
// units of effort: hundreds of layouts, and more of them hardly find a better one
const FIRST_MOST = 4_000;
const PROOF_AFTER = 0.25; // of the budget: what is soon found is found by then
const PROOF_SHARE = 0.25;
const LAST_SHARE = 0.1; // of the budget for offcuts, fence settings and cuts
const LAST_MOST = 10_000; // units of effort kept back for that
// of the budget for the same where the search for a cheaper layout ended before its time
const SAVED_SHARE = 0.2;

/**
 * Lays pieces on sheets so that a saw can cut them, every cut from edge to edge. Money first, then
 * the rank of the material used (offcuts before owned sheets before bought ones), then the largest
 * offcut, fewer fence settings and fewer cuts. Yields a full layout at once, then the best so far;
 * the same problem, seed and effort give the same answer, whatever order the pieces are listed in.
 */
export function* nestSaw(problem: SawProblem, budget: Budget): Search<SheetsAnswer> {
	const search = new SawSearch(problem, budget.seed);
	const end = budget.effort * WORK_PER_EFFORT;
	const reserve = Math.min(end * LAST_SHARE, LAST_MOST * WORK_PER_EFFORT);
	yield search.report();
	search.bind();
	search.startAnew(Math.min(end * FIRST_SHARE, FIRST_MOST * WORK_PER_EFFORT));
	if (!search.settled && search.state.work < end) {
		const ruinAndRecreate = new RuinAndRecreate(search.state, search.best);
		yield* search.improve(ruinAndRecreate, end * PROOF_AFTER);
		yield* search.prove(search.state.work + end * PROOF_SHARE);
		yield* search.improve(
			search.best === ruinAndRecreate.best
				? ruinAndRecreate
				: new RuinAndRecreate(search.state, search.best),
			end - reserve,
		);
	}
	yield* search.finish(search.state.work + (search.settled ? end * SAVED_SHARE : reserve));
	return search.answer();
}

interface Report {
	readonly best: SheetsAnswer;
	readonly effort: number;
}

type Reports = Generator<Report, void, void>;

/** A search on its way: the best layout so far and what is known about it. */
class SawSearch {
	readonly state: SearchState;
	best: LayoutSnapshot;
	private readonly model: SawModel;
	private bound: SheetsAnswer['bound'];
	// Put in the shop's terms only when it is shown: a search betters its layout far more often
	// than that.
	private shown: { readonly kept: LayoutSnapshot; readonly answer: SheetsAnswer } | null = null;
	private reported = 0;

	constructor(problem: SawProblem, seed: number) {
		this.model = sawModel(problem);
		this.bound = areaBound(this.model);
		this.state = searchState(this.model, random(seed), limitsOf(problem));
		this.best = firstLayout(this.state);
	}

	/** Everything that can be laid is laid, and nothing cheaper exists. */
	get settled(): boolean {
		return this.best.missing === 0 && meetsBound(this.model, this.best, this.bound);
	}

	answer(): SheetsAnswer {
		const effort = Math.round(this.state.work / WORK_PER_EFFORT);
		if (this.shown?.kept !== this.best)
			this.shown = {
				kept: this.best,
				answer: sawAnswer(this.model, this.best, this.bound, effort),
			};
		return { ...this.shown.answer, effort };
	}

	report(): Report {
		this.reported = this.state.work;
		const best = this.answer();
		return { best, effort: best.effort };
	}

	private know(bound: SheetsAnswer['bound']): void {
		this.bound = bound;
		this.shown = null;
	}

	/** Works out the bound that takes longer than the first layout. */
	bind(): void {
		this.know(boundOf(this.model));
	}

	/** Layouts from nothing, in other orders, until so much work is done. */
	startAnew(work: number): void {
		const enough = (): boolean => this.settled;
		for (const kept of moreFirstLayouts(this.state, this.best, work, enough)) this.best = kept;
	}

	private *due(): Reports {
		if (this.state.work - this.reported >= SHOW_EVERY * WORK_PER_EFFORT) yield this.report();
	}

	/** Looks for a cheaper layout until so much work is done in all. */
	*improve(ruinAndRecreate: RuinAndRecreate, until: number): Reports {
		while (this.state.work < until && !this.settled) {
			if (ruinAndRecreate.step()) this.best = ruinAndRecreate.best;
			yield* this.due();
		}
	}

	/**
	 * Tries to show that nothing is cheaper; a cheaper layout met on the way is taken, and tried in
	 * its turn.
	 */
	*prove(until: number): Reports {
		let tried: LayoutSnapshot | null = null;
		while (tried !== this.best && !this.settled && this.state.work < until) {
			tried = this.best;
			const proof = new Proof(this.model, this.best);
			yield* this.carry(proof, until);
			const laid = proof.laid();
			if (laid && better(laid, this.best)) this.best = laid;
			const proven = proof.verdict === 'proven';
			this.know(proven ? boundMet(this.model, this.best, this.bound) : proof.bound(this.bound));
		}
	}

	private *carry(proof: Proof, until: number): Reports {
		while (this.state.work < until && proof.verdict === 'working') {
			const before = proof.work;
			proof.step();
			this.state.work += proof.work - before;
			yield* this.due();
		}
	}

	/** Larger offcuts, fewer fence settings and cuts at no more cost. */
	*finish(until: number): Reports {
		const finishing = new Finishing(this.state, this.best);
		while (this.state.work < until && !finishing.done) {
			if (finishing.step()) this.best = finishing.best;
			yield* this.due();
		}
	}
}
