import type { PartialLayout } from './partial-layout';
import type { OpenSheet } from './open-sheet';
import { NONE, PARENT } from '../tree';

/** How much one step takes apart. */
export interface Tools {
	/** Chance that whole sheets are emptied instead of pieces taken off. */
	readonly empty: number;
	/** Chance, with several kinds of sheet, that one is swapped for another kind first. */
	readonly swap: number;
	/** Most pieces taken off in a step. */
	readonly most: number;
	/** Room for the leaves of the fullest sheet. */
	readonly leaves: Int32Array;
}

/** Takes a part of the layout off; the pieces are out. */
export function ruin(partial: PartialLayout, tools: Tools, limit: number): void {
	const { dice, model } = partial.search;
	if (partial.sheets.length === 0) return;
	if (model.kinds.length > 1 && dice.unit() < tools.swap) swapOne(partial, limit);
	if (dice.unit() < tools.empty) emptySheets(partial, tools);
	else takeSome(partial, tools);
	partial.dropEmpty();
	dropUncuttable(partial, tools);
}

/**
 * A sheet that lost the wide part its narrow ones were held by may be past the limits of the saw:
 * it is emptied whole.
 */
function dropUncuttable(partial: PartialLayout, { leaves }: Tools): void {
	const { allowed } = partial.search;
	if (!allowed) return;
	for (let i = partial.sheets.length - 1; i >= 0; i--) {
		const sheet = partial.sheets[i]!;
		if (partial.touched(sheet) && !allowed(sheet.tree)) partial.drop(i, leaves);
	}
}

function emptySheets(partial: PartialLayout, { leaves }: Tools): void {
	const { dice } = partial.search;
	const count = dice.unit() < 0.3 ? 2 : 1;
	for (let i = 0; i < count && partial.sheets.length > 0; i++)
		partial.drop(dice.int(partial.sheets.length), leaves);
}

function takeSome(partial: PartialLayout, { most, leaves }: Tools): void {
	const { dice } = partial.search;
	const sheets = 1 + dice.int(3);
	let left = 1 + dice.int(most);
	for (let i = sheets; i > 0 && left > 0; i--) {
		const share = Math.ceil(left / i);
		left -= takeFrom(partial, drawSheet(partial), share, leaves);
	}
}

/**
 * Half the time any sheet, half the time the emptier one of two: what is nearly empty is soonest
 * gone.
 */
function drawSheet(partial: PartialLayout): number {
	const { dice } = partial.search;
	const { sheets } = partial;
	const one = dice.int(sheets.length);
	if (dice.unit() < 0.5) return one;
	const two = dice.int(sheets.length);
	const spare = ({ tree }: OpenSheet): number => tree.width * tree.height - tree.area;
	return spare(sheets[two]!) > spare(sheets[one]!) ? two : one;
}

/**
 * Half the time single leaves, half the time the leaves of one strip; returns how many came off.
 */
function takeFrom(
	partial: PartialLayout,
	index: number,
	count: number,
	leaves: Int32Array,
): number {
	const { dice } = partial.search;
	if (partial.sheets[index]!.tree.root === NONE) return 0;
	const sheet = partial.touch(index);
	const { tree } = sheet;
	const all = tree.leavesUnder(tree.root, leaves);
	if (count >= all) {
		for (let i = 0; i < all; i++) partial.remove(sheet, leaves[i]!);
		return all;
	}
	if (dice.unit() < 0.5) {
		for (let i = 0; i < count; i++) {
			const pick = i + dice.int(all - i);
			const leaf = leaves[pick]!;
			leaves[pick] = leaves[i]!;
			partial.remove(sheet, leaf);
		}
		return count;
	}
	let top = leaves[dice.int(all)]!;
	let under = 1;
	while (under < count && tree.nodes[top + PARENT] !== NONE) {
		top = tree.nodes[top + PARENT]!;
		under = tree.leavesUnder(top, leaves);
	}
	if (under === 1) leaves[0] = top;
	const off = Math.min(count, under);
	const start = under > off ? dice.int(under - off + 1) : 0;
	for (let i = 0; i < off; i++) partial.remove(sheet, leaves[start + i]!);
	return off;
}

/** Another kind of sheet for what lies on one: usually larger, so that more may be added. */
function swapOne(partial: PartialLayout, limit: number): void {
	const { dice, model, openable } = partial.search;
	const index = dice.int(partial.sheets.length);
	const kind = openable[dice.int(openable.length)]!;
	const { tree } = partial.sheets[index]!;
	const { w, h, cost, count } = model.kinds[kind]!;
	if (kind === tree.kind || partial.used[kind]! >= count) return;
	if (w * h <= tree.width * tree.height || w < tree.width || h < tree.height) return;
	if (partial.cost - model.kinds[tree.kind]!.cost + cost > limit) return;
	partial.swap(partial.touch(index), kind);
}
