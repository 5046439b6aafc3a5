import { AXIS_X, FIRST, H, KIND, LEAF, NEXT, NONE, W, type SlackTree } from './slack-tree';

/*
 * Where one more piece could go on a sheet, and what each place would cost. A slot is a room (how large the piece may be)
 * and a natural room (leftover that belongs to it alone); a piece larger than the natural room eats slack of a node
 * further up. Slots overlap: one is used, then the list is made anew.
 *
 * Worth of leftover: the square of each rectangle's area, for one large offcut is worth more than two halves.
 */

export const APPEND = 0; // beyond the last child of a node
export const WRAP = 1; // beyond a leaf, inside its parent's strip
export const GROUP = 2; // beyond the lowest children of a node, put together
export const ROOF = 3; // beyond the whole root
export const EMPTY = 4; // the first piece

const MOST_GROUPS = 24; // a strip of hundreds of equal pieces would make as many groups, all alike

const FIELDS = 12;
// word 0 is the kind of slot
const NODE = 1;
const COUNT = 2; // children in a group
const ALONG_X = 3; // 1: the piece goes beyond along x
const ROOM_W = 4;
const ROOM_H = 5;
const NATURAL_W = 6;
const NATURAL_H = 7;
const BASE = 8; // worth of the leftover that the slot uses up
const GROW_W = 9; // slack of the ancestor that a wider piece would eat, and how long that slack is
const GROW_W_LONG = 10;
// the same for a higher piece follows in the next two words of a second array, to keep this one small
const GROW_H = 0;
const GROW_H_LONG = 1;

const squared = (a: number): number => (a > 0 ? a * a : 0);

export class SlotList {
	count = 0;
	widest = 0;
	highest = 0;
	private slots = new Float64Array(FIELDS * 64);
	private grow = new Float64Array(2 * 64);
	private order = new Int32Array(64);
	private least = 0;
	/** Slots looked at since the start of the search: the work done. */
	work = 0;

	/** Fills the list for the tree as it is. `least`: smallest side of any piece. */
	list(tree: SlackTree, least: number): void {
		this.count = 0;
		this.widest = 0;
		this.highest = 0;
		this.least = least;
		const { width, height, root, nodes } = tree;
		if (root === NONE) {
			this.put(
				EMPTY,
				NONE,
				0,
				1,
				width,
				height,
				width,
				height,
				squared(width * height),
				0,
				0,
				0,
				0,
			);
			return;
		}
		const w = nodes[root + W]!;
		const h = nodes[root + H]!;
		if (nodes[root + KIND]! >= LEAF) {
			const base = squared((width - w) * height) + squared(w * (height - h));
			this.put(ROOF, root, 0, 1, width - w, height, width - w, height, base, 0, 0, 0, 0);
			this.put(ROOF, root, 0, 0, width, height - h, width, height - h, base, 0, 0, 0, 0);
		} else {
			this.roof(tree);
			this.visit(tree, root, width, height, width, height, 0, 0, 0, 0);
		}
		this.work += this.count;
	}

	private put(
		kind: number,
		node: number,
		count: number,
		alongX: number,
		roomW: number,
		roomH: number,
		naturalW: number,
		naturalH: number,
		base: number,
		growW: number,
		growWLong: number,
		growH: number,
		growHLong: number,
	): void {
		if (roomW < this.least || roomH < this.least) return;
		if ((this.count + 1) * FIELDS > this.slots.length) this.enlarge();
		const at = this.count * FIELDS;
		const s = this.slots;
		s[at] = kind;
		s[at + NODE] = node;
		s[at + COUNT] = count;
		s[at + ALONG_X] = alongX;
		s[at + ROOM_W] = roomW;
		s[at + ROOM_H] = roomH;
		s[at + NATURAL_W] = naturalW;
		s[at + NATURAL_H] = naturalH;
		s[at + BASE] = base;
		s[at + GROW_W] = growW;
		s[at + GROW_W_LONG] = growWLong;
		this.grow[this.count * 2 + GROW_H] = growH;
		this.grow[this.count * 2 + GROW_H_LONG] = growHLong;
		this.count++;
		if (roomW > this.widest) this.widest = roomW;
		if (roomH > this.highest) this.highest = roomH;
	}

