import { proofTargetOf, boundBy, type SoughtTarget } from './target';
import type { Bound } from '../bound';
import { limitsOf } from '../cutting';
import { ExactCover } from './exact-cover';
import { Generation } from './generation';
import type { LayoutSnapshot } from '../search';
import { Listing } from './listing';
import { patternOf, treeOf } from './pattern-tree';
import { MOST_PIECES, Patterns } from './patterns';
import { Pricing, type Pattern } from './pricing';
import type { SawModel } from '../model';

/*
 * A proof that no layout a saw can cut is cheaper than a given one, where a sheet holds few pieces.
 * Cheaper is less money where kinds of sheet differ, else fewer sheets, and fewer owned ones where
 * nothing is paid for. First a linear program over all sets of pieces that one sheet holds; where
 * it falls short, a list of all sets that a cheaper layout could be made of, and a search through
 * all layouts of them. Stages and the reach of a fence only leave fewer layouts, so what is shown
 * here holds for every saw.
 */

/** open: not shown, for it would take too long; or there is a cheaper layout, see `cover`. */
export type ProofState = 'working' | 'proven' | 'open';

const SLICE = 150_000; // work of one step: about a hundredth of a second
const MOST_WORK = 400_000_000; // some 20 s
const MOST_BYTES = 100_000_000; // for fronts
const MOST_PARTS = 150_000; // some 200 bytes each
const MOST_TYPES = 150; // the linear program takes time with the square
/**
 * Pieces on a sheet of the layout, on average. Beyond, sets grow past what can be looked through:
 * better not begin.
 */
const MOST_PER_SHEET = 8;

/**
 * Shows, step by step, that a layout is the cheapest, or comes upon a cheaper one, or gives up.
 * Work and memory are capped, the same for the same layout on every machine.
 */
export class Proof {
	verdict: ProofState = 'working';
	/** Sets of pieces, one per sheet, that make a cheaper layout; null when none was met. */
	cover: readonly Pattern[] | null = null;
	private readonly target: SoughtTarget;
	private readonly patterns: readonly Patterns[];
	private readonly pricings: readonly Pricing[];
	private readonly generation: Generation;
	private listing: Listing;
	private search: ExactCover | null = null;
	private earlier = 0;
	private stage: (most: number) => void = (most) => this.generate(most);
	/** Are pieces worth nothing in the sets? */
	private complete = false;

	/** `kept`: the layout to be shown the cheapest; everything must be laid. */
	constructor(
		private readonly model: SawModel,
		kept: LayoutSnapshot,
	) {
		const { kinds } = model;
		this.target = proofTargetOf(model, kept);
		const bySize = new Map<string, Patterns>();
		this.patterns = kinds.map(({ w, h }) => {
			const same = bySize.get(`${w} ${h}`) ?? new Patterns(model, w, h);
			bySize.set(`${w} ${h}`, same);
			return same;
		});
		this.pricings = kinds.map((_, i) => new Pricing(model, this.patterns[i]!, i));
		this.generation = new Generation(model, this.target, this.pricings);
		this.listing = new Listing(this.generation, this.pricings, false, MOST_PARTS);
		if (!suits(model, kept)) this.verdict = 'open';
		else for (const tree of kept.trees) this.generation.add(patternOf(tree));
	}

	/**
	 * Pairs of rectangles joined and the like, since the start: 15 to 25 millions take a second.
	 */
	get work(): number {
		const searched = this.earlier + this.generation.work + (this.search?.work ?? 0);
		return this.pricings.reduce((sum, p) => sum + p.work, searched);
	}

	/** The bound known, or a better one where the linear program alone gives it. */
	bound(known: Bound): Bound {
		return boundBy(this.model, this.target, this.generation.least, known);
	}

	/** Goes on for about a hundredth of a second. */
	step(): void {
		const end = this.work + SLICE;
		while (this.verdict === 'working' && this.work < end) this.stage(end - this.work);
		if (this.verdict !== 'working') return;
		const bytes = [...new Set(this.patterns)].reduce((sum, p) => sum + p.bytes, 0);
		if (bytes > MOST_BYTES || this.work > MOST_WORK) this.verdict = 'open';
	}

