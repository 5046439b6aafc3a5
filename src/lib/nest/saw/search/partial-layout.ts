import { H, NONE, SlackTree, typeOf, W } from '../tree';
import type { OpenSheet } from './open-sheet';
import { copyInto, UndoSteps } from './undo';

/**
 * A partial layout under work: sheets being filled and pieces still out. Every state is a layout
 * that can be cut; what is not placed is only out.
 */
export class PartialLayout extends UndoSteps {
	/** Lays one piece of a type in the best place of all sheets; false when it fits nowhere. */
	place(type: number): boolean {
		const { search, sheets } = this;
		let best = -1;
		let least = Infinity;
		for (let i = 0; i < sheets.length; i++) {
			const lost = sheets[i]!.loss(type, search);
			if (lost < least) {
				least = lost;
				best = i;
			}
		}
		search.work += sheets.length >> 1;
		if (best < 0) return false;
		const seen = sheets[best]!;
		const sheet = this.touch(best);
		if (sheet !== seen && !search.allowed) sheet.learn(seen, this.outTypes);
		sheet.place(type, seen, search);
		this.out[type]!--;
		return true;
	}

	/**
	 * Does one piece of the type, alone, fit a new sheet of the kind, and may one more be opened at
	 * this cost?
	 */
	opens(kind: number, type: number, limit: number): boolean {
		const { model } = this.search;
		const { w, h, cost, count } = model.kinds[kind]!;
		if (this.used[kind]! >= count || this.cost + cost > limit) return false;
		const [pw, ph] = [model.w[type]!, model.h[type]!];
		return (pw <= w && ph <= h) || (model.turns[type] === 1 && ph <= w && pw <= h);
	}

	/**
	 * Opens a sheet and lays one piece on it; false, and nothing changed, when the limits of the
	 * saw forbid it.
	 */
	open(kind: number, type: number): boolean {
		const { w, h, cost } = this.search.model.kinds[kind]!;
		const sheet = this.take();
		sheet.begin(kind, w, h);
		if (sheet.loss(type, this.search) === Infinity) {
			this.pool.push(this.fresh.pop()!);
			return false;
		}
		sheet.place(type, sheet, this.search);
		this.sheets.push(sheet);
		this.used[kind]!++;
		this.cost += cost;
		this.out[type]!--;
		return true;
	}

	/** Takes one leaf off a sheet that was touched. */
	remove(sheet: OpenSheet, leaf: number): void {
		const kind = sheet.tree.nodes[leaf]!;
		sheet.tree.remove(leaf);
		this.putOut(typeOf(kind), 1);
	}

	/** Takes a whole sheet away; its pieces are out. */
	drop(index: number, leaves: Int32Array): void {
		const sheet = this.sheets[index]!;
		const { tree } = sheet;
		const count = tree.root === NONE ? 0 : tree.leavesUnder(tree.root, leaves);
		for (let i = 0; i < count; i++) this.putOut(typeOf(tree.nodes[leaves[i]!]!), 1);
		this.vanish(index);
	}

	private vanish(index: number): void {
		const sheet = this.sheets[index]!;
		if (sheet.step !== this.step) this.replaced.push(sheet);
		else {
			this.fresh.splice(this.fresh.indexOf(sheet), 1);
			this.pool.push(sheet);
		}
		this.used[sheet.tree.kind]!--;
		this.cost -= this.search.model.kinds[sheet.tree.kind]!.cost;
		this.sheets.splice(index, 1);
	}

	/** Sheets emptied in this step go back to the stock. */
	dropEmpty(): void {
		for (let i = this.sheets.length - 1; i >= 0; i--)
			if (this.sheets[i]!.tree.root === NONE) this.vanish(i);
	}

	/** Gives a touched sheet another kind, which must hold what is on it. */
	swap(sheet: OpenSheet, kind: number): void {
		const { kinds } = this.search.model;
		const { tree } = sheet;
		this.used[tree.kind]!--;
		this.used[kind]!++;
		this.cost += kinds[kind]!.cost - kinds[tree.kind]!.cost;
		tree.moveTo(kind, kinds[kind]!.w, kinds[kind]!.h);
	}

	/**
	 * Moves each touched sheet to the cheapest kind that holds it: the tree has no coordinates, so
	 * this costs nothing.
	 */
	shrink(): void {
		const { kinds } = this.search.model;
		if (kinds.length === 1) return;
		for (const sheet of this.sheets) {
			if (!this.touched(sheet)) continue;
			const now = sheet.tree.kind;
			for (const kind of this.search.openable) {
				if (kind >= now) break; // kinds run from cheap to dear
				const { w, h, cost, count } = kinds[kind]!;
				if (
					cost >= kinds[now]!.cost ||
					this.used[kind]! >= count ||
					!emptySheetHolds(sheet.tree, w, h)
				)
					continue;
				this.swap(sheet, kind);
				if (!this.search.allowed || this.search.allowed(sheet.tree)) break;
				this.swap(sheet, now);
			}
		}
	}

	/** Back to the start: no sheets, everything out. */
	clear(): void {
		this.pool.push(...this.sheets);
		this.sheets.length = 0;
		this.used.fill(0);
		this.cost = 0;
		this.out.fill(0);
		this.listed.fill(0);
		this.outTypes.length = 0;
		this.search.model.demand.forEach((count, type) => {
			if (count > 0) this.putOut(type, count);
		});
		this.mark();
	}

	/** Puts the sheets of a kept layout in place of all that is here. */
	restore(kept: LayoutSnapshot): void {
		this.pool.push(...this.sheets, ...this.parked);
		this.parked.length = 0;
		this.step++;
		this.replaced.length = 0;
		this.used.fill(0);
		this.cost = 0;
		const sheets = kept.trees.map((tree) => {
			const sheet = this.take();
			sheet.tree.copyFrom(tree);
			this.used[tree.kind]!++;
			this.cost += this.search.model.kinds[tree.kind]!.cost;
			return sheet;
		});
		copyInto(this.sheets, sheets);
		this.fresh.length = 0;
		this.out.set(kept.out);
		this.outTypes.length = 0;
		this.listed.fill(0);
		kept.out.forEach((n, type) => {
			if (n > 0) this.putOut(type, 0);
		});
	}

	/** A copy of the layout as it stands, safe from later steps. */
	keep(): LayoutSnapshot {
		const trees = this.sheets.map(({ tree }) => {
			const copy = new SlackTree(0, 0);
			copy.copyFrom(tree);
			return copy;
		});
		return { trees, out: this.out.slice(), cost: this.cost, missing: this.missing() };
	}

	/** Inflated area of what is out. */
	missing(): number {
		let sum = 0;
		for (const type of this.outTypes) sum += this.out[type]! * this.search.model.area[type]!;
		return sum;
	}
}

/** A layout set aside: its trees are never changed again. */
export interface LayoutSnapshot {
	readonly trees: readonly SlackTree[];
	readonly out: Int32Array;
	readonly cost: number;
	/** Inflated area of what is not placed. */
	readonly missing: number;
}

function emptySheetHolds(tree: SlackTree, w: number, h: number): boolean {
	if (tree.root === NONE) return true;
	return tree.nodes[tree.root + W]! <= w && tree.nodes[tree.root + H]! <= h;
}
