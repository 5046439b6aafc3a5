import type { SawModel } from '../model';
import { SetTable } from './set-table';

/*
 * Which pieces can be cut together from one sheet, decided exactly. A set of pieces is a list of
 * types in rising order, one entry per piece; its front holds the smallest rectangles, none
 * narrower and shorter than another, that it can be cut from. Whatever a saw cuts falls apart at
 * its first cut into two sets with fronts of their own, so a front is made from the fronts of all
 * ways to part the set in two. Stages and fence limits are left out: what is refused here no saw
 * can do.
 */

/** Pieces in one set at most: the ways to part it double with each. */
export const MOST_PIECES = 12;

const KEY_BITS = 52; // a set written as one whole number that a double holds
const FIRST_WORDS = 1 << 12;
const CANNOT = 0; // place of the front of what cannot be cut
const UNKNOWN = -1;
const PER_WAY = 3; // work of looking up the two parts of a set, in pairs of rectangles joined

/**
 * A set parted in two: where each part lies while a front is made. One per size of set, for smaller
 * ones are made on the way.
 */
interface Parting {
	readonly one: Int32Array;
	readonly two: Int32Array;
	readonly front: Front;
}

/**
 * Fronts of sets of pieces on sheets no larger than width x height, both with one kerf added (see
 * saw-model).
 */
export class Patterns {
	/**
	 * Where in `store` the front of each set made so far begins; sets too long for a number apart.
	 */
	private readonly made = new SetTable();
	private readonly long = new Map<string, number>();
	/** Fronts one after another: how many rectangles, then w, h of each. */
	private store = new Int32Array(FIRST_WORDS);
	private used = 1;
	private readonly partings: Parting[];
	private readonly base: number;
	private readonly short: number;
	private readonly room: number;
	/** Half the pairs of rectangles joined since the start, and the like. */
	work = 0;
	private pauseAt = Infinity;
	private atCall = 0;

	constructor(
		private readonly model: SawModel,
		width: number,
		height: number,
	) {
		this.base = model.types.length + 1;
		this.short = Math.floor(KEY_BITS / Math.log2(this.base));
		this.room = width * height;
		this.partings = Array.from({ length: MOST_PIECES + 1 }, (_, size) => ({
			one: new Int32Array(size),
			two: new Int32Array(size),
			front: new Front(width, height),
		}));
	}

	/** Sets whose fronts are held. */
	get sets(): number {
		return this.made.size + this.long.size;
	}

	/** Bytes that the fronts take. */
	get bytes(): number {
		return this.store.byteLength + 36 * this.made.size + 200 * this.long.size;
	}

	/** From now on a question that leads past so much more work is put off. */
	pauseAfter(work: number): void {
		this.pauseAt = this.work + work;
	}

	/**
	 * Can these pieces be cut from one sheet? `types` in rising order, the first `count` of them,
	 * MOST_PIECES at most. Null when the work allowed is used up: asked again, it goes on from the
	 * fronts made meanwhile, at least one each time.
	 */
	fits(types: Int32Array, count: number): boolean | null {
		this.atCall = this.sets;
		const at = this.front(types, count);
		return at === UNKNOWN ? null : at !== CANNOT;
	}

	/** The smallest rectangles of a set: w, h, w, h and so on; empty when no sheet holds it. */
	rectangles(types: Int32Array): Int32Array {
		this.pauseAt = Infinity;
		const at = this.front(types, types.length);
		return this.store.slice(at + 1, at + 1 + 2 * this.store[at]!);
	}

	private front(types: Int32Array, count: number): number {
		if (count > this.short) return this.longFront(types, count);
		let key = 0;
		for (let i = 0; i < count; i++) key = key * this.base + types[i]! + 1;
		const known = this.made.get(key);
		if (known !== UNKNOWN) return known;
		const at = count === 1 ? this.single(types[0]!) : this.parted(types, count);
		if (at !== UNKNOWN) this.made.add(key, at);
		return at;
	}

