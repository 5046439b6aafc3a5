import { nth } from '../../../measure';
import { AXIS_X, FIRST, H, KIND, LEAF, NEXT, NONE, W, type SlackTree } from '../tree';

/*
 * A slack tree with its slack handed out: every region is either a piece, leftover, or cut into parts along one axis.
 * Sizes are still inflated by one kerf: a leftover no wider than the kerf is eaten by the blade.
 */

export interface SawRegion {
	readonly w: number;
	readonly h: number;
	/** LEAF kind of the tree for a piece, NONE otherwise. */
	readonly leaf: number;
	/** Cut along: 'x' parts lie side by side along x, 'y' one above the other; null: not cut again. */
	readonly axis: 'x' | 'y' | null;
	readonly parts: readonly SawRegion[];
}

/** Cut along `axis` into parts; a part that is itself cut along that axis is no part of its own: its parts are. */
function region(w: number, h: number, axis: 'x' | 'y', parts: SawRegion[]): SawRegion {
	const own = parts.some((p) => p.axis === axis)
		? parts.flatMap((p) => (p.axis === axis ? p.parts : [p]))
		: parts;
	return { w, h, leaf: NONE, axis, parts: own };
}

function leftover(w: number, h: number): SawRegion {
	return { w, h, leaf: NONE, axis: null, parts: [] };
}

/** A piece of w x h inside a region: first cut along `first`, then along the other axis, where there is slack. */
function leafRegion(leaf: SawRegion, w: number, h: number, first: 'x' | 'y'): SawRegion {
	if (first === 'x') {
		const column = h > leaf.h ? region(leaf.w, h, 'y', [leaf, leftover(leaf.w, h - leaf.h)]) : leaf;
		return w > leaf.w ? region(w, h, 'x', [column, leftover(w - leaf.w, h)]) : column;
	}
	const strip = w > leaf.w ? region(w, leaf.h, 'x', [leaf, leftover(w - leaf.w, leaf.h)]) : leaf;
	return h > leaf.h ? region(w, h, 'y', [strip, leftover(w, h - leaf.h)]) : strip;
}

/** A node in a region at least its size. Slack along the node's axis trails its children; slack across goes to each child. */
function regionsOf(tree: SlackTree, at: number, w: number, h: number): SawRegion {
	const n = tree.nodes;
	const kind = n[at + KIND]!;
	if (kind >= LEAF) {
		const leaf: SawRegion = { w: n[at + W]!, h: n[at + H]!, leaf: kind, axis: null, parts: [] };
		return leafRegion(leaf, w, h, 'x');
	}
	const isX = kind === AXIS_X;
	const parts: SawRegion[] = [];
	for (let c = n[at + FIRST]!; c !== NONE; c = n[c + NEXT]!)
		parts.push(isX ? regionsOf(tree, c, n[c + W]!, h) : regionsOf(tree, c, w, n[c + H]!));
	if (isX && w > n[at + W]!) parts.push(leftover(w - n[at + W]!, h));
	if (!isX && h > n[at + H]!) parts.push(leftover(w, h - n[at + H]!));
	return parts.length === 1 ? nth(parts, 0) : region(w, h, isX ? 'x' : 'y', parts);
}

/** Ways to hand out the slack of a whole sheet, one at a time; only at the root is there slack across that could go elsewhere. */
export function* rootLayouts(tree: SlackTree): Generator<SawRegion, void, void> {
	const { width, height, root, nodes: n } = tree;
	const w = n[root + W]!;
	const h = n[root + H]!;
	yield regionsOf(tree, root, width, height);
	const above = (): SawRegion => leftover(width, height - h);
	const beside = (): SawRegion => leftover(width - w, height);
	if (h < height) yield region(width, height, 'y', [regionsOf(tree, root, width, h), above()]);
	if (w < width) yield region(width, height, 'x', [regionsOf(tree, root, w, height), beside()]);
	if (h === height || w === width) return;
	const block = regionsOf(tree, root, w, h);
	const row = region(width, h, 'x', [block, leftover(width - w, h)]);
	yield region(width, height, 'y', [row, above()]);
	const column = region(w, height, 'y', [block, leftover(w, height - h)]);
	yield region(width, height, 'x', [column, beside()]);
}

/** Rounds of parallel cuts, each across the one before: the stages of the saw. */
export function stagesOf(r: SawRegion): number {
	if (r.axis === null) return 0;
	return 1 + r.parts.reduce((most, p) => Math.max(most, stagesOf(p)), 0);
}
