import { nth } from '../../../measure';
import { beside, type Inflated } from '../../inflated';
import { AXIS_X, FIRST, H, KIND, LEAF, NEXT, NONE, W, type SlackTree } from '../tree';

/*
 * A slack tree with its slack handed out: every region is either a piece, leftover, or cut into
 * parts along one axis. Sizes are still inflated by one kerf: a leftover no wider than the kerf is
 * eaten by the blade.
 */

export interface SawRegion {
	readonly w: Inflated;
	readonly h: Inflated;
	/** LEAF kind of the tree for a piece, NONE otherwise. */
	readonly leaf: number;
	/**
	 * Cut along: 'x' parts lie side by side along x, 'y' one above the other; null: not cut again.
	 */
	readonly axis: 'x' | 'y' | null;
	readonly parts: readonly SawRegion[];
	/** Its parts stay in their order: a hand has laid them. Absent: any order will do. */
	readonly kept?: true;
}

/**
 * Cut along `axis` into parts; a part that is itself cut along that axis is no part of its own: its
 * parts are.
 */
function region(w: Inflated, h: Inflated, axis: 'x' | 'y', parts: SawRegion[]): SawRegion {
	const own = parts.some((p) => p.axis === axis)
		? parts.flatMap((p) => (p.axis === axis ? p.parts : [p]))
		: parts;
	return { w, h, leaf: NONE, axis, parts: own };
}

function leftover(w: Inflated, h: Inflated): SawRegion {
	return { w, h, leaf: NONE, axis: null, parts: [] };
}

/**
 * A piece of w x h inside a region: first cut along `first`, then along the other axis, where there
 * is slack.
 */
function leafRegion(leaf: SawRegion, w: Inflated, h: Inflated, first: 'x' | 'y'): SawRegion {
	if (first === 'x') {
		const column =
			h > leaf.h ? region(leaf.w, h, 'y', [leaf, leftover(leaf.w, beside(h, leaf.h))]) : leaf;
		return w > leaf.w ? region(w, h, 'x', [column, leftover(beside(w, leaf.w), h)]) : column;
	}
	const strip =
		w > leaf.w ? region(w, leaf.h, 'x', [leaf, leftover(beside(w, leaf.w), leaf.h)]) : leaf;
	return h > leaf.h ? region(w, h, 'y', [strip, leftover(w, beside(h, leaf.h))]) : strip;
}

/** Width and height of a node: the tree holds grown sizes only. */
function sizeOf({ nodes }: SlackTree, at: number): readonly [Inflated, Inflated] {
	return [nodes[at + W]! as Inflated, nodes[at + H]! as Inflated];
}

/**
 * A node in a region at least its size. Slack along the node's axis trails its children; slack
 * across goes to each child.
 */
function regionsOf(tree: SlackTree, at: number, w: Inflated, h: Inflated): SawRegion {
	const n = tree.nodes;
	const kind = n[at + KIND]!;
	const [ownW, ownH] = sizeOf(tree, at);
	if (kind >= LEAF) {
		const leaf: SawRegion = { w: ownW, h: ownH, leaf: kind, axis: null, parts: [] };
		return leafRegion(leaf, w, h, 'x');
	}
	const isX = kind === AXIS_X;
	const parts: SawRegion[] = [];
	for (let c = n[at + FIRST]!; c !== NONE; c = n[c + NEXT]!) {
		const [partW, partH] = sizeOf(tree, c);
		parts.push(isX ? regionsOf(tree, c, partW, h) : regionsOf(tree, c, w, partH));
	}
	if (isX && w > ownW) parts.push(leftover(beside(w, ownW), h));
	if (!isX && h > ownH) parts.push(leftover(w, beside(h, ownH)));
	return parts.length === 1 ? nth(parts, 0) : region(w, h, isX ? 'x' : 'y', parts);
}

/**
 * Ways to hand out the slack of a whole sheet, one at a time; only at the root is there slack
 * across that could go elsewhere.
 */
export function* rootLayouts(tree: SlackTree): Generator<SawRegion, void, void> {
	const { root } = tree;
	const [width, height] = [tree.width as Inflated, tree.height as Inflated];
	const [w, h] = sizeOf(tree, root);
	yield regionsOf(tree, root, width, height);
	const above = (): SawRegion => leftover(width, beside(height, h));
	const atRight = (): SawRegion => leftover(beside(width, w), height);
	if (h < height) yield region(width, height, 'y', [regionsOf(tree, root, width, h), above()]);
	if (w < width) yield region(width, height, 'x', [regionsOf(tree, root, w, height), atRight()]);
	if (h === height || w === width) return;
	const block = regionsOf(tree, root, w, h);
	const row = region(width, h, 'x', [block, leftover(beside(width, w), h)]);
	yield region(width, height, 'y', [row, above()]);
	const column = region(w, height, 'y', [block, leftover(w, beside(height, h))]);
	yield region(width, height, 'x', [column, atRight()]);
}

/** Rounds of parallel cuts, each across the one before: the stages of the saw. */
export function stagesOf(r: SawRegion): number {
	if (r.axis === null) return 0;
	return 1 + r.parts.reduce((most, p) => Math.max(most, stagesOf(p)), 0);
}
