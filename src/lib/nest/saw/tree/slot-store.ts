/*
 * The slots of one sheet, as numbers in two arrays, and what each would cost a piece. See slots.ts
 * for what a slot is.
 */

export const APPEND = 0; // beyond the last child of a node
export const WRAP = 1; // beyond a leaf, inside its parent's strip
export const GROUP = 2; // beyond the lowest children of a node, put together
export const ROOF = 3; // beyond the whole root
export const EMPTY = 4; // the first piece

const FIELDS = 10;
// word 0 is the kind of slot
const NODE = 1;
const COUNT = 2; // children in a group
const ALONG_X = 3; // 1: the piece goes beyond along x
const NATURAL_W = 4;
const NATURAL_H = 5;
const BASE = 6; // worth of the leftover that the slot uses up
const GROW_W = 7; // slack of the ancestor that a wider piece would eat, and how long that slack is
const GROW_W_LONG = 8;
// the same for a higher piece follows in the next two words of a second array, to keep this one
// small
const GROW_H = 0;
const GROW_H_LONG = 1;

export const squared = (a: number): number => (a > 0 ? a * a : 0);

/** A slot as the one that fills it needs to know it. */
export interface Slot {
	readonly kind: number;
	readonly node: number;
	readonly count: number;
	readonly alongX: boolean;
}

export class SlotStore {
	count = 0;
	/** Largest room along either axis, whatever its other side. */
	widest = 0;
	highest = 0;
	/**
	 * Room of each slot, w then h: an array of its own, for most slots are turned down on their
	 * room alone.
	 */
	rooms = new Float64Array(2 * 64);
	private slots = new Float64Array(FIELDS * 64);
	private grows = new Float64Array(2 * 64);
	private isX = true; // of the slot being told
	/** Smallest width and height of any piece asked about: a smaller room is no slot. */
	protected leastW = 0;
	protected leastH = 0;

	protected empty(leastW: number, leastH: number): void {
		this.count = 0;
		this.widest = 0;
		this.highest = 0;
		this.leastW = leastW;
		this.leastH = leastH;
	}

	/** Does the list, as it was made, leave out no room for a piece as small as this? */
	holdsFor(leastW: number, leastH: number): boolean {
		return this.leastW <= leastW && this.leastH <= leastH;
	}

	slot(index: number): Slot {
		const at = index * FIELDS;
		const s = this.slots;
		return {
			kind: s[at]!,
			node: s[at + NODE]!,
			count: s[at + COUNT]!,
			alongX: s[at + ALONG_X] === 1,
		};
	}

	/**
	 * One more slot, told in four steps: what it is, its room, its natural room, and the slack
	 * beyond. Sizes are along x where `isX`, else along y, and across that. A slot of its own axis
	 * takes a piece beyond what is there along it; wraps and groups take one beyond across it. The
	 * room has been found large enough.
	 */
	protected begin(isX: boolean, kind: number, node: number, count: number): void {
		if ((this.count + 1) * FIELDS > this.slots.length) this.enlarge();
		const s = this.slots;
		const at = this.count * FIELDS;
		this.isX = isX;
		this.count++;
		s[at] = kind;
		s[at + NODE] = node;
		s[at + COUNT] = count;
		s[at + ALONG_X] = isX === (kind === WRAP || kind === GROUP) ? 0 : 1;
	}

	/** How large a piece may be. */
	protected room(along: number, across: number): void {
		const pair = (this.count - 1) * 2;
		const w = this.isX ? along : across;
		const h = this.isX ? across : along;
		this.rooms[pair] = w;
		this.rooms[pair + 1] = h;
		if (w > this.widest) this.widest = w;
		if (h > this.highest) this.highest = h;
	}

	/** Leftover that is the slot's own, and the worth of the leftover it uses up. */
	protected natural(along: number, across: number, base: number): void {
		const s = this.slots;
		const at = (this.count - 1) * FIELDS;
		s[at + NATURAL_W] = this.isX ? along : across;
		s[at + NATURAL_H] = this.isX ? across : along;
		s[at + BASE] = base;
	}

	/**
	 * Slack of the ancestors that a longer piece, and one larger across, would eat; and how long
	 * that slack is.
	 */
	protected beyondIt(grow: number, long: number, growAcross: number, longAcross: number): void {
		const { slots: s, grows, isX } = this;
		const at = (this.count - 1) * FIELDS;
		const pair = (this.count - 1) * 2;
		s[at + GROW_W] = isX ? grow : growAcross;
		s[at + GROW_W_LONG] = isX ? long : longAcross;
		grows[pair + GROW_H] = isX ? growAcross : grow;
		grows[pair + GROW_H_LONG] = isX ? longAcross : long;
	}

	private enlarge(): void {
		const slots = new Float64Array(this.slots.length * 2);
		slots.set(this.slots);
		this.slots = slots;
		const rooms = new Float64Array(this.rooms.length * 2);
		rooms.set(this.rooms);
		this.rooms = rooms;
		const grow = new Float64Array(this.grows.length * 2);
		grow.set(this.grows);
		this.grows = grow;
	}

	/** Worth of leftover lost when a piece of w x h goes there; Infinity when it does not fit. */
	loss(slot: number, w: number, h: number): number {
		const s = this.slots;
		const at = slot * FIELDS;
		if (w > this.rooms[slot * 2]! || h > this.rooms[slot * 2 + 1]!) return Infinity;
		const nw = s[at + NATURAL_W]!;
		const nh = s[at + NATURAL_H]!;
		const w1 = w < nw ? w : nw;
		const h1 = h < nh ? h : nh;
		const beyond = s[at + ALONG_X] === 1 ? (nw - w1) * nh : nw * (nh - h1);
		const beside = s[at + ALONG_X] === 1 ? w1 * (nh - h1) : (nw - w1) * h1;
		let lost = s[at + BASE]! - beyond * beyond - beside * beside;
		if (w > nw) {
			const slack = s[at + GROW_W]!;
			const long = s[at + GROW_W_LONG]!;
			lost += squared(slack * long) - squared((slack - w + nw) * long);
		}
		if (h > nh) {
			const slack = this.grows[slot * 2 + GROW_H]!;
			const long = this.grows[slot * 2 + GROW_H_LONG]!;
			lost += squared(slack * long) - squared((slack - h + nh) * long);
		}
		return lost;
	}
}
