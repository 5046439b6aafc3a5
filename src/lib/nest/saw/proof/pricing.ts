import { MOST_PIECES, type Patterns } from './patterns';
import type { SawModel } from '../model';

/*
 * Sets of pieces for one sheet that are worth much, when each piece has a worth of its own: an
 * exact search over the sets that can be cut together. A set grows by pieces of falling worth per
 * area, and is left as soon as the pieces that could still join, cut up to fill the area left to
 * the last bit, would not make it worth enough.
 */

/**
 * A set of pieces for one sheet: index of the kind of sheet, types in rising order, one entry per
 * piece.
 */
export interface Pattern {
	readonly kind: number;
	readonly types: Int32Array;
}

const PER_QUESTION = 4; // work of looking up a set, in pairs of rectangles joined

/** best: only what beats everything before; all: every set that is worth enough. */
export type Want = 'best' | 'all';

export class Pricing {
	/** Types that may be in a set, by falling worth per area. */
	private readonly order: number[] = [];
	/** The set, types in rising order, and how many it holds. */
	private readonly set = new Int32Array(MOST_PIECES + 1);
	private size = 0;
	/** Was the list of what may join the set put off? */
	private unlisted = false;
	/** Pieces of each type that are not in the set. */
	private readonly left: Int32Array;
	/**
	 * For each size of set: the types that may join it, how many they are, and which is being
	 * tried.
	 */
	private readonly joining: Int32Array[];
	private readonly count = new Int32Array(MOST_PIECES + 1);
	private readonly at = new Int32Array(MOST_PIECES + 1);
	/** For each size: worth of the set, area left, and where its last piece went in. */
	private readonly sum = new Float64Array(MOST_PIECES + 1);
	private readonly spare = new Float64Array(MOST_PIECES + 1);
	private readonly place = new Int32Array(MOST_PIECES + 1);
	private worth: Float64Array;
	private least = 0;
	private want: Want = 'best';
	private readonly area: number;
	private looks = 0;
	private worked = 0;
	/** Sets found since the start of the search; with 'best' the last is worth most. */
	readonly found: Int32Array[] = [];
	/** Did a set of MOST_PIECES have room for more? Then nothing is known about larger ones. */
	cramped = false;

	constructor(
		private readonly model: SawModel,
		private readonly patterns: Patterns,
		readonly kind: number,
	) {
		const { w, h } = model.kinds[kind]!;
		const n = model.types.length;
		this.area = w * h;
		this.left = new Int32Array(n);
		this.worth = new Float64Array(n);
		this.joining = Array.from({ length: MOST_PIECES + 1 }, () => new Int32Array(n));
	}

	/** Pairs of rectangles joined and pieces looked at since the start. */
	get work(): number {
		return this.worked + this.looks;
	}

	/**
	 * Takes other worths, whole numbers; returns how many first pieces there are to search from.
	 * Pieces worth nothing are in no set unless `worthless`.
	 */
	value(worth: Float64Array, worthless = false): number {
		const { area, demand } = this.model;
		this.worth = worth;
		this.order.length = 0;
		this.size = 0;
		this.left.set(demand);
		for (let t = 0; t < worth.length; t++)
			if ((worth[t]! > 0 || worthless) && demand[t]! > 0 && this.fitsWith(t)) this.order.push(t);
		this.order.sort((a, b) => worth[b]! / area[b]! - worth[a]! / area[a]! || a - b);
		return this.order.length;
	}

	/**
	 * Begins to look for sets worth `least` or more whose first piece, in the order of worth per
	 * area, is the one given.
	 */
	search(first: number, least: number, want: Want): void {
		this.least = least;
		this.want = want;
		this.found.length = 0;
		this.cramped = false;
		this.sum[0] = 0;
		this.spare[0] = this.area;
		this.at[0] = 0;
		this.count[0] = this.order.length - first;
		for (let i = first; i < this.order.length; i++) this.joining[0]![i - first] = this.order[i]!;
		if (this.hopeful()) this.push();
	}

	/** Goes on for about `most` work; true when the search is over. */
	run(most: number): boolean {
		const end = this.work + most;
		this.patterns.pauseAfter(most);
		while (this.size > 0) {
			if (this.work > end) return false;
			if (this.unlisted) this.followers();
			else if (this.hopeful()) this.push();
			else this.pop();
		}
		return true;
	}

