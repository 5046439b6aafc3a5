import type { Patterns } from './patterns';
import type { Pattern } from './pricing';
import type { SawModel } from '../model';
import { AXIS_X, AXIS_Y, KIND, LEAF, PARENT, SlackTree, STRIDE, typeOf } from '../tree';

/*
 * From a tree of cuts to the set of pieces on it, and from a set that can be cut back to a tree of
 * cuts.
 */

/** What lies on a sheet. */
export function patternOf(tree: SlackTree): Pattern {
	const types: number[] = [];
	for (let at = 0; at < tree.size * STRIDE; at += STRIDE) {
		const kind = tree.nodes[at + KIND]!;
		if (kind >= LEAF) types.push(typeOf(kind)); // places on the free list have no kind
	}
	return { kind: tree.kind, types: Int32Array.from(types).sort() };
}

/**
 * A piece as it lies, or parts side by side along an axis, none of them parted along the same axis.
 */
type Cutting =
	| { readonly axis: null; readonly type: number; readonly turned: boolean }
	| { readonly axis: number; readonly parts: readonly Cutting[] };

/** A tree of cuts for a set of pieces that one sheet of its kind holds. */
export function treeOf(model: SawModel, patterns: Patterns, { kind, types }: Pattern): SlackTree {
	const { w, h } = model.kinds[kind]!;
	const tree = new SlackTree(w, h);
	tree.kind = kind;
	const cutting = new Taker(model, patterns).within(types, w, h);
	if (!cutting) throw new Error('bug: a set that no sheet holds');
	tree.start(leafOf(model, tree, cutting));
	grow(model, tree, tree.root, cutting);
	return tree;
}

/** Takes fronts apart again: finds a way to part a set whose parts fit a rectangle. */
class Taker {
	constructor(
		private readonly model: SawModel,
		private readonly patterns: Patterns,
	) {}

	/** How to cut a set from a rectangle; null when that cannot be. */
	within(types: Int32Array, w: number, h: number): Cutting | null {
		if (types.length === 1) return this.single(types[0]!, w, h);
		const last = types.length - 1;
		for (let mask = 0; mask < (1 << last) - 1; mask++) {
			const one = types.filter((_, i) => i === last || (mask & (1 << i)) !== 0);
			const two = types.filter((_, i) => i !== last && (mask & (1 << i)) === 0);
			const cutting = this.beside(one, two, w, h, AXIS_X) ?? this.beside(one, two, w, h, AXIS_Y);
			if (cutting) return cutting;
		}
		return null;
	}

	private single(type: number, w: number, h: number): Cutting | null {
		const { model } = this;
		const [pw, ph] = [model.w[type]!, model.h[type]!];
		if (pw <= w && ph <= h) return { axis: null, type, turned: false };
		if (model.turns[type] && ph <= w && pw <= h) return { axis: null, type, turned: true };
		return null;
	}

	/**
	 * Two sets side by side along an axis. The one gets the least it needs, the other what is left.
	 */
	private beside(
		one: Int32Array,
		two: Int32Array,
		w: number,
		h: number,
		axis: number,
	): Cutting | null {
		const first = this.patterns.rectangles(one);
		const second = this.patterns.rectangles(two);
		const fits = (r: Int32Array, i: number, tw: number, th: number): boolean =>
			r[i]! <= tw && r[i + 1]! <= th;
		for (let i = 0; i < first.length; i += 2) {
			if (!fits(first, i, w, h)) continue;
			const [tw, th] = axis === AXIS_X ? [w - first[i]!, h] : [w, h - first[i + 1]!];
			for (let j = 0; j < second.length; j += 2) {
				if (!fits(second, j, tw, th)) continue;
				const a = this.within(one, first[i]!, first[i + 1]!);
				const b = this.within(two, second[j]!, second[j + 1]!);
				if (a && b) return { axis, parts: [...flat(a, axis), ...flat(b, axis)] };
			}
		}
		return null;
	}
}

function flat(cutting: Cutting, axis: number): readonly Cutting[] {
	return cutting.axis === axis ? cutting.parts : [cutting];
}

/** The first piece of a cutting, as a loose leaf. */
function leafOf(model: SawModel, tree: SlackTree, cutting: Cutting): number {
	let at = cutting;
	while (at.axis !== null) at = at.parts[0]!;
	const [w, h] = [model.w[at.type]!, model.h[at.type]!];
	return at.turned ? tree.leaf(at.type, true, h, w) : tree.leaf(at.type, false, w, h);
}

/**
 * Turns the leaf that stands for a cutting into the whole of it: first a leaf for each part, then
 * each part in turn.
 */
function grow(model: SawModel, tree: SlackTree, leaf: number, cutting: Cutting): void {
	if (cutting.axis === null) return;
	const leaves = [leaf];
	for (const part of cutting.parts.slice(1)) {
		const next = leafOf(model, tree, part);
		if (leaves.length === 1) tree.wrap(leaf, next, cutting.axis);
		else tree.add(tree.nodes[leaf + PARENT]!, next);
		leaves.push(next);
	}
	cutting.parts.forEach((part, i) => grow(model, tree, leaves[i]!, part));
}