	private longFront(types: Int32Array, count: number): number {
		const key = types.subarray(0, count).join();
		const known = this.long.get(key);
		if (known !== undefined) return known;
		const at = this.parted(types, count);
		if (at !== UNKNOWN) this.long.set(key, at);
		return at;
	}

	private single(type: number): number {
		const { w, h, turns } = this.model;
		const { front } = this.partings[1]!;
		front.clear();
		front.offer(w[type]!, h[type]!);
		if (turns[type]) front.offer(h[type]!, w[type]!);
		return this.keep(front);
	}

	/**
	 * Every way to part the set in two; the last piece stays in the first part, so that no way
	 * comes twice.
	 */
	private parted(types: Int32Array, count: number): number {
		if (this.areaOf(types, count) > this.room) return CANNOT;
		if (this.work > this.pauseAt && this.sets > this.atCall) return UNKNOWN;
		const { one, two, front } = this.partings[count]!;
		const twins = twinsOf(types, count - 1);
		const whole = (1 << (count - 1)) - 1;
		front.clear();
		for (let mask = 0; mask < whole; mask++) {
			// of equal pieces the first come first: any other choice is the same two parts
			if (twins & mask & ~(mask << 1)) continue;
			let a = 0;
			let b = 0;
			for (let i = 0; i < count - 1; i++)
				if (mask & (1 << i)) one[a++] = types[i]!;
				else two[b++] = types[i]!;
			one[a++] = types[count - 1]!;
			const rest = this.front(two, b);
			const first = rest > CANNOT ? this.front(one, a) : rest;
			if (first <= CANNOT) return first; // a set is no easier to cut than a part of it
			front.join(this.store, first, rest);
			this.work += PER_WAY + ((this.store[first]! * this.store[rest]!) >> 1);
		}
		return this.keep(front);
	}

	private areaOf(types: Int32Array, count: number): number {
		let sum = 0;
		for (let i = 0; i < count; i++) sum += this.model.area[types[i]!]!;
		return sum;
	}

	private keep({ all }: Front): number {
		if (all.length === 0) return CANNOT;
		const at = this.used;
		this.used += all.length + 1;
		if (this.used > this.store.length) {
			const larger = new Int32Array(this.store.length * 2);
			larger.set(this.store);
			this.store = larger;
		}
		this.store[at] = all.length >> 1;
		this.store.set(all, at + 1);
		return at;
	}
}

/** One bit for each piece that equals the one before it. */
function twinsOf(types: Int32Array, count: number): number {
	let twins = 0;
	for (let i = 1; i < count; i++) if (types[i] === types[i - 1]) twins |= 1 << i;
	return twins;
}

/** Rectangles within a sheet, none of which holds another. */
class Front {
	/** w, h, w, h and so on. */
	readonly all: number[] = [];

	constructor(
		private readonly width: number,
		private readonly height: number,
	) {}

	clear(): void {
		this.all.length = 0;
	}

	/** Each rectangle of one front beside and above each of another. */
	join(store: Int32Array, one: number, two: number): void {
		const endOne = one + 2 * store[one]!;
		const endTwo = two + 2 * store[two]!;
		for (let i = one + 1; i <= endOne; i += 2) {
			const w = store[i]!;
			const h = store[i + 1]!;
			for (let j = two + 1; j <= endTwo; j += 2) {
				const v = store[j]!;
				const g = store[j + 1]!;
				if (w + v <= this.width) this.offer(w + v, h > g ? h : g);
				if (h + g <= this.height) this.offer(w > v ? w : v, h + g);
			}
		}
	}

	offer(w: number, h: number): void {
		if (w > this.width || h > this.height) return;
		const { all } = this;
		for (let i = 0; i < all.length; i += 2) if (all[i]! <= w && all[i + 1]! <= h) return;
		let kept = 0;
		for (let i = 0; i < all.length; i += 2) {
			if (all[i]! >= w && all[i + 1]! >= h) continue;
			all[kept++] = all[i]!;
			all[kept++] = all[i + 1]!;
		}
		all.length = kept;
		all.push(w, h);
	}
}