	/**
	 * The cheaper layout met; null when there is none, or when the limits of the saw do not allow
	 * the cuts found for it.
	 */
	laid(): LayoutSnapshot | null {
		if (!this.cover) return null;
		const { kinds, problem, types } = this.model;
		const trees = this.cover.map((p) => treeOf(this.model, this.patterns[p.kind]!, p));
		const allowed = limitsOf(problem);
		if (allowed && !trees.every((tree) => allowed(tree))) return null;
		const cost = trees.reduce((sum, tree) => sum + kinds[tree.kind]!.cost, 0);
		return { trees, out: new Int32Array(types.length), cost, missing: 0 };
	}

	private generate(most: number): void {
		const reached = this.generation.step(most);
		if (reached === 'short') this.stage = (more) => this.list(more);
		else this.verdict = reached;
	}

	private list(most: number): void {
		const listed = this.listing.step(most);
		if (listed === 'open') this.verdict = 'open';
		if (listed === 'whole') this.stage = this.searching();
	}

	/** Ready to search for covers with the sets listed. */
	private searching(): (most: number) => void {
		const { worth, gap } = this.generation;
		const { demand, kinds } = this.model;
		const need = demand.map((n, type) => (this.complete || worth[type]! > 0 ? n : 0));
		const { costs, goal } = this.target;
		const means = { counts: kinds.map((k) => k.count), costs, money: goal, loss: gap };
		// with nothing to be covered, all of it is to be found out with the worthless pieces
		if (!need.some((n) => n > 0)) return () => this.relist();
		const search = (this.search = new ExactCover(this.listing.parts, need, means));
		return (more) => this.searchOn(search, more);
	}

	private searchOn(search: ExactCover, most: number): void {
		const answer = search.step(most);
		if (answer === 'none') this.verdict = 'proven';
		if (answer !== 'found') return;
		this.cover = this.completed(search.cover);
		if (this.cover) this.verdict = 'open';
		else this.relist();
	}

	/**
	 * A cover of the pieces worth something does not settle it where the others find no room: all
	 * over with all of them.
	 */
	private relist(): void {
		this.complete = true;
		this.earlier += this.search?.work ?? 0;
		this.search = null;
		this.listing = new Listing(this.generation, this.pricings, true, MOST_PARTS);
		this.stage = (most) => this.list(most);
	}

	/**
	 * The pieces worth nothing are in no set yet: each joins the first that has room; null when one
	 * finds none.
	 */
	private completed(cover: readonly Pattern[]): readonly Pattern[] | null {
		const { demand } = this.model;
		if (this.complete) return cover;
		const sets = cover.map(({ kind, types }) => ({ kind, types }));
		const worthless = [...demand].flatMap((n, type) =>
			this.generation.worth[type]! > 0 ? [] : Array<number>(n).fill(type),
		);
		for (const type of worthless) {
			const room = sets.find((set) => this.takes(set, type));
			if (!room) return null;
			room.types = withOne(room.types, type);
		}
		return sets;
	}

	private takes({ kind, types }: Pattern, type: number): boolean {
		if (types.length === MOST_PIECES) return false;
		const patterns = this.patterns[kind]!;
		patterns.pauseAfter(Infinity);
		return patterns.fits(withOne(types, type), types.length + 1) === true;
	}
}

function withOne(types: Int32Array, type: number): Int32Array {
	return Int32Array.of(...types, type).sort();
}

/** Is it worth a try? Pairs of tapers are laid as one, which the sets here do not know. */
function suits(model: SawModel, { missing, trees }: LayoutSnapshot): boolean {
	const pieces = model.demand.reduce((sum, n) => sum + n, 0);
	return (
		missing === 0 &&
		!model.paired &&
		trees.length > 0 &&
		model.types.length <= MOST_TYPES &&
		pieces <= MOST_PER_SHEET * trees.length
	);
}
