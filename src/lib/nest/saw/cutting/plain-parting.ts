import { deflate, type Inflated } from '../../inflated';
import { fenceHolds, type FenceLimits } from './held';
import { AXIS_X, FIRST, H, KIND, LEAF, NEXT, NONE, W, type SlackTree } from '../tree';

/*
 * The quick answer to whether the saw can part a sheet: slack behind the parts of each node, every
 * part but the last held against the fence itself. Most sheets pass it, and it makes no garbage:
 * the search asks at every place it tries. A sheet that fails may still be cut in another way,
 * which fence.ts looks for.
 */

export function partsPlainly(tree: SlackTree, limits: FenceLimits): boolean {
	return nodeParts(tree, tree.root, tree.width, tree.height, limits);
}

function nodeParts(
	tree: SlackTree,
	at: number,
	w: number,
	h: number,
	limits: FenceLimits,
): boolean {
	const n = tree.nodes;
	if (n[at + KIND]! >= LEAF) return leafParts(n[at + W]!, n[at + H]!, w, h, limits);
	const isX = n[at + KIND]! === AXIS_X;
	const along = isX ? W : H;
	const slack = isX ? w > n[at + W]! : h > n[at + H]!;
	// With leftover behind them all parts come off it; without, the smallest is what remains.
	let last = NONE;
	for (let c = n[at + FIRST]!; !slack && c !== NONE; c = n[c + NEXT]!)
		if (last === NONE || n[c + along]! < n[last + along]!) last = c;
	for (let c = n[at + FIRST]!; c !== NONE; c = n[c + NEXT]!) {
		if (c !== last && !holds(n[c + along]!, limits)) return false;
		if (!nodeParts(tree, c, isX ? n[c + W]! : w, isX ? h : n[c + H]!, limits)) return false;
	}
	return true;
}

function leafParts(
	pieceW: number,
	pieceH: number,
	w: number,
	h: number,
	limits: FenceLimits,
): boolean {
	if (w > pieceW && !holds(pieceW, limits)) return false;
	return h === pieceH || holds(pieceH, limits);
}

/** Of a size as the tree holds it. */
function holds(size: number, limits: FenceLimits): boolean {
	return fenceHolds(deflate(size as Inflated, limits.kerf), limits);
}