	private enlarge(): void {
		const slots = new Float64Array(this.slots.length * 2);
		slots.set(this.slots);
		this.slots = slots;
		const grow = new Float64Array(this.grow.length * 2);
		grow.set(this.grow);
		this.grow = grow;
	}

	/** Beyond the whole root: leftover of every child is gathered, and what stays beside the root is counted back. */
	private roof(tree: SlackTree): void {
		const { nodes: n, width, height, root } = tree;
		const alongX = n[root + KIND] !== AXIS_X;
		const [w, h] = [n[root + W]!, n[root + H]!];
		let base = 0;
		for (let c = n[root + FIRST]!; c !== NONE; c = n[c + NEXT]!) {
			base += alongX
				? squared(n[c + H]! * (width - n[c + W]!)) - squared(n[c + H]! * (w - n[c + W]!))
				: squared(n[c + W]! * (height - n[c + H]!)) - squared(n[c + W]! * (h - n[c + H]!));
		}
		if (alongX) {
			base += squared(width * (height - h)) - squared(w * (height - h));
			this.put(ROOF, root, 0, 1, width - w, height, width - w, height, base, 0, 0, 0, 0);
		} else {
			base += squared(height * (width - w)) - squared(h * (width - w));
			this.put(ROOF, root, 0, 0, width, height - h, width, height - h, base, 0, 0, 0, 0);
		}
	}

	/** Slots of an inner node and all below it. Most: the size it may grow to; natural: with the slack that is its own. */
	private visit(
		tree: SlackTree,
		at: number,
		mostW: number,
		mostH: number,
		naturalW: number,
		naturalH: number,
		growW: number,
		growWLong: number,
		growH: number,
		growHLong: number,
	): void {
		const n = tree.nodes;
		const [w, h] = [n[at + W]!, n[at + H]!];
		const isX = n[at + KIND] === AXIS_X;
		const slackW = naturalW - w;
		const slackH = naturalH - h;
		if (isX)
			this.put(
				APPEND,
				at,
				0,
				1,
				mostW - w,
				mostH,
				slackW,
				naturalH,
				squared(slackW * naturalH),
				growW,
				growWLong,
				growH,
				growHLong,
			);
		else
			this.put(
				APPEND,
				at,
				0,
				0,
				mostW,
				mostH - h,
				naturalW,
				slackH,
				squared(naturalW * slackH),
				growW,
				growWLong,
				growH,
				growHLong,
			);
		if (isX) this.groups(tree, at, mostW - w, mostH, naturalH, slackW, naturalH, growH, growHLong);
		else this.groups(tree, at, mostH - h, mostW, naturalW, slackH, naturalW, growW, growWLong);
		for (let c = n[at + FIRST]!; c !== NONE; c = n[c + NEXT]!) {
			const cw = n[c + W]!;
			const ch = n[c + H]!;
			const leaf = n[c + KIND]! >= LEAF;
			if (isX) {
				const mw = cw + mostW - w;
				if (leaf) {
					const over = naturalH - ch;
					this.put(
						WRAP,
						c,
						0,
						0,
						mw,
						mostH - ch,
						cw,
						over,
						squared(cw * over),
						slackW,
						naturalH,
						growH,
						growHLong,
					);
				} else this.visit(tree, c, mw, mostH, cw, naturalH, slackW, naturalH, growH, growHLong);
			} else {
				const mh = ch + mostH - h;
				if (leaf) {
					const over = naturalW - cw;
					this.put(
						WRAP,
						c,
						0,
						1,
						mostW - cw,
						mh,
						over,
						ch,
						squared(over * ch),
						growW,
						growWLong,
						slackH,
						naturalW,
					);
				} else this.visit(tree, c, mostW, mh, naturalW, ch, growW, growWLong, slackH, naturalW);
			}
		}
	}