	/** Leaves a search where it stands. */
	stop(): void {
		this.unlisted = false;
		while (this.size > 0) this.pop();
	}

	/** Could the type being tried, and those after it, still make the set worth enough? */
	private hopeful(): boolean {
		const { size } = this;
		const i = this.at[size]!;
		if (i >= this.count[size]!) return false;
		return this.sum[size]! + this.fill(size, i, this.spare[size]!) >= this.least;
	}

	/**
	 * Most worth that the types from `from` on could add if they could be cut up to fill the area.
	 */
	private fill(size: number, from: number, area: number): number {
		const list = this.joining[size]!;
		const count = this.count[size]!;
		let room = area;
		let worth = 0;
		let i = from;
		for (; i < count && room > 0; i++) {
			const type = list[i]!;
			const n = this.left[type]!;
			const one = this.model.area[type]!;
			worth += one * n <= room ? this.worth[type]! * n : (this.worth[type]! * room) / one;
			room -= one * n;
		}
		this.looks += 1 + i - from;
		return worth;
	}

	/** Puts the type being tried into the set, and lists what may follow. */
	private push(): void {
		const { size } = this;
		const type = this.joining[size]![this.at[size]!]!;
		this.sum[size + 1] = this.sum[size]! + this.worth[type]!;
		this.spare[size + 1] = this.spare[size]! - this.model.area[type]!;
		this.place[size + 1] = this.insert(type);
		this.left[type]!--;
		this.size++;
		if (this.sum[size + 1]! >= this.least) this.note();
		this.at[size + 1] = 0;
		this.followers();
	}

	private pop(): void {
		const type = this.set[this.place[this.size]!]!;
		this.takeOut(this.place[this.size]!);
		this.left[type]!++;
		this.size--;
		// the first piece is the only one of its search
		if (this.size > 0) this.at[this.size]!++;
	}

	private note(): void {
		if (this.want === 'best') {
			this.found.length = 0;
			this.least = this.sum[this.size]! + 1;
		}
		this.found.push(this.set.slice(0, this.size));
	}

	/**
	 * Types that can be cut together with the set, from the one put in last on: of one order, each
	 * set comes once.
	 */
	private followers(): void {
		const { size } = this;
		const before = size - 1;
		this.unlisted = false;
		this.count[size] = 0;
		const hope = this.sum[size]! + this.fill(before, this.at[before]!, this.spare[size]!);
		if (hope < this.least) return;
		const [list, next] = [this.joining[before]!, this.joining[size]!];
		let kept = 0;
		for (let i = this.at[before]!; i < this.count[before]!; i++) {
			const type = list[i]!;
			if (this.left[type] === 0 || !this.worthAsking(type)) continue;
			const fits = size < MOST_PIECES ? this.fitsWith(type) : false;
			this.cramped ||= size === MOST_PIECES;
			if (fits === null) {
				this.unlisted = true;
				return;
			}
			if (fits) next[kept++] = type;
		}
		this.count[size] = kept;
	}

	/**
	 * Could a set with one more of a type, and whatever would fill the area then left, be worth
	 * enough?
	 */
	private worthAsking(type: number): boolean {
		const { size } = this;
		const area = this.spare[size]! - this.model.area[type]!;
		if (area < 0) return false;
		const more = this.fill(size - 1, this.at[size - 1]!, area);
		return this.sum[size]! + this.worth[type]! + more >= this.least;
	}

	private fitsWith(type: number): boolean | null {
		const before = this.patterns.work;
		const place = this.insert(type);
		const fits = this.patterns.fits(this.set, this.size + 1);
		this.takeOut(place);
		this.worked += PER_QUESTION + this.patterns.work - before;
		return fits;
	}

	/**
	 * Puts a type into the set at its place in rising order, `size` not yet counting it; returns
	 * that place.
	 */
	private insert(type: number): number {
		const { set } = this;
		let i = this.size;
		for (; i > 0 && set[i - 1]! > type; i--) set[i] = set[i - 1]!;
		set[i] = type;
		return i;
	}

	private takeOut(place: number): void {
		this.set.copyWithin(place, place + 1);
	}
}
