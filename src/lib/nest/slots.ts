import { AXIS_X, FIRST, H, KIND, LEAF, NEXT, NONE, W, type SlackTree } from './slack-tree';
import { APPEND, EMPTY, GROUP, ROOF, SlotStore, squared, WRAP } from './slot-store';

/*
 * Where one more piece could go on a sheet, and what each place would cost. A slot is a room (how large the piece may be)
 * and a natural room (leftover that belongs to it alone); a piece larger than the natural room eats slack of a node
 * further up. Slots overlap: one is used, then the list is made anew.
 *
 * Worth of leftover: the square of each rectangle's area, for one large offcut is worth more than two halves.
 */

const MOST_GROUPS = 24; // a strip of hundreds of equal pieces would make as many groups, all alike

export class SlotList extends SlotStore {
	private order = new Int32Array(64);

	/** Fills the list for the tree as it is. `least`: smallest side of any piece. */
	list(tree: SlackTree, least: number): void {
		this.empty(least);
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
		let squares = 0; // of the sizes along
		let weighed = 0; // the same times the size across
		for (let j = 1; j <= end; j++) {
			const c = this.order[j - 1]!;
			const size = n[c + along]!;
			const tall = n[c + across]!;
			sum += size;
			squares += size * size;
			weighed += size * size * tall;
			if (j < 2) continue;
			if (mostAcross - tall < this.least) return;
			// sum over children of (size (natural - own))^2 - (size (tall - own))^2
			const base = (naturalAcross - tall) * ((naturalAcross + tall) * squares - 2 * weighed);
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

	/** Puts a leaf into a slot of this list; the list must be of the tree as it stands. */
	fill(tree: SlackTree, slot: number, type: number, turned: boolean, w: number, h: number): void {
		const { kind, node, count, alongX } = this.slot(slot);
		const axis = alongX ? AXIS_X : 1 - AXIS_X;
		const leaf = tree.leaf(type, turned, w, h);
		if (kind === APPEND) tree.add(node, leaf);
		else if (kind === WRAP || kind === ROOF) tree.wrap(node, leaf, axis);
		else if (kind === EMPTY) tree.start(leaf);
		else {
			this.sortChildren(tree, node);
			tree.group(node, this.order, count, leaf);
		}
	}
}