	/** Children by size across the node, lowest first, into `order`; returns how many. */
	sortChildren(tree: SlackTree, at: number): number {
		const n = tree.nodes;
		const across = n[at + KIND] === AXIS_X ? H : W;
		let count = 0;
		for (let c = n[at + FIRST]!; c !== NONE; c = n[c + NEXT]!) {
			if (count === this.order.length) {
				const larger = new Int32Array(count * 2);
				larger.set(this.order);
				this.order = larger;
			}
			const key = n[c + across]!;
			let i = count++;
			for (; i > 0 && n[this.order[i - 1]! + across]! > key; i--)
				this.order[i] = this.order[i - 1]!;
			this.order[i] = c;
		}
		return count;
	}

	/** The two to all but one lowest children put together. Sizes are along and across the node's axis. */
	private groups(
		tree: SlackTree,
		at: number,
		spare: number,
		mostAcross: number,
		naturalAcross: number,
		slack: number,
		slackLong: number,
		growAcross: number,
		growAcrossLong: number,
	): void {
		const n = tree.nodes;
		const isX = n[at + KIND] === AXIS_X;
		const [along, across] = isX ? [W, H] : [H, W];
		const children = this.sortChildren(tree, at);
		const end = Math.min(children - 1, MOST_GROUPS);
		let sum = 0;
		for (let j = 1; j <= end; j++) {
			const c = this.order[j - 1]!;
			sum += n[c + along]!;
			if (j < 2) continue;
			const tall = n[c + across]!;
			if (mostAcross - tall < this.least) return;
			let base = 0;
			for (let i = 0; i < j; i++) {
				const child = this.order[i]!;
				const [a, b] = [n[child + along]!, n[child + across]!];
				base += squared(a * (naturalAcross - b)) - squared(a * (tall - b));
			}
			const over = naturalAcross - tall;
			if (isX)
				this.put(
					GROUP,
					at,
					j,
					0,
					sum + spare,
					mostAcross - tall,
					sum,
					over,
					base,
					slack,
					slackLong,
					growAcross,
					growAcrossLong,
				);
			else
				this.put(
					GROUP,
					at,
					j,
					1,
					mostAcross - tall,
					sum + spare,
					over,
					sum,
					base,
					growAcross,
					growAcrossLong,
					slack,
					slackLong,
				);
		}
	}

	/** Worth of leftover lost when a piece of w x h goes there; Infinity when it does not fit. */
	loss(slot: number, w: number, h: number): number {
		const s = this.slots;
		const at = slot * FIELDS;
		if (w > s[at + ROOM_W]! || h > s[at + ROOM_H]!) return Infinity;
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
			const slack = this.grow[slot * 2 + GROW_H]!;
			const long = this.grow[slot * 2 + GROW_H_LONG]!;
			lost += squared(slack * long) - squared((slack - h + nh) * long);
		}
		return lost;
	}

	/** Puts a leaf into a slot of this list; the list must be of the tree as it stands. */
	fill(tree: SlackTree, slot: number, type: number, turned: boolean, w: number, h: number): void {
		const at = slot * FIELDS;
		const kind = this.slots[at]!;
		const node = this.slots[at + NODE]!;
		const axis = this.slots[at + ALONG_X] === 1 ? AXIS_X : 1 - AXIS_X;
		const leaf = tree.leaf(type, turned, w, h);
		if (kind === APPEND) tree.add(node, leaf);
		else if (kind === WRAP || kind === ROOF) tree.wrap(node, leaf, axis);
		else if (kind === EMPTY) tree.start(leaf);
		else {
			this.sortChildren(tree, node);
			tree.group(node, this.order, this.slots[at + COUNT]!, leaf);
		}
	}
}
