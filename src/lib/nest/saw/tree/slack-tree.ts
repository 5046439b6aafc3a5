/*
 * A sheet as a tree of cuts without coordinates. Inner nodes alternate: X (children side by side
 * along x) and Y (children stacked along y). Each node stores only the size it needs; leftover is
 * no node but slack, so the order of the cuts is never fixed too early and holes merge by
 * themselves. All sizes are inflated by one kerf (see saw-model).
 *
 * One Int32Array holds all nodes, STRIDE words each: no object per node, no garbage in the search.
 */

export const STRIDE = 8;
export const KIND = 0; // AXIS_X, AXIS_Y, or LEAF + 2 * type + (1 when turned)
export const PARENT = 1;
export const FIRST = 2;
export const LAST = 3;
export const NEXT = 4;
export const PREV = 5;
export const W = 6;
export const H = 7;

export const AXIS_X = 0;
export const AXIS_Y = 1;
export const LEAF = 2;
export const NONE = -1;

export const typeOf = (kind: number): number => (kind - LEAF) >> 1;

export class SlackTree {
	nodes: Int32Array;
	/** Nodes in use or on the free list. */
	size = 0;
	free = NONE;
	root = NONE;
	leaves = 0;
	/** Inflated area of the pieces on it. */
	area = 0;
	/** Index of its kind of sheet. */
	kind = 0;
	/** Changes with every change of the tree; caches carry it. */
	version = 0;
	/** Version of the last change that may have made room: since then pieces were only added. */
	loosened = 0;

	constructor(
		public width: number,
		public height: number,
	) {
		this.nodes = new Int32Array(STRIDE * 32);
	}

	copyFrom(other: SlackTree): void {
		if (this.nodes.length < other.nodes.length) this.nodes = new Int32Array(other.nodes.length);
		const words = other.size * STRIDE;
		const [from, to] = [other.nodes, this.nodes];
		// trees are small: quicker than a view and set()
		for (let i = 0; i < words; i++) to[i] = from[i]!;
		this.size = other.size;
		this.free = other.free;
		this.root = other.root;
		this.leaves = other.leaves;
		this.area = other.area;
		this.kind = other.kind;
		this.width = other.width;
		this.height = other.height;
		this.loosen();
	}

	clear(): void {
		this.size = 0;
		this.free = NONE;
		this.root = NONE;
		this.leaves = 0;
		this.area = 0;
		this.loosen();
	}

	/** Another size of sheet for what is on it. */
	moveTo(kind: number, width: number, height: number): void {
		this.kind = kind;
		this.width = width;
		this.height = height;
		this.loosen();
	}

	private loosen(): void {
		this.loosened = ++this.version;
	}

	private node(kind: number, w: number, h: number): number {
		let at = this.free;
		if (at === NONE) {
			at = this.size++ * STRIDE;
			if (at === this.nodes.length) {
				const larger = new Int32Array(this.nodes.length * 2);
				larger.set(this.nodes);
				this.nodes = larger;
			}
		} else this.free = this.nodes[at + NEXT]!;
		const n = this.nodes;
		n[at + KIND] = kind;
		n[at + PARENT] = n[at + FIRST] = n[at + LAST] = n[at + NEXT] = n[at + PREV] = NONE;
		n[at + W] = w;
		n[at + H] = h;
		return at;
	}

	private release(at: number): void {
		this.nodes[at + KIND] = NONE;
		this.nodes[at + NEXT] = this.free;
		this.free = at;
	}

	leaf(type: number, turned: boolean, w: number, h: number): number {
		this.leaves++;
		this.area += w * h;
		return this.node(LEAF + 2 * type + (turned ? 1 : 0), w, h);
	}

	private append(parent: number, child: number): void {
		const n = this.nodes;
		const last = n[parent + LAST]!;
		n[child + PARENT] = parent;
		n[child + PREV] = last;
		n[child + NEXT] = NONE;
		if (last === NONE) n[parent + FIRST] = child;
		else n[last + NEXT] = child;
		n[parent + LAST] = child;
	}

	private unlink(child: number): void {
		const n = this.nodes;
		const [parent, prev, next] = [n[child + PARENT]!, n[child + PREV]!, n[child + NEXT]!];
		if (prev === NONE) n[parent + FIRST] = next;
		else n[prev + NEXT] = next;
		if (next === NONE) n[parent + LAST] = prev;
		else n[next + PREV] = prev;
	}

