/*
 * Can pieces be parted into some of the given sets, so that each piece is in one of them, and the
 * sets together cost and lose no more than given sums? An exact search: the type that fewest sets
 * would cover is covered in every way, one after another.
 */

/**
 * A set of pieces, types in rising order, one entry per piece; its kind of sheet; what that costs
 * above their worth.
 */
export interface CoverSet {
	readonly types: Int32Array;
	readonly loss: number;
	readonly kind: number;
}

/** What a cover may use: sheets of each kind, and at their cost so much money; and so much loss. */
export interface CoverBudget {
	readonly counts: readonly number[];
	readonly costs: readonly number[];
	readonly money: number;
	readonly loss: number;
}

/** none: there is no cover left. */
export type CoverState = 'working' | 'found' | 'none';

const ROUNDING = 0.5; // losses are whole numbers, sums of their shares are not

/**
 * A state of the search: sets that may still be used, of which the first `ways` cover the type it
 * branches on.
 */
interface Level {
	readonly list: Int32Array;
	length: number;
	ways: number;
	at: number;
	/** Loss still allowed. */
	loss: number;
}

export class ExactCover {
	private readonly levels: Level[] = [];
	private depth = -1;
	/** Pieces of each type not covered yet, and how many in all. */
	private readonly left: Int32Array;
	private pieces: number;
	private readonly used: Int32Array;
	private money: number;
	/**
	 * For each type, over the sets that may still be used: how many cover it, and the least loss
	 * per piece.
	 */
	private readonly covering: Int32Array;
	private readonly share: Float64Array;
	/** Entries of sets looked at since the start. */
	work = 0;

	/** `need`: pieces of each type, one at least. */
	constructor(
		private readonly parts: readonly CoverSet[],
		need: ArrayLike<number>,
		private readonly means: CoverBudget,
	) {
		this.left = Int32Array.from(need);
		this.pieces = this.left.reduce((sum, n) => sum + n, 0);
		this.used = new Int32Array(means.counts.length);
		this.money = means.money;
		this.covering = new Int32Array(need.length);
		this.share = new Float64Array(need.length);
		this.enter(Int32Array.from(parts.keys()), 0, parts.length, means.loss);
	}

	/** The sets of the cover found last. */
	get cover(): CoverSet[] {
		return this.levels.slice(0, this.depth).map((l) => this.parts[l.list[l.at]!]!);
	}

	/** Goes on for about `most` work, or to the next cover. */
	step(most: number): CoverState {
		const end = this.work + most;
		while (this.depth >= 0) {
			const level = this.levels[this.depth]!;
			if (level.at >= level.ways) this.leave();
			else {
				this.take(level);
				if (this.pieces === 0) return 'found';
			}
			if (this.work > end) return 'working';
		}
		return 'none';
	}

	/**
	 * The set being tried joins the cover. Sets tried before it stay out: all covers with them have
	 * been looked at.
	 */
	private take(level: Level): void {
		const { types, loss, kind } = this.parts[level.list[level.at]!]!;
		for (const type of types) this.left[type]!--;
		this.pieces -= types.length;
		this.used[kind]!++;
		this.money -= this.means.costs[kind]!;
		this.enter(level.list, level.at, level.length, level.loss - loss);
	}

	private leave(): void {
		this.depth--;
		if (this.depth < 0) return;
		const level = this.levels[this.depth]!;
		const { types, kind } = this.parts[level.list[level.at++]!]!;
		for (const type of types) this.left[type]!++;
		this.pieces += types.length;
		this.used[kind]!--;
		this.money += this.means.costs[kind]!;
	}

	/** A new level with the sets of a list, from `from` on, that still fit. */
	private enter(list: Int32Array, from: number, to: number, loss: number): void {
		this.depth++;
		let level = this.levels[this.depth];
		if (!level || level.list.length < to - from) {
			level = { list: new Int32Array(to - from), length: 0, ways: 0, at: 0, loss };
			this.levels[this.depth] = level;
		}
		let kept = 0;
		this.covering.fill(0);
		this.share.fill(Infinity);
		for (let i = from; i < to; i++) {
			const part = this.parts[list[i]!]!;
			if (part.loss > loss || !this.usable(part)) continue;
			level.list[kept++] = list[i]!;
			this.count(part);
		}
		level.length = kept;
		level.loss = loss;
		level.at = 0;
		level.ways = this.pieces === 0 ? 0 : this.branch(level);
	}

	private usable({ types, kind }: CoverSet): boolean {
		const { counts, costs } = this.means;
		if (this.used[kind]! >= counts[kind]! || costs[kind]! > this.money) return false;
		let same = 0;
		for (let i = 0; i < types.length; i++) {
			same = i > 0 && types[i] === types[i - 1] ? same + 1 : 1;
			if (this.left[types[i]!]! >= same) continue;
			this.work += i + 1;
			return false;
		}
		this.work += types.length;
		return true;
	}

	private count({ types, loss }: CoverSet): void {
		const share = loss / types.length;
		for (let i = 0; i < types.length; i++) {
			const type = types[i]!;
			if (i === 0 || types[i - 1] !== type) this.covering[type]!++;
			if (share < this.share[type]!) this.share[type] = share;
		}
		this.work += types.length;
	}

	/**
	 * Moves the sets that cover the type with fewest of them to the front; 0 when what is left
	 * would lose too much.
	 */
	private branch(level: Level): number {
		let type = -1;
		let needed = 0;
		for (let t = 0; t < this.left.length; t++) {
			if (this.left[t] === 0) continue;
			needed += this.left[t]! * this.share[t]!;
			if (type < 0 || this.covering[t]! < this.covering[type]!) type = t;
		}
		if (needed > level.loss + ROUNDING) return 0;
		let ways = 0;
		for (let i = 0; i < level.length; i++) {
			const part = level.list[i]!;
			if (!this.parts[part]!.types.includes(type)) continue;
			level.list[i] = level.list[ways]!;
			level.list[ways++] = part;
		}
		return ways;
	}
}