	/** Puts `now` where `old` hung; `old` is left loose. */
	private replace(old: number, now: number): void {
		const n = this.nodes;
		const [parent, prev, next] = [n[old + PARENT]!, n[old + PREV]!, n[old + NEXT]!];
		n[now + PARENT] = parent;
		n[now + PREV] = prev;
		n[now + NEXT] = next;
		if (parent === NONE) this.root = now;
		else if (prev === NONE) n[parent + FIRST] = now;
		else n[prev + NEXT] = now;
		if (parent !== NONE && next === NONE) n[parent + LAST] = now;
		else if (next !== NONE) n[next + PREV] = now;
	}

	/** Sizes from the children up, until nothing changes. */
	private resize(from: number): void {
		const n = this.nodes;
		for (let at = from; at !== NONE; at = n[at + PARENT]!) {
			let sum = 0;
			let most = 0;
			const along = n[at + KIND] === AXIS_X ? W : H;
			const across = along === W ? H : W;
			for (let c = n[at + FIRST]!; c !== NONE; c = n[c + NEXT]!) {
				sum += n[c + along]!;
				if (n[c + across]! > most) most = n[c + across]!;
			}
			if (n[at + along] === sum && n[at + across] === most) return;
			n[at + along] = sum;
			n[at + across] = most;
		}
	}

	/** The first piece on an empty sheet. */
	start(leaf: number): void {
		this.root = leaf;
		this.version++;
	}

	/** One more child at the end of an inner node. */
	add(parent: number, leaf: number): void {
		this.append(parent, leaf);
		this.resize(parent);
		this.version++;
	}

	/** `old` and `leaf` become the two children of a new node of `axis` in old's place. */
	wrap(old: number, leaf: number, axis: number): void {
		const made = this.node(axis, 0, 0);
		this.replace(old, made);
		this.append(made, old);
		this.append(made, leaf);
		this.resize(made);
		this.version++;
	}

	/**
	 * The given children of one node are put together, and `leaf` laid beyond all of them, across
	 * the node's axis.
	 */
	group(parent: number, children: ArrayLike<number>, count: number, leaf: number): void {
		const axis = this.nodes[parent + KIND]!;
		const inner = this.node(axis, 0, 0);
		const outer = this.node(1 - axis, 0, 0);
		for (let i = 0; i < count; i++) {
			this.unlink(children[i]!);
			this.append(inner, children[i]!);
		}
		this.append(outer, inner);
		this.append(outer, leaf);
		this.append(parent, outer);
		this.resize(inner);
		this.resize(outer);
		this.resize(parent);
		this.version++;
	}

	/**
	 * Takes a leaf off; the hole closes by itself, and a node left with one child dissolves into
	 * its parent.
	 */
	remove(leaf: number): void {
		const n = this.nodes;
		const parent = n[leaf + PARENT]!;
		this.leaves--;
		this.area -= n[leaf + W]! * n[leaf + H]!;
		this.loosen();
		if (parent === NONE) {
			this.clear();
			return;
		}
		this.unlink(leaf);
		this.release(leaf);
		const only = n[parent + FIRST]!;
		if (only !== n[parent + LAST]) {
			this.resize(parent);
			return;
		}
		const above = n[parent + PARENT]!;
		this.replace(parent, only);
		this.release(parent);
		if (above === NONE) return;
		if (n[only + KIND] === n[above + KIND]) this.splice(above, only);
		this.resize(above);
	}

	/**
	 * A child with its parent's own axis gives its children to the parent: without this the tree
	 * rots.
	 */
	private splice(above: number, child: number): void {
		const n = this.nodes;
		this.unlink(child);
		for (let c = n[child + FIRST]!; c !== NONE;) {
			const next = n[c + NEXT]!;
			this.append(above, c);
			c = next;
		}
		this.release(child);
	}

	/** All leaves under a node, written to `out`; returns how many. */
	leavesUnder(at: number, out: Int32Array): number {
		const n = this.nodes;
		let count = 0;
		let node = at;
		for (;;) {
			if (n[node + FIRST] !== NONE && n[node + KIND]! < LEAF) {
				node = n[node + FIRST]!;
				continue;
			}
			out[count++] = node;
			while (node !== at && n[node + NEXT] === NONE) node = n[node + PARENT]!;
			if (node === at) return count;
			node = n[node + NEXT]!;
		}
	}
}
